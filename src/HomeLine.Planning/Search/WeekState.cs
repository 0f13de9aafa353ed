using HomeLine.Planning.Problem;

namespace HomeLine.Planning.Search;

/// <summary>
/// A plan under construction: which units share a visit slot, which slots each route visits in order, and when. Plain arrays, so that a copy is a few
/// block moves and a round of the search allocates next to nothing.
/// </summary>
internal sealed class WeekState
{
    /// <summary>No unit, slot or route.</summary>
    public const int None = -1;

    public WeekState(CompiledWeek week)
    {
        Week = week;
        int extra = week.FixedVisits.Length;
        Trial = (week.PatientCount * week.Days) + extra;
        SlotCount = Trial + 1;
        Width = Math.Max(1, Math.Min(week.Units.Count, 40)) + extra + 1;
        UnitSlot = Filled(week.Units.Count, None);
        UnitNext = Filled(week.Units.Count, None);
        FirstUnit = Filled(SlotCount, None);
        RouteA = Filled(SlotCount, None);
        RouteB = Filled(SlotCount, None);
        Start = new int[SlotCount];
        Minutes = new int[SlotCount];
        Setup = new int[SlotCount];
        Work = new int[SlotCount];
        DrawToDrop = new int[SlotCount];
        LateFrom = new int[SlotCount];
        Pinned = new bool[SlotCount];
        Fixed = new bool[SlotCount];
        Chained = new bool[SlotCount];
        Spans = new Span[SlotCount][];
        Patient = new int[SlotCount];
        Visits = new int[week.Routes.Count];
        Order = new int[week.Routes.Count * Width];
        Driving = new int[week.Routes.Count];
        Wait = new int[week.Routes.Count];
        Overtime = new int[week.Routes.Count];
        Stay = new int[week.Routes.Count];
        Late = new double[week.Routes.Count];
        for (int slot = 0; slot < SlotCount; slot++) Patient[slot] = Math.Min(slot / week.Days, Math.Max(0, week.PatientCount - 1));
    }

    public CompiledWeek Week { get; }

    /// <summary>The slot used to try an insertion out.</summary>
    public int Trial { get; }

    public int SlotCount { get; }

    /// <summary>Room for slots in a route.</summary>
    public int Width { get; }

    public int[] UnitSlot { get; }

    /// <summary>The next unit of the same slot.</summary>
    public int[] UnitNext { get; }

    public int[] FirstUnit { get; }

    /// <summary>Route of the nurse who does the care.</summary>
    public int[] RouteA { get; }

    /// <summary>Route of the second person.</summary>
    public int[] RouteB { get; }

    public int[] Start { get; }

    public int[] Minutes { get; }

    public int[] Setup { get; }

    public int[] Work { get; }

    public int[] DrawToDrop { get; }

    /// <summary>First minute at which anything of the slot is late or off target, chains left aside.</summary>
    public int[] LateFrom { get; }

    /// <summary>The start is given and only checked: fixed visits, and two-person visits once they have a start.</summary>
    public bool[] Pinned { get; }

    public bool[] Fixed { get; }

    public bool[] Chained { get; }

    public Span[][] Spans { get; }

    public int[] Patient { get; }

    /// <summary>Number of visits of a route.</summary>
    public int[] Visits { get; }

    /// <summary>Slots of the routes in order, <see cref="Width"/> apart.</summary>
    public int[] Order { get; }

    public int[] Driving { get; }

    public int[] Wait { get; }

    public int[] Overtime { get; }

    /// <summary>Minutes in homes by route.</summary>
    public int[] Stay { get; }

    /// <summary>Blended cost of lateness of a route's own care.</summary>
    public double[] Late { get; }

    public void CopyFrom(WeekState other)
    {
        other.UnitSlot.CopyTo(UnitSlot, 0);
        other.UnitNext.CopyTo(UnitNext, 0);
        other.FirstUnit.CopyTo(FirstUnit, 0);
        other.RouteA.CopyTo(RouteA, 0);
        other.RouteB.CopyTo(RouteB, 0);
        other.Start.CopyTo(Start, 0);
        other.Minutes.CopyTo(Minutes, 0);
        other.Setup.CopyTo(Setup, 0);
        other.Work.CopyTo(Work, 0);
        other.DrawToDrop.CopyTo(DrawToDrop, 0);
        other.LateFrom.CopyTo(LateFrom, 0);
        other.Pinned.CopyTo(Pinned, 0);
        other.Fixed.CopyTo(Fixed, 0);
        other.Chained.CopyTo(Chained, 0);
        other.Spans.CopyTo(Spans, 0);
        other.Patient.CopyTo(Patient, 0);
        other.Visits.CopyTo(Visits, 0);
        other.Order.CopyTo(Order, 0);
        other.Driving.CopyTo(Driving, 0);
        other.Wait.CopyTo(Wait, 0);
        other.Overtime.CopyTo(Overtime, 0);
        other.Stay.CopyTo(Stay, 0);
        other.Late.CopyTo(Late, 0);
    }

    public Span<int> OrderOf(int route) => Order.AsSpan(route * Width, Visits[route]);

    public int PositionOf(int route, int slot) => OrderOf(route).IndexOf(slot);

    public void PutAt(int route, int position, int slot)
    {
        int at = route * Width, count = Visits[route]++;
        for (int i = count; i > position; i--) Order[at + i] = Order[at + i - 1];
        Order[at + position] = slot;
    }

    public void TakeFrom(int route, int slot)
    {
        int position = PositionOf(route, slot), at = route * Width, count = --Visits[route];
        for (int i = position; i < count; i++) Order[at + i] = Order[at + i + 1];
    }

    /// <summary>The day of a slot that stands in a route.</summary>
    public int DayOf(int slot) => Week.Routes.Day[RouteA[slot]];

    private static int[] Filled(int count, int value)
    {
        var array = new int[count];
        Array.Fill(array, value);
        return array;
    }
}
