using Microsoft.AspNetCore.Diagnostics.HealthChecks;

namespace HomeLine.Web.Endpoints;

/// <summary>Alive: the process answers. Ready: the database answers too. Both say one word and nothing else.</summary>
public static class HealthEndpoints
{
    public static void MapHealth(this WebApplication app)
    {
        app.MapHealthChecks("/health/live", new HealthCheckOptions { Predicate = _ => false }).AllowAnonymous();
        app.MapHealthChecks("/health/ready", new HealthCheckOptions { Predicate = check => check.Tags.Contains("ready") }).AllowAnonymous();
    }
}
