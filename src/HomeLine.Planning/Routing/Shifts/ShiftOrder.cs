namespace HomeLine.Planning.Routing.Shifts;

/// <summary>A day as the search changes it: one order of all visits, so that two people can never wait for each other in a circle, and everything else that is decided.</summary>
internal sealed class ShiftOrder(int visits, int patients)
{
    /// <summary>Visits in order, those left out among them.</summary>
    public readonly int[] Order = new int[visits];

    /// <summary>Who goes to each visit; the second is -1 where one person is enough.</summary>
    public readonly int[] First = new int[visits], Second = new int[visits];

    /// <summary>Index of the first window the visit may use.</summary>
    public readonly int[] From = new int[visits];

    /// <summary>Whose lunch comes before the visit even when it costs time: 1 for the first person's, 2 for the second's, 3 for both.</summary>
    public readonly int[] Lunch = new int[visits];

    /// <summary>Patients left out.</summary>
    public readonly bool[] Out = new bool[patients];

    public void CopyFrom(ShiftOrder other)
    {
        other.Order.AsSpan().CopyTo(Order);
        other.First.AsSpan().CopyTo(First);
        other.Second.AsSpan().CopyTo(Second);
        other.From.AsSpan().CopyTo(From);
        other.Lunch.AsSpan().CopyTo(Lunch);
        other.Out.AsSpan().CopyTo(Out);
    }

    public int PlaceOf(int visit) => Array.IndexOf(Order, visit);

    public void Move(int from, int to)
    {
        int visit = Order[from];
        if (from < to) Array.Copy(Order, from + 1, Order, from, to - from);
        else Array.Copy(Order, to, Order, to + 1, from - to);
        Order[to] = visit;
    }
}
