using HomeLine.Agency.Access;
using HomeLine.Agency.Roster;
using HomeLine.Agency.Storage;
using HomeLine.Agency.Tests.Storage;
using HomeLine.Agency.WeekPlanning;
using Microsoft.Extensions.DependencyInjection;
using NodaTime;

namespace HomeLine.Agency.Tests.Roster;

public sealed class OpenAgencyTests(PostgresCluster cluster)
{
    private static readonly LocalDate Monday = new(2027, 3, 8);

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Theory]
    [MemberData(nameof(TestAgency.BothProviders), MemberType = typeof(TestAgency))]
    public async Task An_empty_database_takes_a_roster_and_its_week_once(Provider provider)
    {
        await using TestAgency agency = await TestAgency.OnAsync(provider, cluster);
        var open = agency.Services.GetRequiredService<OpenAgency>();
        var week = new PlannedWeek { FirstDay = Monday, Version = 7, Visits = [] };
        Assert.False(await open.IsOpenAsync(Cancel));
        Assert.True((await open.OpenAsync(Actors.SetUp, RichRoster.Make(), week, Cancel)).Succeeded);
        Assert.True(await open.IsOpenAsync(Cancel));
        Assert.Equal("agency-open", (await open.OpenAsync(Actors.SetUp, RichRoster.Make(), week, Cancel)).Refusal?.Code);
        await using AgencyDb db = agency.Open();
        Assert.Equal(2, (await RosterReader.ReadAsync(db, Cancel)).Patients.Length);
        Assert.Equal(1, (await WeekStore.PublishedAsync(db, Monday, Cancel))!.Week.Version);
    }

    [Fact]
    public async Task A_refused_week_leaves_the_database_empty()
    {
        await using TestAgency agency = await TestAgency.OnAsync(Provider.Sqlite, cluster);
        var open = agency.Services.GetRequiredService<OpenAgency>();
        var visit = new WeekVisit { Id = "V1", Patient = RichRoster.Ann, Nurse = "N1", Day = Monday, Start = new LocalTime(9, 0), Minutes = 30, Care = [] };
        var week = new PlannedWeek { FirstDay = Monday, Visits = [visit, visit with { Id = "V2" }] };
        Assert.Equal("double-booked", (await open.OpenAsync(Actors.SetUp, RichRoster.Make(), week, Cancel)).Refusal?.Code);
        Assert.False(await open.IsOpenAsync(Cancel));
    }

    [Fact]
    public async Task An_agency_can_start_with_its_name_and_map_alone()
    {
        await using TestAgency agency = await TestAgency.OnAsync(Provider.Sqlite, cluster);
        var open = agency.Services.GetRequiredService<OpenAgency>();
        AgencyRoster rich = RichRoster.Make();
        Assert.True((await open.OpenEmptyAsync(TestAgency.Coordinator, rich.Profile, rich.Map, Cancel)).Succeeded);
        await using AgencyDb db = agency.Open();
        Assert.Empty((await RosterReader.ReadAsync(db, Cancel)).Patients);
    }
}
