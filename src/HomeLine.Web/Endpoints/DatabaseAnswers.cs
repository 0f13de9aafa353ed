using HomeLine.Agency.Storage;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.Diagnostics.HealthChecks;

namespace HomeLine.Web.Endpoints;

/// <summary>Ready means that the database can be reached; no detail leaves the machine.</summary>
public sealed class DatabaseAnswers(IDbContextFactory<AgencyDb> databases) : IHealthCheck
{
    public async Task<HealthCheckResult> CheckHealthAsync(HealthCheckContext context, CancellationToken cancellationToken = default)
    {
        await using AgencyDb database = await databases.CreateDbContextAsync(cancellationToken);
        return await database.Database.CanConnectAsync(cancellationToken) ? HealthCheckResult.Healthy() : HealthCheckResult.Unhealthy();
    }
}
