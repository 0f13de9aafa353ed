namespace HomeLine.Planning.Problem;

/// <summary>Other travel times for a while, for example while a pass is closed.</summary>
/// <param name="From">Trips left for at or after this plan minute take the other times.</param>
/// <param name="To">Trips left for at or after this plan minute take the usual times again.</param>
/// <param name="Travel">The other times, between the same places.</param>
public sealed record RoadChange(int From, int To, ITravelTimes Travel);
