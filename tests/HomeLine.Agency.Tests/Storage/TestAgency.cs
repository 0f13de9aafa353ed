using HomeLine.Agency.Access;
using HomeLine.Agency.Storage;
using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.Configuration;
using Microsoft.Extensions.DependencyInjection;
using NodaTime;
using NodaTime.Testing;
using Npgsql;

namespace HomeLine.Agency.Tests.Storage;

/// <summary>The kinds of database every storage test runs on.</summary>
public enum Provider
{
    Sqlite,
    Postgres,
}

/// <summary>An agency put together as the program does it, on a database of its own.</summary>
public sealed class TestAgency : IAsyncDisposable
{
    public static readonly TheoryData<Provider> BothProviders = [Provider.Sqlite, Provider.Postgres];

    private readonly ServiceProvider _services;
    private readonly string? _folder;

    private TestAgency(ServiceProvider services, FakeClock clock, string? folder)
    {
        (_services, Clock, _folder) = (services, clock, folder);
    }

    public FakeClock Clock { get; }

    public IServiceProvider Services => _services;

    public IDbContextFactory<AgencyDb> Databases => _services.GetRequiredService<IDbContextFactory<AgencyDb>>();

    public static Actor Coordinator { get; } = new("u-co", "C. Coordinator", [AgencyRole.Coordinator]);

    public static Actor Administrator { get; } = new("u-ad", "A. Administrator", [AgencyRole.Administrator]);

    public static Instant Now { get; } = Instant.FromUtc(2027, 3, 8, 11, 0);

    public static async Task<TestAgency> OnAsync(Provider provider, PostgresCluster cluster)
    {
        if (provider == Provider.Postgres)
        {
            string database = await cluster.NewDatabaseAsync(async where =>
            {
                await using TestAgency first = Make(provider, where, null);
                await first.PrepareAsync();
            });
            return Make(provider, database, null);
        }
        string folder = Directory.CreateTempSubdirectory("agency-").FullName;
        TestAgency agency = Make(provider, $"Data Source={Path.Combine(folder, "homeline.db")}", folder);
        await agency.PrepareAsync();
        return agency;
    }

    public static TestAgency Make(Provider provider, string where, string? folder)
    {
        var clock = new FakeClock(Now);
        IConfiguration configuration = new ConfigurationBuilder().AddInMemoryCollection(new Dictionary<string, string?>
        {
            ["Database:Provider"] = provider == Provider.Sqlite ? "sqlite" : "postgres",
            ["ConnectionStrings:Agency"] = where,
        }).Build();
        IServiceCollection services = new ServiceCollection().AddLogging().AddSingleton<IClock>(clock);
        services.AddHomeLineSignIn(overHttps: true);
        return new TestAgency(services.AddHomeLineAgency(configuration, folder ?? "").BuildServiceProvider(validateScopes: true), clock, folder);
    }

    public Task PrepareAsync() =>
        _services.GetRequiredService<AgencyDatabase>().PrepareAsync(TestContext.Current.CancellationToken);

    public AgencyDb Open() => Databases.CreateDbContext();

    public async ValueTask DisposeAsync()
    {
        string? where = null;
        await using (AgencyDb db = Open()) where = db.Database.GetConnectionString();
        await _services.DisposeAsync();
        if (where!.StartsWith("Host", StringComparison.Ordinal))
        {
            await using var connection = new NpgsqlConnection(where);
            NpgsqlConnection.ClearPool(connection);
            return;
        }
        await using (var connection = new SqliteConnection(where)) SqliteConnection.ClearPool(connection);
        if (_folder is not null) Directory.Delete(_folder, recursive: true);
    }
}
