using System.Collections.Immutable;
using HomeLine.Agency.Access;
using HomeLine.Agency.DayMap;
using HomeLine.Agency.Mending;
using HomeLine.Agency.Roster;
using HomeLine.Agency.Storage;
using HomeLine.Agency.Tests.Storage;
using HomeLine.Agency.Today;
using HomeLine.Agency.WeekEditing;
using HomeLine.Agency.WeekPlanning;
using HomeLine.Planning;
using HomeLine.Planning.Checking;
using HomeLine.Planning.Plans;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using static HomeLine.Agency.Tests.DemoOnDatabase;

namespace HomeLine.Agency.Tests.Mending;

/// <summary>While a closure stands, the planner, moves by hand, the week, the map and the board know it; it is lifted by a person. Our own scenario, invented throughout.</summary>
public sealed class ClosureStandsTests(PostgresCluster cluster)
{
    private static readonly LocalDate Wednesday = new(2027, 3, 10);

    /// <summary>The pass on Wednesday from noon, as on the red-letter Tuesday.</summary>
    private static readonly RoadShut Pass = new(["Larch Pass"], [], Wednesday.At(new LocalTime(12, 0)), Wednesday.PlusDays(1).AtMidnight(), "snow");

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    private Task<TestAgency> TuesdayAsync(Provider provider = Provider.Sqlite) => OpenAsync(provider, cluster, DemoAgency.At(9, 13, 45));

    private static async Task<WorkingWeek> DraftAsync(TestAgency agency) =>
        (await agency.Ask<EditWeek>().OpenAsync(TestAgency.Coordinator, DemoAgency.FirstDay, Cancel)).Value;

    /// <summary>From P45 to P29 it is 31 minutes over the pass and 65 round the shore: N2 leaves P45 at 13:19 and was told to P29 for 13:50.</summary>
    [Fact]
    public async Task The_working_draft_and_the_published_week_say_who_cannot_be_reached_in_time()
    {
        await using TestAgency agency = await TuesdayAsync();
        Assert.True((await DraftAsync(agency)).Hand.Check.Accepted);

        await agency.ReportAsync(Pass);

        CheckReport draft = (await DraftAsync(agency)).Hand.Check;
        WeekBoard board = (await agency.Ask<AskWeek>().AskAsync(TestAgency.Coordinator, DemoAgency.FirstDay, draft: false, Cancel)).Value;
        Assert.Contains(draft.Findings, f => f.Visit == Tuesday.Visit(10, "P29"));
        Assert.Contains(board.Check.Findings, f => f.Visit == Tuesday.Visit(10, "P29"));
        Assert.Equal(65, board.Nurses.Single(n => n.NurseId == "N2").Days.Single(d => d.Day == Wednesday).Stops.Single(s => s.Visit.Patient.Value == "P29").TravelBefore);
    }

    [Fact]
    public async Task By_hand_nobody_is_put_where_the_closed_road_would_be_needed()
    {
        await using TestAgency agency = await TuesdayAsync();
        var editing = agency.Ask<EditWeek>();
        string TownOf(MapPoint at) => DemoAgency.Roster.Map.NearestTown(at)!.Code;
        WeekVisit[] there = [.. DemoAgency.Published.Visits.Where(v => v.Day >= Wednesday && TownOf(DemoAgency.Roster.Patients.Single(p => p.Id == v.Patient).Home) == "DUN").Take(6)];
        async Task<string[]> OnWednesdayAsync()
        {
            var nurses = new List<string>();
            foreach (WeekVisit visit in there)
                nurses.AddRange((await editing.PlacesOfVisitAsync(TestAgency.Coordinator, DemoAgency.FirstDay, 0, visit.Id, Cancel)).Value.Where(p => p.Day == Wednesday).Select(p => p.Nurse));
            return [.. nurses.Distinct()];
        }

        string[] inside = [.. DemoAgency.Roster.Nurses.Where(n => TownOf(n.Home) == "DUN").Select(n => n.Id)];
        Assert.Contains(await OnWednesdayAsync(), n => !inside.Contains(n));

        await agency.ReportAsync(Pass with { From = Wednesday.AtMidnight(), Towns = ["DUN"], Crossings = [] });

        Assert.All(await OnWednesdayAsync(), n => Assert.Contains(n, inside));
    }

    [Theory]
    [MemberData(nameof(TestAgency.BothProviders), MemberType = typeof(TestAgency))]
    public async Task The_planner_sends_nobody_over_a_closed_road(Provider provider)
    {
        await using TestAgency agency = await TuesdayAsync(provider);
        await agency.ReportAsync(Pass);
        var planner = agency.Ask<PlanTheWeek>();

        Assert.True((await planner.StartAsync(TestAgency.Coordinator, DemoAgency.FirstDay, new PlanOptions(Iterations: 300), Cancel)).Succeeded);
        while (planner.Current!.State == PlanRunState.Running) await Task.Delay(20, Cancel);

        Assert.True(planner.Current.State == PlanRunState.Finished, planner.Current.Message);
        WorkingWeek draft = await DraftAsync(agency);
        Assert.True(draft.Hand.Check.Accepted, string.Join("\n", draft.Hand.Check.Findings.Select(f => f.Reason.Sentence)));
        Assert.NotEqual(0, draft.Revision);
    }

    [Fact]
    public void What_is_planned_while_the_pass_is_closed_keeps_every_rule_and_its_score_is_the_checkers()
    {
        WeekDemand demand = WeekDemand.Ahead(DemoAgency.Roster, [DemoAgency.Published], DemoAgency.FirstDay, DemoAgency.At(9, 13, 45), 14).WithClosures([Pass], DemoAgency.Roster);

        WeekPlan plan = Planner.Plan(demand.Problem, new PlanOptions(Iterations: 300), null, Cancel);

        CheckReport check = Checker.Check(demand.Problem, plan);
        Assert.True(check.Accepted, string.Join("\n", check.Findings.Select(f => f.Reason.Sentence)));
        Assert.Equal(check.Score, plan.Score);
    }

    [Fact]
    public async Task The_map_draws_the_closed_road_and_says_the_way_round()
    {
        await using TestAgency agency = await TuesdayAsync();
        DrawnDay before = (await agency.Ask<AskDayMap>().AskAsync(TestAgency.Coordinator, Wednesday, draft: false, Cancel)).Value;
        await agency.ReportAsync(Pass);
        await agency.ReportAsync(Pass with { Crossings = [], Towns = ["WES"], Why = "" });

        DrawnDay drawn = (await agency.Ask<AskDayMap>().AskAsync(TestAgency.Coordinator, Wednesday, draft: false, Cancel)).Value;

        WayStop usual = StopOf(before, "N2", "P29"), round = StopOf(drawn, "N2", "P29");
        Assert.Contains("Larch Pass", usual.Over);
        Assert.DoesNotContain("Larch Pass", round.Over);
        Assert.Equal((31, 65), (usual.TravelBefore, round.TravelBefore));
        Assert.Equal("Larch Pass, from Wed 10 Mar 12:00 to Thu 11 Mar 00:00: snow", drawn.Closures[0].Words);
        Assert.Contains(drawn.Ways.SelectMany(w => w.Stops), s => s.NoWay.EndsWith("is closed", StringComparison.Ordinal));
        // On Tuesday nothing is closed yet.
        Assert.Empty((await agency.Ask<AskDayMap>().AskAsync(TestAgency.Coordinator, Tuesday.Day, draft: false, Cancel)).Value.Closures);
    }

    [Fact]
    public async Task A_closure_that_was_applied_is_lifted_with_who_and_why_and_what_was_moved_is_only_offered_back()
    {
        await using TestAgency agency = await TuesdayAsync();
        FiledTrouble closed = await agency.ReportAsync(Pass);
        AppliedTrouble applied = await agency.ApplyAsync(closed);
        PlannedWeek moved = await agency.WeekAsync();
        Assert.Contains((await BoardAsync(agency)).Closures, c => c.Id == closed.Id);
        await agency.MoveClockAsync(9, 20);

        FiledTrouble lifted = (await agency.Ask<LiftClosure>().LiftAsync(TestAgency.Coordinator, closed.Id, "ploughed, the road service called", Cancel)).Value;

        Assert.Equal(TroubleState.Applied, lifted.State);
        Assert.Equal(("ploughed, the road service called", TestAgency.Coordinator.Name), (((RoadShut)lifted.Entry).Opened!.Why, ((RoadShut)lifted.Entry).Opened!.By));
        Assert.Equal(moved.Version, (await agency.WeekAsync()).Version);
        Assert.Empty((await BoardAsync(agency)).Closures);
        await using (AgencyDb db = agency.Open())
            Assert.Contains(await db.AuditEntries.ToListAsync(Cancel), e => e.Action == "lift-closure" && e.ActorName == TestAgency.Coordinator.Name);

        FiledTrouble again = (await agency.Ask<LiftClosure>().LookAgainAsync(TestAgency.Coordinator, closed.Id, Cancel)).Value;
        MendAnswer back = Assert.Single(again.Offer!.Answers);
        Assert.Equal(applied.Trouble.Offer!.Answers[0].Changes.Select(c => c.Before!.Id).Order(), back.Changes.Select(c => c.After!.Id).Order());
        Assert.Contains(back.ToTell, p => p.What.StartsWith("The road is open again.", StringComparison.Ordinal));

        PlannedWeek restored = (await agency.ApplyAsync(again)).Week!;
        WeekVisit Needle(PlannedWeek week) => week.Visits.Single(v => v.Id == Tuesday.Visit(10, "P29"));
        Assert.Equal((Needle(DemoAgency.Published).Nurse, Needle(DemoAgency.Published).Start), (Needle(restored).Nurse, Needle(restored).Start));
    }

    [Fact]
    public async Task What_cannot_be_lifted_is_refused_in_words()
    {
        await using TestAgency agency = await TuesdayAsync();
        FiledTrouble closed = await agency.ReportAsync(Pass);
        var lifting = agency.Ask<LiftClosure>();

        Assert.Equal("lift-reason-missing", (await lifting.LiftAsync(TestAgency.Coordinator, closed.Id, " ", Cancel)).Refusal!.Code);
        Assert.Equal("closure-holds", (await lifting.LookAgainAsync(TestAgency.Coordinator, closed.Id, Cancel)).Refusal!.Code);
        Assert.Equal("not-a-closure", (await lifting.LiftAsync(TestAgency.Coordinator, "T99", "ploughed", Cancel)).Refusal!.Code);
        Assert.Equal("not-allowed", (await lifting.LiftAsync(new Actor("u-admin", "Admin", [AgencyRole.Administrator]), closed.Id, "ploughed", Cancel)).Refusal!.Code);
        Assert.True((await lifting.LiftAsync(TestAgency.Coordinator, closed.Id, "ploughed", Cancel)).Succeeded);
        Assert.Equal("closure-ended", (await lifting.LiftAsync(TestAgency.Coordinator, closed.Id, "ploughed", Cancel)).Refusal!.Code);
        Assert.Equal("nothing-moved", (await lifting.LookAgainAsync(TestAgency.Coordinator, closed.Id, Cancel)).Refusal!.Code);
        Assert.True((await DraftAsync(agency)).Hand.Check.Accepted);
    }

    [Fact]
    public async Task With_every_town_closed_there_is_a_list_on_foot_and_a_list_by_phone()
    {
        await using TestAgency agency = await OpenAsync(Provider.Sqlite, cluster, DemoAgency.At(9, 6, 0));

        FiledTrouble trouble = await agency.ReportAsync(new RoadShut(
            [], [.. DemoAgency.Roster.Map.Towns.Select(t => t.Code)], Tuesday.Day.At(new LocalTime(6, 0)), Tuesday.Day.PlusDays(1).AtMidnight(), "ice"));

        MendAnswer best = trouble.Offer!.Answers[0];
        string onFoot = trouble.Offer.Facts.Single(f => f.StartsWith("Nobody gets from one town to another.", StringComparison.Ordinal));
        string byPhone = trouble.Offer.Facts.Single(f => f.StartsWith("By phone only:", StringComparison.Ordinal));
        string Name(WeekVisit visit) => DemoAgency.Roster.Patients.Single(p => p.Id == visit.Patient).Name;
        Assert.All(best.Changes.Where(c => c.After is null), c => Assert.Contains(Name(c.Before!), byPhone, StringComparison.Ordinal));
        // Nobody drives: whoever still gets a visit that day gets it from somebody of the same town.
        string TownOf(MapPoint at) => DemoAgency.Roster.Map.NearestTown(at)!.Code;
        var moved = best.Changes.ToDictionary(c => c.Before!.Id, c => c.After);
        foreach (WeekVisit visit in DemoAgency.Published.Visits.Where(v => v.Day == Tuesday.Day).Select(v => moved.TryGetValue(v.Id, out WeekVisit? after) ? after : v).OfType<WeekVisit>().Where(v => v.Day == Tuesday.Day))
        {
            Assert.Equal(TownOf(DemoAgency.Roster.Patients.Single(p => p.Id == visit.Patient).Home), TownOf(DemoAgency.Roster.Nurses.Single(n => n.Id == visit.Nurse).Home));
            Assert.Contains(Name(visit), onFoot, StringComparison.Ordinal);
        }
    }

    private static async Task<TodayBoard> BoardAsync(TestAgency agency) => (await agency.Ask<AskToday>().AskAsync(TestAgency.Coordinator, Cancel)).Value;

    private static WayStop StopOf(DrawnDay day, string nurse, string patient) => day.Ways.Single(w => w.Nurse == nurse).Stops.Single(s => s.Patient == patient);
}
