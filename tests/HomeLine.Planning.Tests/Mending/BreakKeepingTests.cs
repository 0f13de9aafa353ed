using HomeLine.Planning.Mending;
using HomeLine.Planning.Plans;
using HomeLine.Planning.Problem;
using HomeLine.Planning.Tests.Week;

namespace HomeLine.Planning.Tests.Mending;

/// <summary>A visit that is lost may take the gap with it in which a nurse had her break.</summary>
public sealed class BreakKeepingTests
{
    [Fact]
    public void The_next_visit_starts_as_much_later_as_the_break_needs()
    {
        MendedWeek mended = Mend(Morning(SmallWeek.At(0, 16)));
        Assert.Equal(("V2", SmallWeek.At(0, 10, 50)), (Assert.Single(mended.Plan.Visits).Id, mended.Plan.Visits[0].Start));
        Assert.Empty(mended.Findings);
    }

    [Fact]
    public void Where_it_may_not_start_later_the_missing_break_is_said()
    {
        MendedWeek mended = Mend(Morning(SmallWeek.At(0, 10, 45)));
        Assert.Equal(SmallWeek.At(0, 10, 40), Assert.Single(mended.Plan.Visits).Start);
        Assert.Equal(ReasonCode.BreakMissing, Assert.Single(mended.Findings).Reason.Code);
    }

    private static MendedWeek Mend(WeekProblem problem) =>
        Planner.Mend(problem, [new Trouble.NurseOut("N1", 0, 1440)], new MendOptions(1, 50), TestContext.Current.CancellationToken);

    /// <summary>Two nurses at P1 from 08:10; then one of them has her break before P2 at 10:40, where she stays until after noon.</summary>
    private static WeekProblem Morning(int hardLatest)
    {
        Nurse second = SmallWeek.Nurse("N2", 0);
        second = second with { Shifts = [second.Shifts[0] with { LunchMinutes = 30, LunchFrom = SmallWeek.At(0, 10), LunchTo = SmallWeek.At(0, 12) }] };
        WeekProblem problem = SmallWeek.Of(
            [SmallWeek.Nurse("N1", 0), second],
            [SmallWeek.Patient("P1", 1) with { CrewSize = 2 }, SmallWeek.Patient("P2", 2)],
            [SmallWeek.Task("T1", "P1"), SmallWeek.Task("T2", "P2") with { WorkMinutes = 80, HardLatest = hardLatest }],
            1);
        PlannedVisit[] visits =
        [
            SmallWeek.Visit("V1", "P1", "N2", SmallWeek.At(0, 8, 10), "T1") with { Second = "N1" },
            SmallWeek.Visit("V2", "P2", "N2", SmallWeek.At(0, 10, 40), "T2") with { Minutes = 90 },
        ];
        return problem with { Published = SmallWeek.Plan([.. visits.Select(v => v with { Promise = PromiseState.Told, ToldFrom = v.Start })]) };
    }
}
