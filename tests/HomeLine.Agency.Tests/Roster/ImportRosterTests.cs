using HomeLine.Agency.Access;
using HomeLine.Agency.Roster;
using HomeLine.Agency.Storage;
using HomeLine.Agency.Tests.Storage;
using HomeLine.LineCare.Lines;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;

namespace HomeLine.Agency.Tests.Roster;

/// <summary>A roster brought in: seen first, then stored whole or not at all. Invented data.</summary>
public sealed class ImportRosterTests(PostgresCluster cluster)
{
    private static readonly Actor Nurse = new("u-nurse", "Sorrel", [AgencyRole.Nurse], "N3");

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    private static AgencyRoster WithMovedPatient() => DemoAgency.Roster with
    {
        Patients = [.. DemoAgency.Roster.Patients.Select(p => p.Id.Value == "P01" ? p with { Phone = "555-0199" } : p)],
    };

    private static async Task<TestAgency> OpenAsync(Provider provider, PostgresCluster cluster)
    {
        TestAgency agency = await TestAgency.OnAsync(provider, cluster);
        await agency.Services.GetRequiredService<OpenAgency>().OpenAsync(Actors.SetUp, DemoAgency.Roster, DemoAgency.Published, Cancel);
        return agency;
    }

    [Theory]
    [MemberData(nameof(TestAgency.BothProviders), MemberType = typeof(TestAgency))]
    public async Task A_preview_stores_nothing_and_applying_it_stores_just_what_changed(Provider provider)
    {
        await using TestAgency agency = await OpenAsync(provider, cluster);
        var import = agency.Services.GetRequiredService<ImportRoster>();

        RosterChange change = (await import.PreviewAsync(TestAgency.Coordinator, WithMovedPatient(), Cancel)).Value;
        await using (AgencyDb before = agency.Open())
            Assert.NotEqual("555-0199", (await before.Patients.SingleAsync(p => p.Id == new PatientId("P01"), Cancel)).Phone);
        int written = (await import.ApplyAsync(TestAgency.Coordinator, change, Cancel)).Value;

        Assert.Equal(1, written);
        await using AgencyDb after = agency.Open();
        Assert.Equal("555-0199", (await after.Patients.SingleAsync(p => p.Id == new PatientId("P01"), Cancel)).Phone);
        Assert.Equal(60, await after.Patients.CountAsync(Cancel));
    }

    [Fact]
    public async Task A_role_that_may_not_import_changes_nothing_even_with_a_preview_in_hand()
    {
        await using TestAgency agency = await OpenAsync(Provider.Sqlite, cluster);
        var import = agency.Services.GetRequiredService<ImportRoster>();
        RosterChange change = (await import.PreviewAsync(TestAgency.Coordinator, WithMovedPatient(), Cancel)).Value;

        Assert.Equal("not-allowed", (await import.PreviewAsync(Nurse, WithMovedPatient(), Cancel)).Refusal?.Code);
        Assert.Equal("not-allowed", (await import.ApplyAsync(Nurse, change, Cancel)).Refusal?.Code);
    }

    [Fact]
    public async Task Real_people_are_not_mixed_into_the_demonstration()
    {
        await using TestAgency agency = await OpenAsync(Provider.Sqlite, cluster);
        AgencyRoster real = DemoAgency.Roster with { Profile = DemoAgency.Roster.Profile with { IsDemo = false } };

        Assert.Equal("demo-agency", (await agency.Services.GetRequiredService<ImportRoster>().PreviewAsync(TestAgency.Coordinator, real, Cancel)).Refusal?.Code);
    }
}
