using Google.OrTools.Sat;
using HomeLine.Planning.Plans;
using HomeLine.Planning.Problem;

namespace HomeLine.Planning.Tests.Proof;

/// <summary>
/// A tiny week written down once more, as constraints for a general solver, which then finds the best score tier by tier. Written from the rules of docs/planning.md;
/// no code of the search, the checker or the full enumeration. Starts are free. Left out: rest between shifts, a second visit of a day for safety, and the most minutes
/// (not days) between two times of repeating care.
/// </summary>
internal sealed class ExactWeek
{
    private readonly WeekProblem _problem;
    private readonly CpModel _model = new();
    private readonly ExactVisits _visits;
    private readonly ExactNurseDay[] _days;
    private readonly ExactPoints _points;

    public ExactWeek(WeekProblem problem)
    {
        _problem = problem;
        _visits = new ExactVisits(_model, problem);
        _days =
        [
            .. problem.Nurses.SelectMany(n => n.Shifts.Where(s => !s.OnCall && s.Day < problem.DayCount).Select(s => new ExactNurseDay(_model, problem, _visits, n, s))),
        ];
        _visits.SendSomebody(_days);
        _points = new ExactPoints(_model, problem, _visits, _days);
    }

    /// <summary>The best plan there is, with the score the solver proved.</summary>
    public WeekPlan Best()
    {
        var solver = new CpSolver { StringParameters = "num_workers:1 random_seed:1 max_deterministic_time:200" };
        var tiers = new List<long>();
        foreach (LinearExpr tier in _points.Tiers)
        {
            _model.Minimize(tier);
            CpSolverStatus status = solver.Solve(_model);
            if (status != CpSolverStatus.Optimal) throw new InvalidOperationException($"The solver answers {status} for tier {tiers.Count + 1}.");
            tiers.Add((long)Math.Round(solver.ObjectiveValue));
            _model.Add(tier <= tiers[^1]);
        }

        var visits = _visits.Written(solver, _days);
        var done = visits.SelectMany(v => v.Tasks).ToHashSet();
        return new WeekPlan(
            [.. visits],
            [.. _problem.Tasks.Where(t => !done.Contains(t.Id)).Select(t => new UnmetTask(t.Id, [], []))],
            new PlanScore(tiers[0], tiers[1], tiers[2], tiers[3], tiers[4], tiers[5]));
    }
}
