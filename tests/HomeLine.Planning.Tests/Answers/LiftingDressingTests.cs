using HomeLine.Planning.Answers;
using HomeLine.Planning.Checking;
using HomeLine.Planning.Plans;
using HomeLine.Planning.Problem;
using HomeLine.Planning.Tests.Week;

namespace HomeLine.Planning.Tests.Answers;

/// <summary>
/// Tuesday 07:52 of the demonstration week: a dressing lifts at P03. The expected answers were worked out by hand from the map and the published plan.
/// </summary>
public sealed class LiftingDressingTests
{
    private static readonly WeekProblem Problem = Tuesday();
    private static readonly UrgentAnswers Found = Planner.Answer(Problem, new UrgentNeed("P03", ["P03-1"], ["P03-Wed"]));

    [Fact]
    public void Three_answers_are_offered_best_first() => Assert.Equal(
        ["N3 10:08 +55 moves nobody, meets the target", "N1 13:32 +11 moves nobody", "N1 12:09 +8 moves P01 by 98"],
        Found.Answers.Select(Say));

    [Fact]
    public void Two_more_would_work_but_are_beaten_on_every_count() =>
        Assert.Equal(["N2 13:33 +40 moves nobody", "N2 11:56 +41 moves P28 by 131"], Found.Dominated.Select(Say));

    [Fact]
    public void Everybody_else_is_ruled_out_with_the_most_telling_reason()
    {
        var reasons = Found.RuledOut.ToDictionary(r => r.Nurse, r => r.Reason);
        Assert.Equal(["N4", "N5", "N6", "N7", "N8"], reasons.Keys);
        Assert.Equal((ReasonCode.SkillMissing, "Linden Pennywhirl lacks PN."), (reasons["N5"].Code, reasons["N5"].Sentence));
        Assert.Equal(ReasonCode.OverrunsShift, reasons["N8"].Code);
        Assert.StartsWith("Hyssop Lanternlow would overrun her 13:30 by ", reasons["N8"].Sentence, StringComparison.Ordinal);
        Assert.Equal(ReasonCode.DayFull, reasons["N4"].Code);
        Assert.Equal(ReasonCode.NotWorking, reasons["N7"].Code);
    }

    [Fact]
    public void The_visit_replaced_on_Wednesday_gives_time_back()
    {
        Assert.All(Found.Answers, a => Assert.Equal([new FreedTime("N1", 2, 90, 7)], a.Freed));
        Assert.All(Found.Answers, a => Assert.Equal("P03-Wed", Assert.Single(a.Replaced).Id));
        Assert.All(Found.Answers, a => Assert.DoesNotContain(a.Plan.Visits, v => v.Id == "P03-Wed"));
    }

    [Fact]
    public void Every_plan_offered_keeps_every_rule() => Assert.All(
        Found.Answers.Concat(Found.Dominated),
        a => Assert.Equal([], Checker.Check(Problem, a.Plan).Findings.Select(f => f.Reason.Sentence)));

    [Fact]
    public void Nothing_but_the_named_visits_moves()
    {
        foreach (UrgentAnswer answer in Found.Answers)
        {
            var after = answer.Plan.Visits.ToDictionary(v => v.Id);
            string[] moved = [.. DemoWeek.Published.Visits.Where(v => v.Id != "P03-Wed" && after[v.Id] != v).Select(v => v.Id)];
            Assert.Equal(answer.Moved.Select(m => m.Before.Id), moved);
        }
    }

    /// <summary>New visit 1, merged visit 2, a second nurse 3; or one family moved 5 and called 1.</summary>
    [Fact]
    public void Disruption_is_counted_by_the_table() => Assert.Equal([6, 3, 9], Found.Answers.Select(a => a.Disruption));

    private static string Say(UrgentAnswer answer)
    {
        string moved = answer.Moved.IsEmpty ? "nobody" : string.Join(", ", answer.Moved.Select(m => $"{m.Before.Patient} by {m.Minutes}"));
        string target = answer.MeetsTarget ? ", meets the target" : string.Empty;
        return $"{answer.Visit.Nurse} {PlanClock.Time(answer.Visit.Start)} {answer.DrivingDelta:+0;-0;+0} moves {moved}{target}";
    }

    /// <summary>Report at 07:52; target four hours, last acceptable eight hours later. Monday's visits are done.</summary>
    private static WeekProblem Tuesday()
    {
        int now = DemoWeek.Minute(1, "07:52");
        return DemoWeek.Problem with
        {
            Now = now,
            Published = DemoWeek.Published,
            Tasks = [.. DemoWeek.Tasks.Select(t => t.Id == "P03-1"
                ? t with { Opens = now, TargetBy = now + 240, LateFrom = now + 481, Critical = true, Safety = true }
                : t)],
        };
    }
}
