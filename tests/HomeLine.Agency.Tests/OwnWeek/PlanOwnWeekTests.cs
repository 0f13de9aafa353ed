using System.Collections.Immutable;
using HomeLine.Agency.Access;
using HomeLine.Agency.OwnWeek;
using HomeLine.Agency.Roster;
using HomeLine.Agency.Storage;
using HomeLine.Agency.Tests.Storage;
using HomeLine.Agency.WeekEditing;
using HomeLine.Agency.WeekPlanning;
using Microsoft.EntityFrameworkCore;
using NodaTime;

namespace HomeLine.Agency.Tests.OwnWeek;

/// <summary>A nurse plans her own week, inside the demonstration agency and alone. Invented data.</summary>
public sealed class PlanOwnWeekTests(PostgresCluster cluster)
{
    private static readonly Actor Alone = new("u-alone", "Juniper", [AgencyRole.Nurse, AgencyRole.Coordinator], "N1");

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    private Task<TestAgency> OpenAsync(Provider provider = Provider.Sqlite) => DemoOnDatabase.OpenAsync(provider, cluster, DemoAgency.Now);

    /// <summary>An agency of one nurse: N1 of the demonstration with the patients who know her, nothing published, on call every day.</summary>
    private async Task<TestAgency> OpenAloneAsync()
    {
        TestAgency agency = await TestAgency.OnAsync(Provider.Sqlite, cluster);
        AgencyRoster all = DemoAgency.Roster;
        NurseFile nurse = all.Nurses.First(n => n.Id == "N1");
        var roster = all with { Nurses = [nurse with { Week = [.. nurse.Week, .. Enum.GetValues<IsoDayOfWeek>().Where(d => d != IsoDayOfWeek.None).Select(d => new WorkingTime(d, new LocalTime(8, 0), new LocalTime(20, 0), OnCall: true))] }] };
        Assert.True((await agency.Ask<OpenAgency>().OpenAsync(Actors.SetUp, roster, null, Cancel)).Succeeded);
        return agency;
    }

    [Theory]
    [MemberData(nameof(TestAgency.BothProviders), MemberType = typeof(TestAgency))]
    public async Task Nobody_elses_visit_moves_and_it_waits_as_one_step_of_the_draft(Provider provider)
    {
        await using TestAgency agency = await OpenAsync(provider);

        MyWeek mine = (await agency.Ask<PlanOwnWeek>().PlanAsync(DemoOnDatabase.Nurse, DemoAgency.FirstDay, Cancel)).Value;

        Assert.True(mine is { IsDraft: true, IsAlone: false, ChangedBy: "Sorrel" });
        WorkingWeek week = (await agency.Ask<EditWeek>().OpenAsync(TestAgency.Coordinator, DemoAgency.FirstDay, Cancel)).Value;
        Assert.Equal(Others(DemoAgency.Published.Visits), Others(week.Week.Visits));
        Assert.True(week.Hand.Check.Accepted);
        Assert.Contains("planned her own week", week.Log.Undoable?.Words, StringComparison.Ordinal);
        WorkingWeek back = (await agency.Ask<EditWeek>().UndoAsync(TestAgency.Coordinator, DemoAgency.FirstDay, week.Revision, Cancel)).Value;
        Assert.Equal(DemoAgency.Published.Visits.Where(v => v.Nurse == "N3").Select(Where).Order(), back.Week.Visits.Where(v => v.Nurse == "N3").Select(Where).Order());
        await using AgencyDb db = agency.Open();
        Assert.Equal("week 2027-03-08", (await db.AuditEntries.AsNoTracking().SingleAsync(e => e.Action == "plan-own-week", Cancel)).Subject);
    }

    [Fact]
    public async Task A_nurse_without_the_right_to_publish_leaves_it_to_the_coordinator()
    {
        await using TestAgency agency = await OpenAsync();
        await agency.Ask<PlanOwnWeek>().PlanAsync(DemoOnDatabase.Nurse, DemoAgency.FirstDay, Cancel);

        Assert.Equal("not-allowed", (await agency.Ask<PublishWeek>().PublishAsync(DemoOnDatabase.Nurse, DemoAgency.FirstDay, 1, null, Cancel)).Refusal?.Code);
        Assert.Equal(2, (await agency.Ask<PublishWeek>().PublishAsync(TestAgency.Coordinator, DemoAgency.FirstDay, 1, null, Cancel)).Value.Version);
    }

    [Fact]
    public async Task Alone_she_plans_all_she_can_and_the_rest_says_why_and_she_publishes_it()
    {
        await using TestAgency agency = await OpenAloneAsync();
        LocalDate next = DemoAgency.FirstDay.PlusWeeks(1);

        MyWeek mine = (await agency.Ask<PlanOwnWeek>().PlanAsync(Alone, next, Cancel)).Value;

        Assert.True(mine.IsAlone);
        Assert.InRange(mine.Visits, 20, 40);
        Assert.NotEmpty(mine.Unmet);
        Assert.All(mine.Unmet, u => Assert.NotEmpty(u.Reasons));
        const string covered = "Alone this week: the neighbouring agency takes what I cannot, the families were called.";
        PlannedWeek published = (await agency.Ask<PublishWeek>().PublishAsync(Alone, next, 0, covered, Cancel)).Value;
        Assert.Equal(mine.Visits, published.Visits.Length);
        Assert.True((await agency.Ask<PlanOwnWeek>().AskAsync(Alone, next, Cancel)).Value is { IsDraft: false, Version: 1 });
    }

    [Fact]
    public async Task What_cannot_be_is_refused_in_words_and_keeps_nothing()
    {
        await using TestAgency agency = await OpenAsync();
        var own = agency.Ask<PlanOwnWeek>();

        Assert.Equal("not-allowed", (await own.PlanAsync(TestAgency.Coordinator, DemoAgency.FirstDay, Cancel)).Refusal?.Code);
        Assert.Equal("nurse-unknown", (await own.PlanAsync(DemoOnDatabase.Nurse with { NurseId = null }, DemoAgency.FirstDay, Cancel)).Refusal?.Code);
        Assert.Equal("nurse-unknown", (await own.AskAsync(DemoOnDatabase.Nurse with { NurseId = "N99" }, DemoAgency.FirstDay, Cancel)).Refusal?.Code);
        Assert.Equal("own-week-past", (await own.PlanAsync(DemoOnDatabase.Nurse, DemoAgency.FirstDay.PlusWeeks(-1), Cancel)).Refusal?.Code);
        await using AgencyDb db = agency.Open();
        Assert.Null(await WeekStore.DraftAsync(db, DemoAgency.FirstDay, Cancel));
    }

    private static IEnumerable<string> Others(ImmutableArray<WeekVisit> visits) => visits.Where(v => v.Nurse != "N3" || v.Second is not null).Select(Where).Order();

    private static string Where(WeekVisit visit) => $"{visit.Id} {visit.Patient} {visit.Nurse} {visit.Second} {visit.Day} {visit.Start} {visit.Promise}";
}
