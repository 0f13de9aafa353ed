using HomeLine.Agency.Access;
using HomeLine.Agency.Roster;
using HomeLine.Agency.Tests.Storage;
using Microsoft.Extensions.DependencyInjection;
using NodaTime;

namespace HomeLine.Agency.Tests;

/// <summary>The demonstration agency opened in a real database, its clock set; and the people who act in it, invented throughout.</summary>
internal static class DemoOnDatabase
{
    public static readonly Actor Nurse = new("u-nurse", "Sorrel", [AgencyRole.Nurse], "N3");

    public static readonly Actor ClinicalLead = new("u-manager", "Hyssop", [AgencyRole.ClinicalManager]);

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    public static async Task<TestAgency> OpenAsync(
        Provider provider, PostgresCluster cluster, Instant now, Func<AgencyRoster, AgencyRoster>? but = null)
    {
        TestAgency agency = await TestAgency.OnAsync(provider, cluster);
        AgencyRoster roster = DemoAgency.Roster with { Profile = DemoAgency.Roster.Profile with { FixedNow = now } };
        Assert.True((await agency.Services.GetRequiredService<OpenAgency>()
            .OpenAsync(Actors.SetUp, but is null ? roster : but(roster), DemoAgency.Published, Cancel)).Succeeded);
        return agency;
    }

    public static T Ask<T>(this TestAgency agency)
        where T : notnull => agency.Services.GetRequiredService<T>();

    public static async Task MoveClockAsync(this TestAgency agency, int day, int hour, int minute = 0) =>
        Assert.True((await agency.Ask<MoveDemoClock>().MoveAsync(ClinicalLead, new LocalDateTime(2027, 3, day, hour, minute), Cancel)).Succeeded);
}
