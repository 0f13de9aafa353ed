namespace HomeLine.Planning.Search;

/// <summary>Where a unit could go and what it would cost.</summary>
/// <param name="Cost">Change of the blended cost; positive infinity when there is no place.</param>
/// <param name="Slot">The visit slot.</param>
/// <param name="RouteA">Route of the nurse who does the care.</param>
/// <param name="PositionA">Position in it.</param>
/// <param name="RouteB">Route of the second person, or -1.</param>
/// <param name="PositionB">Position in it.</param>
/// <param name="Start">The start, for two-person visits.</param>
internal readonly record struct Proposal(
    double Cost,
    int Slot,
    int RouteA,
    int PositionA,
    int RouteB = WeekState.None,
    int PositionB = 0,
    int Start = 0)
{
    public static Proposal Nowhere { get; } = new(double.PositiveInfinity, WeekState.None, WeekState.None, 0);
}
