using Google.OrTools.LinearSolver;
using Google.OrTools.Sat;
using LinearExpr = Google.OrTools.Sat.LinearExpr;

namespace HomeLine.Planning.Routing;

/// <summary>
/// The cheapest set of pooled routes in which every visit is made exactly once (set partitioning). The linear relaxation comes first: its dual prices rule out most
/// routes, because a route whose reduced cost exceeds the distance between bound and best plan cannot be part of a better plan. The rest goes to CP-SAT: one
/// worker and deterministic limits, so the same pool gives the same choice.
/// </summary>
/// <remarks>Requests may choose between sets of visits (day patterns), may be left out at a price, and each kind has a number of vehicles.</remarks>
public sealed class PoolChoice
{
    /// <summary>Own limit: more routes than this are cut to those of least reduced cost.</summary>
    private const int MostRoutesForExact = 6_000;

    private readonly PoolProblem _problem;
    private readonly IReadOnlyList<PooledRoute> _routes;

    /// <param name="problem">What has to be covered.</param>
    /// <param name="routes">The routes to choose from.</param>
    public PoolChoice(PoolProblem problem, IReadOnlyList<PooledRoute> routes)
    {
        _problem = problem;
        _routes = routes;
    }

    /// <summary>Indices of the chosen routes, or null when nothing better than the bar was found within the limits.</summary>
    /// <param name="bar">Cost of the best plan known; only cheaper choices are answered.</param>
    /// <param name="effort">Limit in the solver's deterministic time, about a second each.</param>
    /// <param name="seconds">Limit in seconds of wall time; infinite to be deterministic.</param>
    /// <param name="cancel">Interrupts the solvers.</param>
    public IReadOnlyList<int>? Better(long bar, double effort, double seconds, CancellationToken cancel)
    {
        List<int>? left = cancel.IsCancellationRequested ? null : Promising(bar, effort, seconds / 2, cancel);
        return left is null || cancel.IsCancellationRequested ? null : Exact(left, bar, effort, seconds / 2, cancel);
    }

    private List<int>? Promising(long bar, double effort, double seconds, CancellationToken cancel)
    {
        using Solver solver = Solver.CreateSolver("GLOP");
        using CancellationTokenRegistration interrupt = cancel.Register(() => solver.InterruptSolve());
        solver.SetSolverSpecificParametersAsString(FormattableString.Invariant($"max_deterministic_time: {effort}"));
        if (!double.IsInfinity(seconds)) solver.SetTimeLimit(Math.Max(1, (long)(1000 * seconds)));
        var relaxation = new PoolRelaxation(solver, _problem, _routes);
        if (solver.Solve() != Solver.ResultStatus.OPTIMAL) return null;
        double room = bar - solver.Objective().Value();
        if (room <= 0.5) return null;
        double[] reduced = relaxation.ReducedCosts();
        List<int> left = [.. Enumerable.Range(0, reduced.Length).Where(i => reduced[i] < room)];
        if (left.Count <= MostRoutesForExact) return left;
        return [.. left.OrderBy(i => reduced[i]).ThenBy(i => i).Take(MostRoutesForExact)];
    }

    private List<int>? Exact(List<int> left, long bar, double effort, double seconds, CancellationToken cancel)
    {
        var model = new CpModel();
        BoolVar[] taken = [.. left.Select(i => model.NewBoolVar($"r{i}"))];
        LinearExprBuilder cost = LinearExpr.NewBuilder();
        var covering = new List<ILiteral>[_problem.Visits];
        for (int v = 0; v < covering.Length; v++) covering[v] = [];
        for (int i = 0; i < taken.Length; i++)
        {
            cost.AddTerm(taken[i], _routes[left[i]].Cost);
            foreach (int visit in _routes[left[i]].Visits) covering[visit].Add(taken[i]);
        }

        Cover(model, cost, covering);
        LimitKinds(model, left, taken);
        model.Minimize(cost);
        model.Add(cost <= bar - 1);
        var solver = new CpSolver
        {
            StringParameters = FormattableString.Invariant($"num_workers:1 random_seed:1 linearization_level:2 max_deterministic_time:{effort}")
                + (double.IsInfinity(seconds) ? "" : FormattableString.Invariant($" max_time_in_seconds:{seconds}")),
        };
        using CancellationTokenRegistration interrupt = cancel.Register(solver.StopSearch);
        return solver.Solve(model) is CpSolverStatus.Optimal or CpSolverStatus.Feasible
            ? [.. Enumerable.Range(0, taken.Length).Where(i => solver.BooleanValue(taken[i])).Select(i => left[i])]
            : null;
    }

    private void Cover(CpModel model, LinearExprBuilder cost, List<ILiteral>[] covering)
    {
        for (int r = 0; r < _problem.Patterns.Length; r++)
        {
            int[][] patterns = _problem.Patterns[r];
            var choice = new List<ILiteral>();
            if (_problem.LeavingOut[r] is { } price)
            {
                BoolVar out_ = model.NewBoolVar($"out{r}");
                cost.AddTerm(out_, price);
                choice.Add(out_);
                if (patterns.Length == 1)
                    foreach (int visit in patterns[0]) covering[visit].Add(out_);
            }

            if (patterns.Length == 1)
            {
                foreach (int visit in patterns[0]) model.AddExactlyOne(covering[visit]);
                continue;
            }

            BoolVar[] picked = [.. patterns.Select((_, p) => model.NewBoolVar($"p{r},{p}"))];
            choice.AddRange(picked);
            model.AddExactlyOne(choice);
            foreach (int visit in patterns.SelectMany(pattern => pattern).Distinct())
                model.AddExactlyOne(covering[visit].Concat(patterns.Select((pattern, p) => (pattern, p)).Where(pair => !pair.pattern.Contains(visit)).Select(pair => (ILiteral)picked[pair.p]))
                    .Concat(choice.Take(choice.Count - picked.Length)));
        }
    }

    private void LimitKinds(CpModel model, List<int> left, BoolVar[] taken)
    {
        for (int kind = 0; kind < _problem.Vehicles.Length; kind++)
        {
            BoolVar[] ofKind = [.. Enumerable.Range(0, taken.Length).Where(i => _routes[left[i]].Kind == kind).Select(i => taken[i])];
            if (ofKind.Length > _problem.Vehicles[kind]) model.Add(LinearExpr.Sum(ofKind) <= _problem.Vehicles[kind]);
        }
    }
}
