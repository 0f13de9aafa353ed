using CsCheck;
using HomeLine.Planning.Mending;
using HomeLine.Planning.Plans;
using HomeLine.Planning.Problem;
using HomeLine.Planning.Tests.Week;

namespace HomeLine.Planning.Tests.Mending;

/// <summary>Laws every repair keeps, on invented weeks with a bit of everything.</summary>
public sealed class MendPropertyTests
{
    private static readonly Gen<int> Seeds = Gen.Int[1, 1_000_000];

    [Fact]
    public void A_repair_breaks_no_rule_and_sends_nobody_who_is_out() => Seeds.Sample(
        seed =>
        {
            WeekProblem problem = Published(seed);
            string nurse = problem.Nurses[seed % problem.Nurses.Length].Id;
            var trouble = new Trouble.NurseOut(nurse, 1440, 2880);
            MendedWeek mended = Mend(problem, trouble);
            // A visit that is lost may take the gap of a break with it; that is told as a finding.
            Assert.Equal([], mended.Findings.Where(f => f.Reason.Code != ReasonCode.BreakMissing).Select(f => f.Reason.Sentence));
            Assert.DoesNotContain(mended.Plan.Visits, v => (v.Nurse == nurse || v.Second == nurse) && v.Start >= 1440 && v.Start < 2880);
        },
        iter: 120,
        threads: 1);

    [Fact]
    public void What_is_about_to_start_stays_unless_its_nurse_is_out() => Seeds.Sample(
        seed =>
        {
            WeekProblem problem = Published(seed);
            string nurse = problem.Nurses[seed % problem.Nurses.Length].Id;
            MendedWeek mended = Mend(problem, new Trouble.NurseOut(nurse, 1440, 2880));
            PlannedVisit[] frozen = [.. problem.FixedVisits().Where(v => v.Nurse != nurse && v.Second != nurse)];
            Assert.All(frozen, v => Assert.Contains(mended.Plan.Visits, m => (m.Id, m.Nurse, m.Second, m.Start) == (v.Id, v.Nurse, v.Second, v.Start)));
        },
        iter: 60,
        threads: 1);

    [Fact]
    public void The_calls_are_those_whose_visit_changed_and_nobody_is_called_for_nothing() => Seeds.Sample(
        seed =>
        {
            WeekProblem problem = Published(seed);
            MendedWeek mended = Mend(problem, new Trouble.NurseOut(problem.Nurses[seed % problem.Nurses.Length].Id, 1440, 2880));
            var then = mended.Plan.Visits.ToDictionary(v => v.Id);
            Assert.All(mended.Calls, c => Assert.True(!then.TryGetValue(c.Before.Id, out PlannedVisit? v) || v != c.Before));
            Assert.Equal(mended.Calls.Length, mended.Calls.Select(c => c.Before.Id).Distinct().Count());
        },
        iter: 60,
        threads: 1);

    [Fact]
    public void The_same_trouble_is_mended_the_same_way() => Seeds.Sample(
        seed =>
        {
            var trouble = new Trouble.NurseOut("N1", 1440, 2880);
            MendedWeek one = Mend(Published(seed), trouble), two = Mend(Published(seed), trouble);
            Assert.Equal(one.Plan.Visits.Select(v => (v.Id, v.Nurse, v.Start)), two.Plan.Visits.Select(v => (v.Id, v.Nurse, v.Start)));
        },
        iter: 20,
        threads: 1);

    [Fact]
    public void More_rounds_never_mend_worse()
    {
        for (int seed = 1; seed <= 20; seed++)
        {
            WeekProblem problem = Published(seed);
            var trouble = new Trouble.NurseOut("N1", 1440, 2880);
            MendedWeek few = Mend(problem, trouble, 0), many = Mend(problem, trouble, 200);
            Assert.True((many.Score.Critical, many.Score.Risk).CompareTo((few.Score.Critical, few.Score.Risk)) <= 0 || many.Score <= few.Score);
        }
    }

    private static MendedWeek Mend(WeekProblem problem, Trouble trouble, int rounds = 60) =>
        Planner.Mend(problem, [trouble], new MendOptions(1, rounds), TestContext.Current.CancellationToken);

    /// <summary>Tuesday 06:00 of an invented week, everybody told; Monday is done.</summary>
    private static WeekProblem Published(int seed)
    {
        WeekProblem problem = RandomWeek.Rich(seed);
        WeekPlan plan = Planner.Plan(problem, new PlanOptions(1, 40));
        int now = Math.Min(1440 + 360, (problem.DayCount * 1440) - 1);
        return problem with
        {
            Now = now,
            Published = plan with
            {
                Visits = [.. plan.Visits.Select(v => v with { Promise = v.Start < now ? PromiseState.Done : PromiseState.Told, ToldFrom = v.Start })],
            },
        };
    }
}
