using System.Collections.Immutable;
using HomeLine.Planning.Checking.Rules;
using HomeLine.Planning.Checking.Scoring;
using HomeLine.Planning.Plans;
using HomeLine.Planning.Problem;

namespace HomeLine.Planning.Checking;

/// <summary>One thing the checker holds against a plan.</summary>
/// <param name="Rule">The hard rule, <c>H1</c> to <c>H14</c>.</param>
/// <param name="Visit">The visit, where one is concerned.</param>
/// <param name="Nurse">The nurse, where one is concerned.</param>
/// <param name="Reason">What is wrong.</param>
public sealed record Finding(string Rule, string? Visit, string? Nurse, PlanningReason Reason);

/// <summary>The checker's verdict: findings, the score recomputed from scratch, and the figures people ask for.</summary>
/// <param name="Findings">Empty when the plan keeps every hard rule.</param>
/// <param name="Score">Recomputed from plan and problem alone.</param>
/// <param name="Figures">Visits, minutes in homes, charting, driving, overtime, paid minutes.</param>
public sealed record CheckReport(ImmutableArray<Finding> Findings, PlanScore Score, PlanFigures Figures)
{
    /// <summary>Whether the plan keeps every hard rule.</summary>
    public bool Accepted => Findings.IsEmpty;
}

/// <summary>Plain figures of a plan. A two-person visit counts twice in visits and minutes.</summary>
/// <param name="Visits">Nurse visits.</param>
/// <param name="HomeMinutes">Minutes in homes.</param>
/// <param name="ChartingMinutes">Documentation minutes.</param>
/// <param name="DrivingMinutes">Driving minutes, first and last leg included, ways to drop points not.</param>
/// <param name="OvertimeMinutes">Minutes past the end of a shift.</param>
/// <param name="NurseDays">Nurse-days rostered in the horizon.</param>
/// <param name="ShiftMinutes">Rostered shift minutes.</param>
/// <param name="LateTasks">Tasks done late.</param>
/// <param name="DropStops">Stops at drop points to hand specimens in.</param>
/// <param name="DropMinutes">Minutes these add to the way: driving, not counted above, and handing in.</param>
public sealed record PlanFigures(
    int Visits,
    int HomeMinutes,
    int ChartingMinutes,
    int DrivingMinutes,
    int OvertimeMinutes,
    int NurseDays,
    int ShiftMinutes,
    int LateTasks,
    int DropStops = 0,
    int DropMinutes = 0);

/// <summary>
/// Re-derives every hard rule and the score from plan and problem. Shares no code with the search: only the data types and the travel times.
/// H4 (orders) is a duty of the score, not a finding: the weekly allowance opens an order request. H9 (drug on site) and H12 (holds) reach
/// this room as the tasks' times and as tasks that are not there.
/// </summary>
public static class Checker
{
    /// <summary>Checks a plan, on the roads as the problem has them. Never throws for a bad plan: everything wrong is a finding.</summary>
    public static CheckReport Check(WeekProblem problem, WeekPlan plan) => Check(problem, plan, problem.RoadChanges);

    /// <summary>Checks a plan while roads take other times for a while.</summary>
    /// <param name="problem">The problem.</param>
    /// <param name="plan">The plan.</param>
    /// <param name="changes">When, and how long trips then take; instead of what the problem says of it.</param>
    public static CheckReport Check(WeekProblem problem, WeekPlan plan, ImmutableArray<RoadChange> changes)
    {
        var facts = new PlanFacts(problem, plan, changes);
        ImmutableArray<Finding> findings =
        [
            .. Coverage.Findings(facts),
            .. TaskTimes.Findings(facts),
            .. Chains.Findings(facts),
            .. NurseScope.Findings(facts),
            .. HomeAccess.Findings(facts),
            .. NurseDays.Findings(facts),
            .. VisitCaps.Findings(facts),
            .. TwoPeople.Findings(facts),
            .. Specimens.Findings(facts),
            .. FixedVisits.Findings(facts),
        ];
        return new CheckReport(findings, PlanScoring.Score(facts), PlanScoring.Figures(facts));
    }
}
