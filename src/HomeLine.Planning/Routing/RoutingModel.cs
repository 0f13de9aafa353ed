using System.Collections.Immutable;

namespace HomeLine.Planning.Routing;

/// <summary>
/// A problem laid out for the search. Visit <c>d * Requests + r</c> is request <c>r</c> on day <c>d</c>; after the visits come two end points for each
/// vehicle, so that a route is a chain without special cases.
/// </summary>
internal sealed class RoutingModel
{
    private const int MostAdjacent = 400;

    public RoutingModel(RoutingProblem problem)
    {
        if (problem.Fault() is { } fault) throw new ArgumentException(fault, nameof(problem));
        problem = PlaceOrder.Near(problem);
        Problem = problem;
        Places = problem.Places;
        Requests = problem.Requests.Length;
        Days = problem.Days;
        Visits = Requests * Days;
        Cost = problem.Cost;
        Time = problem.Time;
        CostInto = Turned(problem.Cost, Places);
        TimeInto = ReferenceEquals(problem.Cost, problem.Time) ? CostInto : Turned(problem.Time, Places);
        UsesDuration = problem.DurationIsCost || problem.Kinds.Any(kind => kind.LongestDuration is not null);
        Of = Facts(problem);
        Vehicles = VehicleTable(problem);
        Eligible = Eligibility(problem, out bool everybody);
        EverybodyEligible = everybody;
        Patterns = [.. problem.Requests.Select(request => request.DayPatterns.ToArray())];
        LeavingOut = Prices(problem);
        Adjacent = Neighbours.ByCost(this, Math.Min(MostAdjacent, Requests));
    }

    public RoutingProblem Problem { get; }
    public int Places { get; }
    public int Requests { get; }
    public int Days { get; }
    public int Visits { get; }

    /// <summary>Rows by origin; the turned matrices have rows by destination.</summary>
    public int[] Cost { get; }
    public int[] Time { get; }
    public int[] CostInto { get; }
    public int[] TimeInto { get; }

    /// <summary>Whether routes need time segments and not only earliest and latest starts.</summary>
    public bool UsesDuration { get; }

    /// <summary>What is fixed about each visit.</summary>
    public VisitFacts[] Of { get; }

    /// <summary>Kind of each vehicle.</summary>
    public int[] Vehicles { get; }

    /// <summary>Eligibility at <c>request * Kinds + kind</c>.</summary>
    public bool[] Eligible { get; }
    public bool EverybodyEligible { get; }

    /// <summary>Day patterns of each request.</summary>
    public int[][] Patterns { get; }

    /// <summary>Price of leaving each request out; for those that must be served a price above any detour.</summary>
    public long[] LeavingOut { get; }

    /// <summary>Requests from near to far, each request's own row first.</summary>
    public int[][] Adjacent { get; }

    public int FirstOf(int vehicle) => Visits + (2 * vehicle);
    public int LastOf(int vehicle) => Visits + (2 * vehicle) + 1;
    public VehicleKind KindOf(int vehicle) => Problem.Kinds[Vehicles[vehicle]];

    private static int[] Turned(int[] matrix, int places)
    {
        var turned = new int[matrix.Length];
        bool same = true;
        for (int a = 0; a < places; a++)
            for (int b = 0; b < places; b++)
            {
                turned[(b * places) + a] = matrix[(a * places) + b];
                same &= matrix[(a * places) + b] == matrix[(b * places) + a];
            }

        return same ? matrix : turned;
    }

    private VisitFacts[] Facts(RoutingProblem problem)
    {
        var facts = new VisitFacts[Visits];
        for (int v = 0; v < Visits; v++)
        {
            RoutingRequest request = problem.Requests[v % Requests];
            int nearest = int.MaxValue;
            for (int p = 0; p < Places; p++)
                if (p != request.Place)
                    nearest = Math.Min(nearest, Time[(p * Places) + request.Place]);
            facts[v] = new VisitFacts(v % Requests, v / Requests, request, Places == 1 ? 0 : nearest);
        }

        return facts;
    }

    private int[] VehicleTable(RoutingProblem problem)
    {
        var kinds = new List<int>();
        for (int k = 0; k < problem.Kinds.Length; k++)
            kinds.AddRange(Enumerable.Repeat(k, Math.Min(problem.Kinds[k].Count, Requests)));
        return [.. kinds];
    }

    private bool[] Eligibility(RoutingProblem problem, out bool everybody)
    {
        int kinds = problem.Kinds.Length;
        var eligible = new bool[Requests * kinds];
        everybody = true;
        for (int r = 0; r < Requests; r++)
        {
            ImmutableArray<int> allowed = problem.Requests[r].EligibleKinds;
            for (int k = 0; k < kinds; k++)
            {
                eligible[(r * kinds) + k] = allowed.IsDefault || allowed.Contains(k);
                everybody &= eligible[(r * kinds) + k];
            }
        }

        return eligible;
    }

    // Above the cost of a route of its own to the farthest place, so that serving is always tried first.
    private long[] Prices(RoutingProblem problem)
    {
        long farthest = Cost.Length == 0 ? 0 : Cost.Max();
        long dearest = problem.Kinds.Length == 0 ? 0 : problem.Kinds.Max(kind => (long)kind.FixedCost);
        long must = (4 * farthest) + dearest + (problem.DurationIsCost ? 2 * (long)Time.Max() : 0) + 1;
        return [.. problem.Requests.Select(request => request.PriceOfLeavingOut ?? must * System.Numerics.BitOperations.PopCount((uint)request.DayPatterns[0]))];
    }
}
