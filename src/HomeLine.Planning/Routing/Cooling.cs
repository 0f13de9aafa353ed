namespace HomeLine.Planning.Routing;

/// <summary>
/// The temperature over the budget: exponential from the first to the last. A small problem that has time for it cools down more than once, each further time
/// from half as hot; what the rounds find is joined by the choice among all good routes. Long routes need a slower round. A large one has time for one round and begins it cooler: hot enough for
/// its long routes to change, not so hot that the first plan is lost.
/// </summary>
internal sealed class Cooling(RoutingOptions options, int requests, double visitsOfRoute)
{
    /// <summary>Own values: share of the budget after which the pace is known, iterations a request is worth in one round and the mean route from which that grows with its square, most rounds, heat of a further one.</summary>
    private const double PaceKnown = 0.03;
    private const int IterationsOfRound = 7_000, LongRoute = 10, MostRounds = 4;
    private const double Reheat = 0.5;

    /// <summary>Own values for large problems: from how many requests, heat for each visit of a mean route, iterations a request from which it may be hotter and which a round is worth.</summary>
    public const int Large = 400;
    private const double HeatOfVisit = 0.06;
    private const int PaceOfHeat = 20_000, IterationsOfLargeRound = 60_000;

    private int _rounds;
    private double _first = Math.Min(options.FirstTemperature, requests < Large ? double.MaxValue : HeatOfVisit * visitsOfRoute);

    /// <summary>The temperature as a multiple of the mean leg.</summary>
    public double At(double used, long iterations)
    {
        if (used < PaceKnown || iterations == 0) return Cooled(_first, used);
        if (_rounds == 0) Plan(iterations / used / requests);
        double share = used * _rounds;
        int round = Math.Min(_rounds - 1, (int)share);
        return Cooled(_first * (round == 0 ? 1 : Reheat), share - round);
    }

    private void Plan(double pace)
    {
        double length = Math.Max(1, visitsOfRoute / LongRoute);
        _rounds = (int)Math.Clamp(pace / (requests < Large ? IterationsOfRound * length * length : IterationsOfLargeRound), 1, MostRounds);
        if (requests >= Large) _first = Math.Min(options.FirstTemperature, _first * Math.Sqrt(Math.Max(1, pace / _rounds / PaceOfHeat)));
    }

    private double Cooled(double first, double share) => first * Math.Pow(options.LastTemperature / first, share);
}
