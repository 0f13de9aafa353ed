using Google.OrTools.LinearSolver;

namespace HomeLine.Planning.Routing;

/// <summary>The linear relaxation of choosing routes from a pool.</summary>
internal sealed class PoolRelaxation
{
    private readonly Variable[] _taken;

    public PoolRelaxation(Solver solver, PoolProblem problem, IReadOnlyList<PooledRoute> routes)
    {
        Objective objective = solver.Objective();
        var made = new Constraint[problem.Visits];
        for (int v = 0; v < made.Length; v++) made[v] = solver.MakeConstraint(0, 0);
        Constraint[] drives = [.. problem.Vehicles.Select(count => solver.MakeConstraint(0, count))];
        for (int r = 0; r < problem.Patterns.Length; r++) Serve(solver, objective, problem, r, made);
        _taken = new Variable[routes.Count];
        for (int i = 0; i < _taken.Length; i++)
        {
            _taken[i] = solver.MakeNumVar(0, double.PositiveInfinity, "");
            objective.SetCoefficient(_taken[i], routes[i].Cost);
            drives[routes[i].Kind].SetCoefficient(_taken[i], 1);
            foreach (int visit in routes[i].Visits) made[visit].SetCoefficient(_taken[i], 1);
        }

        objective.SetMinimization();
    }

    public double[] ReducedCosts() => [.. _taken.Select(variable => variable.ReducedCost())];

    private static void Serve(Solver solver, Objective objective, PoolProblem problem, int request, Constraint[] made)
    {
        int[][] patterns = problem.Patterns[request];
        if (patterns.Length == 1 && problem.LeavingOut[request] is null)
        {
            foreach (int visit in patterns[0]) made[visit].SetBounds(1, 1);
            return;
        }

        Constraint one = solver.MakeConstraint(1, 1);
        foreach (int[] pattern in patterns)
        {
            Variable picked = solver.MakeNumVar(0, 1, "");
            one.SetCoefficient(picked, 1);
            foreach (int visit in pattern) made[visit].SetCoefficient(picked, -1);
        }

        if (problem.LeavingOut[request] is not { } price) return;
        Variable leftOut = solver.MakeNumVar(0, 1, "");
        one.SetCoefficient(leftOut, 1);
        objective.SetCoefficient(leftOut, price);
    }
}
