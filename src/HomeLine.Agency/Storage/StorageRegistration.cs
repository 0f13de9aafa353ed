using HomeLine.Agency.Storage.Postgres;
using HomeLine.Agency.Storage.Sqlite;
using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.Configuration;
using Microsoft.Extensions.DependencyInjection;

namespace HomeLine.Agency.Storage;

/// <summary>Chooses the database by configuration; everybody else asks for <c>IDbContextFactory&lt;AgencyDb&gt;</c>.</summary>
internal static class StorageRegistration
{
    public static void AddAgencyStorage(this IServiceCollection services, IConfiguration configuration, string contentRoot)
    {
        string provider = configuration["Database:Provider"] ?? "sqlite";
        string? where = configuration.GetConnectionString("Agency");
        switch (provider.ToLowerInvariant())
        {
            case "sqlite":
                string text = string.IsNullOrWhiteSpace(where) ? DefaultFile(contentRoot) : where;
                services.AddDbContextFactory<SqliteAgencyDb>(options => options.UseSqlite(text).AddInterceptors(new SafePragmas()));
                services.AddAgencyDb<SqliteAgencyDb>();
                break;
            case "postgres":
                if (string.IsNullOrWhiteSpace(where))
                    throw new InvalidOperationException("Database:Provider is postgres but ConnectionStrings:Agency is empty.");
                services.AddDbContextFactory<PostgresAgencyDb>(options => options.UseNpgsql(where));
                services.AddAgencyDb<PostgresAgencyDb>();
                break;
            default:
                throw new InvalidOperationException($"Database:Provider is {provider}; it must be sqlite or postgres.");
        }
    }

    private static void AddAgencyDb<TContext>(this IServiceCollection services)
        where TContext : AgencyDb
    {
        services.AddSingleton<RosterMemory>();
        services.AddSingleton<IDbContextFactory<AgencyDb>, Databases<TContext>>();
        // The sign-in framework wants a context of its scope; use cases open their own.
        services.AddScoped<AgencyDb>(scope => scope.GetRequiredService<IDbContextFactory<TContext>>().CreateDbContext());
        services.AddSingleton<AgencyDatabase>();
    }

    private static string DefaultFile(string contentRoot) =>
        new SqliteConnectionStringBuilder { DataSource = Path.Combine(contentRoot, "data", "homeline.db") }.ToString();

    private sealed class Databases<TContext>(IDbContextFactory<TContext> inner, RosterMemory memory) : IDbContextFactory<AgencyDb>
        where TContext : AgencyDb
    {
        public AgencyDb CreateDbContext()
        {
            AgencyDb db = inner.CreateDbContext();
            db.Memory = memory;
            return db;
        }
    }
}
