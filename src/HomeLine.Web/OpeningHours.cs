using HomeLine.Agency.Access;
using HomeLine.Agency.Storage;
using Microsoft.AspNetCore.Hosting.Server;
using Microsoft.AspNetCore.Hosting.Server.Features;

namespace HomeLine.Web;

/// <summary>Before the first page: the database is made ready, and whoever sets the program up is told how.</summary>
public static class OpeningHours
{
    /// <summary>False when the database must not be touched; the reason then stands on the error stream.</summary>
    public static async Task<bool> OpenDoorsAsync(this WebApplication app)
    {
        try
        {
            await app.Services.GetRequiredService<AgencyDatabase>().PrepareAsync(app.Lifetime.ApplicationStopping);
        }
        catch (DamagedDatabaseException damaged)
        {
            await Console.Error.WriteLineAsync(damaged.Message);
            return false;
        }
        // The code is shown here and nowhere else; it is not logged.
        if (await app.Services.GetRequiredService<FirstRun>().PrepareAsync(app.Lifetime.ApplicationStopping) is { } code)
            app.Lifetime.ApplicationStarted.Register(() => Console.WriteLine($"Set up the first administrator: {AddressOf(app)}/first-run?code={code}"));
        else
            app.Lifetime.ApplicationStarted.Register(() => Console.WriteLine($"HomeLine is open at {AddressOf(app)}"));
        return true;
    }

    private static string AddressOf(WebApplication app) =>
        app.Services.GetRequiredService<IServer>().Features.Get<IServerAddressesFeature>()?.Addresses.FirstOrDefault()?.TrimEnd('/') ?? "";
}
