using System.Collections.Immutable;
using HomeLine.Agency.Roster;
using HomeLine.Agency.Tests.Storage;
using HomeLine.Agency.WeekEditing;
using HomeLine.Agency.WeekPlanning;
using HomeLine.LineCare.Policy;
using HomeLine.Planning;
using HomeLine.Planning.Plans;
using HomeLine.Planning.Reserve;
using NodaTime;

namespace HomeLine.Agency.Tests.WeekPlanning;

/// <summary>What a week keeps free for care nobody planned, and whether somebody can be called out. The demonstration agency; invented data.</summary>
public sealed class ReserveAndOnCallTests(PostgresCluster cluster)
{
    private static readonly PlannedWeek NoVisits = new() { FirstDay = DemoAgency.FirstDay, Visits = [] };

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public void One_slot_is_asked_for_every_three_nurses_begun()
    {
        ImmutableArray<DayReserve> reserve = Reserve(NoVisits, new LocalDateTime(2027, 3, 1, 6, 0));

        // Nurses at work by day, from the scenario's shifts: Mon 4, Tue 7, Wed 4, Thu 6 (N2 on leave), Fri 4, Sat 2, Sun 1.
        int[] nurses = [.. reserve.Select(r => r.Nurses.Length)];
        Assert.Equal(nurses.Select(n => (n + 2) / 3), reserve.Select(r => r.Asked));
        Assert.All(reserve, r => Assert.True(r.IsKept));
    }

    [Fact]
    public void A_nurse_without_visits_has_as_many_slots_as_fit_into_her_shift()
    {
        // N5 works Mon 07:30 to 15:30 without a break: 480 minutes, 6 slots of 75.
        AgencyRoster alone = DemoAgency.Roster with { Nurses = [DemoAgency.Roster.Nurses.Single(n => n.Id == "N5")] };
        DayReserve monday = DayReserve.Of(alone, DemoAgency.Files.Policy, NoVisits, RoadTravel.Of(alone), new LocalDateTime(2027, 3, 1, 6, 0))[0];

        Assert.Equal((1, 6), (monday.Asked, monday.Free));
    }

    [Fact]
    public void A_policy_of_no_nurses_for_a_slot_asks_for_none()
    {
        AgencyRoster off = DemoAgency.Roster with { Policy = [.. DemoAgency.Roster.Policy, PolicyBook.Default.Rules.Single(r => r.Id == "reserve.nursesperslot") with { Value = 0, Level = PolicyLevel.Agency }] };

        Assert.All(DayReserve.Of(off, CareFiles.Of(off).Policy, NoVisits, RoadTravel.Of(off), new LocalDateTime(2027, 3, 1, 6, 0)), r => Assert.Equal((0, true), (r.Asked, r.IsKept)));
    }

    [Fact]
    public void The_planner_and_the_week_count_the_same_slots()
    {
        WeekDemand demand = WeekDemand.Of(DemoAgency.Roster, DemoAgency.Files, DemoAgency.FirstDay, 7, DemoAgency.FirstDay.AtStartOfDayInZone(DemoAgency.Roster.Profile.Zone).ToInstant());
        WeekPlan plan = Planner.Plan(demand.Problem, new PlanOptions(1, 50), cancel: Cancel);
        ReserveRules rules = DayReserve.Rules(DemoAgency.Files.Policy, DemoAgency.FirstDay);

        Assert.Equal(
            DaySlots.Of(demand.Problem, plan.Visits, rules).Select(d => (d.Asked, d.Free)),
            Reserve(PlanInNames.Of(plan, demand), DemoAgency.FirstDay.AtMidnight()).Select(d => (d.Asked, d.Free)));
    }

    [Fact]
    public void What_lies_behind_now_is_neither_free_nor_asked_for()
    {
        ImmutableArray<DayReserve> reserve = Reserve(DemoAgency.Published, new LocalDateTime(2027, 3, 10, 23, 0));

        Assert.All(reserve.Take(3), r => Assert.Equal((0, 0), (r.Asked, r.Free)));
        Assert.True(reserve[3].Asked > 0);
    }

    [Fact]
    public void A_day_filled_from_end_to_end_is_below_the_reserve()
    {
        AgencyRoster alone = DemoAgency.Roster with { Nurses = [DemoAgency.Roster.Nurses.Single(n => n.Id == "N5")] };
        WeekVisit whole = DemoAgency.Published.Visits[0] with { Nurse = "N5", Second = null, Day = DemoAgency.FirstDay, Start = new LocalTime(8, 30), Minutes = 360 };
        DayReserve monday = DayReserve.Of(alone, DemoAgency.Files.Policy, NoVisits with { Visits = [whole] }, RoadTravel.Of(alone), new LocalDateTime(2027, 3, 1, 6, 0))[0];

        Assert.False(monday.IsKept);
    }

    [Fact]
    public async Task A_week_in_which_nobody_is_on_call_on_a_night_is_not_published()
    {
        // N8 holds the nights from Monday to Thursday.
        await using TestAgency agency = await DemoOnDatabase.OpenAsync(Provider.Sqlite, cluster, DemoAgency.Now, roster => roster with
        {
            Nurses = [.. roster.Nurses.Select(n => n.Id == "N8" ? n with { Week = [.. n.Week.Where(w => !w.OnCall)] } : n)],
        });

        Refusal refusal = (await PublishAsync(agency)).Refusal!;

        Assert.Equal("nobody-on-call", refusal.Code);
        Assert.Equal("Nobody is on call on Mon 8 Mar, Tue 9 Mar, Wed 10 Mar, Thu 11 Mar.", refusal.Sentence);
    }

    [Fact]
    public async Task An_agency_whose_calls_go_elsewhere_turns_that_rule_off()
    {
        await using TestAgency agency = await DemoOnDatabase.OpenAsync(Provider.Sqlite, cluster, DemoAgency.Now, roster => roster with
        {
            Nurses = [.. roster.Nurses.Select(n => n with { Week = [.. n.Week.Where(w => !w.OnCall)] })],
            Policy = [.. roster.Policy, PolicyBook.Default.Rules.Single(r => r.Id == "oncall.required") with { Value = 0, Level = PolicyLevel.Agency }],
        });

        Assert.True((await PublishAsync(agency)).Succeeded);
    }

    [Fact]
    public async Task Days_below_the_reserve_are_told_before_publishing_and_do_not_stop_it()
    {
        await using TestAgency agency = await DemoOnDatabase.OpenAsync(Provider.Sqlite, cluster, DemoAgency.Now, roster => roster with
        {
            Policy = [.. roster.Policy, PolicyBook.Default.Rules.Single(r => r.Id == "reserve.slot") with { Value = 700, Level = PolicyLevel.Agency }],
        });
        int version = await DraftAsync(agency);

        ImmutableArray<DayReserve> below = (await agency.Ask<PublishWeek>().BelowReserveAsync(TestAgency.Coordinator, DemoAgency.FirstDay, Cancel)).Value;

        Assert.Equal(7, below.Length);
        Assert.True((await agency.Ask<PublishWeek>().PublishAsync(TestAgency.Coordinator, DemoAgency.FirstDay, version, null, Cancel)).Succeeded);
    }

    [Fact]
    public async Task With_critical_care_unmet_a_reason_and_a_backup_plan_are_typed_first()
    {
        await using TestAgency agency = await DemoOnDatabase.OpenAsync(Provider.Sqlite, cluster, DemoAgency.Now);
        WorkingWeek week = (await agency.Ask<EditWeek>().OpenAsync(TestAgency.Coordinator, DemoAgency.FirstDay, Cancel)).Value;
        var critical = week.Hand.Problem.Tasks.Where(t => t.Critical).Select(t => t.Id).ToHashSet();
        string visit = week.Hand.Visits.Last(v => v.Tasks.Any(critical.Contains) && !week.Hand.Stays(v.Id)).Id;
        Assert.True((await agency.Ask<EditWeek>().MakeAsync(TestAgency.Coordinator, DemoAgency.FirstDay, 0, new HandEdit.TakeOut(visit), Cancel)).Succeeded);

        foreach (string? typed in (string?[])[null, "", "it is fine"])
            Assert.Equal("critical-unmet", (await TypedAsync(typed)).Refusal?.Code);
        Assert.True((await TypedAsync("Reason: the nurse is ill. Backup plan: the hospital sends somebody at nine.")).Succeeded);

        Task<Outcome<PlannedWeek>> TypedAsync(string? words) =>
            agency.Ask<PublishWeek>().PublishAsync(TestAgency.Coordinator, DemoAgency.FirstDay, week.Published!.Version, words, Cancel);
    }

    private static ImmutableArray<DayReserve> Reserve(PlannedWeek week, LocalDateTime now) =>
        DayReserve.Of(DemoAgency.Roster, DemoAgency.Files.Policy, week, RoadTravel.Of(DemoAgency.Roster), now);

    private static async Task<int> DraftAsync(TestAgency agency)
    {
        WorkingWeek week = (await agency.Ask<EditWeek>().OpenAsync(TestAgency.Coordinator, DemoAgency.FirstDay, Cancel)).Value;
        Assert.True((await agency.Ask<EditWeek>().MakeAsync(TestAgency.Coordinator, DemoAgency.FirstDay, 0, new HandEdit.Pin(week.Week.Visits[^1].Id), Cancel)).Succeeded);
        return week.Published!.Version;
    }

    private static async Task<Outcome<PlannedWeek>> PublishAsync(TestAgency agency)
    {
        int version = await DraftAsync(agency);
        return await agency.Ask<PublishWeek>().PublishAsync(TestAgency.Coordinator, DemoAgency.FirstDay, version, null, Cancel);
    }
}
