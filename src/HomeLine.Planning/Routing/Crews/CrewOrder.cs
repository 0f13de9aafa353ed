namespace HomeLine.Planning.Routing.Crews;

/// <summary>
/// A plan as the search changes it: one order of all visits and who goes. Everybody's own order is a part of it, so two people can never wait for each other
/// in a circle, and one walk through the order gives all times. It knows which places of the order changed since it was copied.
/// </summary>
internal sealed class CrewOrder(int visits)
{
    /// <summary>Visits in order.</summary>
    public readonly int[] Order = new int[visits];

    /// <summary>Who goes to each visit; the second is -1 where one person is enough.</summary>
    public readonly int[] First = new int[visits], Second = new int[visits];

    /// <summary>First and last place of the order that may differ from the copied one.</summary>
    public int Lowest { get; private set; } = visits;
    public int Highest { get; private set; } = -1;

    public void CopyFrom(CrewOrder other)
    {
        other.Order.AsSpan().CopyTo(Order);
        other.First.AsSpan().CopyTo(First);
        other.Second.AsSpan().CopyTo(Second);
        Lowest = Order.Length;
        Highest = -1;
    }

    public int PlaceOf(int visit) => Array.IndexOf(Order, visit);

    public void Touch(int place)
    {
        Lowest = Math.Min(Lowest, place);
        Highest = Math.Max(Highest, place);
    }

    public void Move(int from, int to)
    {
        int visit = Order[from];
        if (from < to) Array.Copy(Order, from + 1, Order, from, to - from);
        else Array.Copy(Order, to, Order, to + 1, from - to);
        Order[to] = visit;
        Touch(from);
        Touch(to);
    }
}
