namespace HomeLine.Planning.Routing;

/// <summary>
/// The temperature over the budget: exponential from the first to the last. A search that has time for it cools down more than once, each further time from
/// half as hot; what the rounds find is joined by the choice among all good routes.
/// </summary>
internal sealed class Cooling(RoutingOptions options, int requests)
{
    /// <summary>Own values: share of the budget after which the pace is known, iterations a request is worth in one round, most rounds, heat of a further one.</summary>
    private const double PaceKnown = 0.03;
    private const int IterationsOfRound = 7_000, MostRounds = 4;
    private const double Reheat = 0.5;

    private int _rounds;

    /// <summary>The temperature as a multiple of the mean leg.</summary>
    public double At(double used, long iterations)
    {
        if (used < PaceKnown || iterations == 0) return Cooled(options.FirstTemperature, used);
        if (_rounds == 0) _rounds = (int)Math.Clamp(iterations / used / ((double)requests * IterationsOfRound), 1, MostRounds);
        double share = used * _rounds;
        int round = Math.Min(_rounds - 1, (int)share);
        return Cooled(options.FirstTemperature * (round == 0 ? 1 : Reheat), share - round);
    }

    private double Cooled(double first, double share) => first * Math.Pow(options.LastTemperature / first, share);
}
