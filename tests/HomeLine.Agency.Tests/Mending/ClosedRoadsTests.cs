using HomeLine.Agency.Mending;
using HomeLine.Agency.Reports;
using HomeLine.Agency.Roster;
using HomeLine.Agency.Tests.Storage;
using HomeLine.Agency.WeekPlanning;
using HomeLine.LineCare.Ledger;
using HomeLine.LineCare.Lines;
using NodaTime;
using static HomeLine.Agency.Tests.DemoOnDatabase;

namespace HomeLine.Agency.Tests.Mending;

/// <summary>A closure that was reported counts for every later answer of the day. What should happen was worked out by hand; our own scenario, invented throughout.</summary>
public sealed class ClosedRoadsTests(PostgresCluster cluster)
{
    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    private static RoadShut AllDay(string[] crossings, string[] towns) => new([.. crossings], [.. towns], Tuesday.Day.At(new LocalTime(6, 0)), Tuesday.Day.PlusDays(1).AtMidnight(), "snow");

    private static async Task<ReportResult> ReportP03Async(TestAgency agency) => (await agency.Ask<ReportProblem>().ReportAsync(TestAgency.Coordinator, new ProblemReport
    {
        Patient = new PatientId("P03"),
        Line = new LineId("P03-1"),
        Caller = "spouse",
        SeenAt = DemoAgency.At(9, 7, 52),
        Answers = Tuesday.AllNoBut(),
        Finding = SealFinding.EdgeLifted | SealFinding.Moisture,
    }, Cancel)).Value;

    /// <summary>N3 would come to P03 over the pass at 10:08; round by the shore it is 33 minutes more: 64 instead of 31.</summary>
    [Theory]
    [MemberData(nameof(TestAgency.BothProviders), MemberType = typeof(TestAgency))]
    public async Task A_dressing_reported_later_is_answered_round_the_closed_pass(Provider provider)
    {
        await using TestAgency open = await OpenAsync(provider, cluster, DemoAgency.At(9, 7, 52));
        await using TestAgency shut = await OpenAsync(provider, cluster, DemoAgency.At(9, 7, 52));
        await shut.ReportAsync(AllDay(["Larch Pass"], []));

        AnswerInWords usual = (await ReportP03Async(open)).Offer!.Answers.Single(a => a.Visit.Nurse == "N3");
        OfferedAnswers round = (await ReportP03Async(shut)).Offer!;

        Assert.Equal(new LocalTime(10, 8), usual.Visit.Start);
        Assert.All(round.Answers.Where(a => a.Visit.Nurse == "N3"), a => Assert.True(a.Visit.Start >= new LocalTime(10, 38), $"{a.Visit.Start}"));
        Assert.NotEmpty(round.Answers);
    }

    [Fact]
    public async Task Nobody_from_beyond_a_closed_town_is_sent_into_it_when_a_nurse_calls_out()
    {
        await using TestAgency agency = await OpenAsync(Provider.Sqlite, cluster, DemoAgency.At(9, 6, 0));
        await agency.ReportAsync(AllDay([], ["MOS"]));

        FiledTrouble trouble = await agency.ReportAsync(new NurseIsOut("N4", Tuesday.Day.AtMidnight(), Tuesday.Day, "ill"));

        foreach (MendAnswer answer in trouble.Offer!.Answers)
            Assert.All(answer.Changes.Select(c => c.After).OfType<WeekVisit>().Where(v => v.Day == Tuesday.Day && v.Nurse != "N3"), v => Assert.NotEqual("MOS", TownOf(v)));
    }

    [Fact]
    public async Task A_closed_town_keeps_those_outside_out_and_those_inside_are_phoned()
    {
        await using TestAgency agency = await OpenAsync(Provider.Sqlite, cluster, DemoAgency.At(9, 6, 0));

        FiledTrouble trouble = await agency.ReportAsync(AllDay([], ["MOS"]));

        Assert.Contains(trouble.Offer!.Facts, f => f.StartsWith("Mossgate closed", StringComparison.Ordinal));
        // N4 lives at the branch and was to see two children in Mossgate. N3 lives there and can be with P44.
        Assert.Contains("P40", trouble.Offer.CannotWait.Patients());
        Assert.Contains("P39", trouble.Offer.CannotWait.Patients());
        foreach (MendAnswer answer in trouble.Offer.Answers)
            Assert.All(answer.Changes.Select(c => c.After).OfType<WeekVisit>().Where(v => v.Day == Tuesday.Day && v.Nurse != "N3"), v => Assert.NotEqual("MOS", TownOf(v)));
        // Who still gets nobody is phoned.
        Assert.All(trouble.Offer.Answers[0].Changes.Where(c => c.After is null), c =>
            Assert.Contains(trouble.Offer.PhoneChecks, p => p.Who.StartsWith(DemoAgency.Roster.Patients.Single(x => x.Id == c.Before!.Patient).Name, StringComparison.Ordinal)));
    }

    [Fact]
    public async Task A_closure_that_was_taken_back_counts_no_more()
    {
        await using TestAgency agency = await OpenAsync(Provider.Sqlite, cluster, DemoAgency.At(9, 7, 52));
        FiledTrouble closed = await agency.ReportAsync(AllDay(["Larch Pass"], []));
        Assert.True((await agency.Ask<MendTrouble>().CloseAsync(TestAgency.Coordinator, closed.Id, "ploughed", Cancel)).Succeeded);

        Assert.Contains((await ReportP03Async(agency)).Offer!.Answers, a => a.Visit is { Nurse: "N3", Start: var at } && at == new LocalTime(10, 8));
    }

    [Fact]
    public void Two_closures_that_overlap_count_together_while_both_hold()
    {
        RoadShut morning = AllDay(["Larch Pass"], []) with { To = Tuesday.Day.At(new LocalTime(12, 0)) };
        string[] bridges = [.. DemoAgency.Roster.Map.Barriers.Single(b => b.Vertical).Crossings.Select(c => c.Name)];
        RoadShut noon = AllDay(bridges, []) with { From = Tuesday.Day.At(new LocalTime(10, 0)), To = Tuesday.Day.At(new LocalTime(14, 0)) };
        var calendar = new PlanCalendar(DemoAgency.Roster.Profile.Zone, DemoAgency.FirstDay, 7);
        RoadTravel roads = RoadTravel.Of(DemoAgency.Roster);
        int north = roads.PlaceOfPatient("P44"), south = roads.PlaceOfPatient("P03");

        var changes = StandingClosures.Changes([morning, noon], DemoAgency.Roster, calendar);

        Assert.Equal([6, 10, 12], changes.Select(c => (c.From / 60) - 24));
        Assert.True(changes[0].Travel.Minutes(north, south) > roads.Times.Minutes(north, south));
        // Without the pass the way round is beyond the river; without its bridges too it is the shore, far to the east.
        Assert.True(changes[1].Travel.Minutes(north, south) > changes[0].Travel.Minutes(north, south));
        Assert.Equal(roads.Times.Minutes(north, south), changes[2].Travel.Minutes(north, south));
    }

    private static string TownOf(WeekVisit visit)
    {
        MapPoint home = DemoAgency.Roster.Patients.Single(p => p.Id == visit.Patient).Home;
        return DemoAgency.Roster.Map.Towns.MinBy(t => Math.Pow(t.At.X - home.X, 2) + Math.Pow(t.At.Y - home.Y, 2))!.Code;
    }
}
