using HomeLine.Agency.Roster;
using HomeLine.Agency.WeekPlanning;
using HomeLine.LineCare.Lines;
using HomeLine.Planning.Problem;

namespace HomeLine.Agency.Tests.WeekPlanning;

/// <summary>What the demonstration week asks of the planner. Invented data; the figures are facts of the scenario.</summary>
public sealed class DemoDemandTests
{
    private static readonly WeekDemand Demand = WeekDemand.Of(DemoAgency.Roster, DemoAgency.Files, DemoAgency.FirstDay, 7, DemoAgency.Now);

    private static IEnumerable<CareNeed> NeedsOf(string patient) => Demand.Needs.Values.Where(n => n.Patient.Value == patient);

    [Theory]
    [InlineData("P11", "in hospital")]
    [InlineData("P13", "the clinic does it")]
    [InlineData("P27", "the sister is validated for everything")]
    public void Patients_whom_others_care_for_need_no_nurse(string patient, string why) =>
        Assert.True(!NeedsOf(patient).Any(), $"{patient}: {why}, but: {string.Join("; ", NeedsOf(patient).Select(n => n.Task.Id))}");

    [Fact]
    public void Starts_of_care_have_the_cap_of_policy_unless_the_nurse_has_her_own()
    {
        AgencyRoster own = DemoAgency.Roster with { Nurses = [.. DemoAgency.Roster.Nurses.Select(n => n.Id == "N2" ? n with { VisitCaps = [new KindCap("SOC", 1), new KindCap(KindCap.Heavy, 2, true)] } : n)] };
        var nurses = WeekDemand.Of(own, DemoAgency.Files, DemoAgency.FirstDay, 7, DemoAgency.Now).Problem.Nurses.ToDictionary(n => n.Id, n => n.Caps);

        // Policy starts.perday.max: our own default.
        Assert.Equal([new VisitCap("SOC", 2)], nurses["N1"]);
        Assert.Equal([new VisitCap("SOC", 1), new VisitCap("heavy", 2, true)], nurses["N2"]);
        Assert.Empty(nurses["N5"]);
    }

    [Fact]
    public void Care_that_takes_ninety_minutes_or_asks_for_a_skill_is_of_that_kind()
    {
        var tasks = WeekDemand.Of(DemoAgency.Roster, DemoAgency.Files, DemoAgency.FirstDay, 7, DemoAgency.Now).Problem.Tasks;

        // Policy visit.heavy.from: our own default.
        Assert.All(tasks, t => Assert.Equal(t.SetupMinutes + t.WorkMinutes >= 90, t.Kinds.Contains(KindCap.Heavy)));
        Assert.All(tasks, t => Assert.Subset(t.Kinds.ToHashSet(), t.Skills.ToHashSet()));
        Assert.Contains(tasks, t => t.Kinds.Contains(KindCap.Heavy));
    }

    [Fact]
    public void A_line_that_comes_out_on_Thursday_gets_no_new_dressing() =>
        Assert.DoesNotContain(NeedsOf("P19"), n => n.Item == CareItem.Dressing);

    [Fact]
    public void No_set_that_a_family_changes_becomes_a_visit() =>
        Assert.All(Demand.Needs.Values.Where(n => n.Item == CareItem.Set), n => Assert.Equal("P23", n.Patient.Value));

    [Fact]
    public void A_flush_that_the_next_visit_would_miss_is_done_this_week() =>
        Assert.Contains(NeedsOf("P52"), n => n.Item == CareItem.PortFlush);

    [Theory]
    [InlineData("P44")]
    [InlineData("P48")]
    public void A_flush_that_the_next_visit_still_reaches_is_left_alone(string patient) =>
        Assert.DoesNotContain(NeedsOf(patient), n => n.Item == CareItem.PortFlush);

    [Fact]
    public void Gauze_across_the_weekend_is_Tuesday_Thursday_Saturday()
    {
        CareTask[] gauze = [.. NeedsOf("P06").Where(n => n.Item == CareItem.Dressing).Select(n => n.Task).OrderBy(t => t.Opens)];

        Assert.Equal([1, 3, 5], gauze.Select(t => t.Opens / 1440));
        Assert.Equal([2, 4, 6], gauze.Select(t => t.LateFrom / 1440));
    }

    [Fact]
    public void An_inotrope_cassette_comes_round_within_72_to_96_hours()
    {
        CareTask[] sets = [.. NeedsOf("P23").Where(n => n.Item == CareItem.Set).Select(n => n.Task).OrderBy(t => t.Opens)];

        Assert.Equal(2, sets.Length);
        Assert.Equal(14 * 60, sets[0].LateFrom);
        Assert.All(sets, t => Assert.True(t.Critical));
        Assert.Equal(sets[0].Id, sets[1].After);
        Assert.Equal((72 * 60, 96 * 60, false), (sets[1].MinGap, sets[1].MaxGap, sets[1].GapInDays));
    }

    [Fact]
    public void Nothing_is_planned_past_the_end_of_orders() =>
        Assert.All(NeedsOf("P18"), n => Assert.True(n.Task.HardLatest < 3 * 1440, n.Task.Id));

    [Fact]
    public void Nothing_is_planned_while_away() =>
        Assert.All(NeedsOf("P12"), n => Assert.True(n.Task.HardLatest < 2 * 1440, n.Task.Id));

    [Fact]
    public void A_level_in_another_zone_starts_at_branch_time() =>
        Assert.Equal(
            new Span((2 * 1440) + (11 * 60) + 30, (2 * 1440) + (11 * 60) + 50),
            NeedsOf("P57").Single(n => !n.Task.StartSpans.IsEmpty).Task.StartSpans.Single());
}
