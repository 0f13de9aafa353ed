namespace HomeLine.Planning.Routing;

/// <summary>Where searches wait for one another and see the best plan of all. Who has finished leaves, and what it brought last still counts.</summary>
internal sealed class IslandMeeting(int islands) : IDisposable
{
    private readonly Barrier _everybody = new(islands);
    private readonly RoutingPlan?[] _brought = new RoutingPlan?[islands];

    /// <summary>The best plan: complete before cheap, and of equals the first.</summary>
    public static RoutingPlan BestOf(IEnumerable<RoutingPlan?> plans) => plans.OfType<RoutingPlan>().OrderBy(plan => plan.Missing).ThenBy(plan => plan.Cost).First();

    /// <summary>Brings a plan, waits for the others and answers the best of all.</summary>
    public RoutingPlan Meet(int island, RoutingPlan best)
    {
        _brought[island] = best;
        _everybody.SignalAndWait();
        RoutingPlan chosen = BestOf(_brought);
        // Nobody brings the next plan before everybody has looked.
        _everybody.SignalAndWait();
        return chosen;
    }

    /// <summary>The others need not wait any longer for one of them.</summary>
    public void Leave() => _everybody.RemoveParticipant();

    public void Dispose() => _everybody.Dispose();
}
