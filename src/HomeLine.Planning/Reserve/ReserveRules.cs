namespace HomeLine.Planning.Reserve;

/// <summary>How much of a day is kept free for care nobody planned.</summary>
/// <param name="NursesPerSlot">One slot is asked for by so many nurses at work, begun; 0 for none at all.</param>
/// <param name="SlotMinutes">Length of a slot in one piece, the way there included; at least 1.</param>
public sealed record ReserveRules(int NursesPerSlot, int SlotMinutes)
{
    /// <summary>Slots asked for on a day.</summary>
    /// <param name="nurses">Nurses at work that day, those on call left aside.</param>
    public int AskedOf(int nurses) => NursesPerSlot <= 0 ? 0 : (nurses + NursesPerSlot - 1) / NursesPerSlot;
}
