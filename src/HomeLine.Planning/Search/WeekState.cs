using HomeLine.Planning.Problem;

namespace HomeLine.Planning.Search;

/// <summary>
/// A plan under construction: which units share a visit slot, which slots each route visits in order, and when. Plain arrays; whoever changes a
/// route, slot or unit says so first, so that a round of the search can be taken back at the cost of what it touched.
/// </summary>
internal sealed class WeekState
{
    /// <summary>No unit, slot or route.</summary>
    public const int None = -1;

    private const int WidestDay = 40;

    public WeekState(CompiledWeek week)
    {
        Week = week;
        int routes = week.Routes.Count, extra = week.FixedVisits.Length;
        Trial = (week.PatientCount * week.Days) + extra;
        SlotCount = Trial + 1;
        Width = WidthFor(week);
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
        Latest = Filled(SlotCount, int.MaxValue);
        LateFrom = new int[SlotCount];
        Pinned = new bool[SlotCount];
        Fixed = new bool[SlotCount];
        Chained = new bool[SlotCount];
        Spans = new Span[SlotCount][];
        Patient = new int[SlotCount];
        Visits = new int[routes];
        Order = new int[routes * Width];
        Figures = new RouteFigures[routes];
        Reach = new PositionReach[routes * Width];
        for (int slot = 0; slot < SlotCount; slot++) Patient[slot] = Math.Min(slot / week.Days, Math.Max(0, week.PatientCount - 1));
    }

    public CompiledWeek Week { get; }

    /// <summary>What has been touched in the round under way; empty outside the search.</summary>
    public Journal? Journal { get; set; }

    /// <summary>The slot used to try an insertion out.</summary>
    public int Trial { get; }

    public int SlotCount { get; }

    /// <summary>Slots beyond patient and day in use: second fixed visits of a patient's day.</summary>
    public int ExtraUsed { get; set; }

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

    /// <summary>Latest start from which a specimen still reaches its drop point; the largest number where none is drawn.</summary>
    public int[] Latest { get; }

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

    /// <summary>Minutes of each route.</summary>
    public RouteFigures[] Figures { get; }

    /// <summary>By route and position, <see cref="Width"/> apart: what arriving there later would do.</summary>
    public PositionReach[] Reach { get; }

    public void CopyFrom(WeekState other)
    {
        for (int unit = 0; unit < UnitSlot.Length; unit++) CopyUnit(other, unit);
        for (int slot = 0; slot < Trial; slot++) CopySlot(other, slot);
        for (int route = 0; route < Visits.Length; route++) CopyRoute(other, route);
        other.Patient.CopyTo(Patient, 0);
        other.Fixed.CopyTo(Fixed, 0);
        ExtraUsed = other.ExtraUsed;
    }

    public void CopyUnit(WeekState other, int unit)
    {
        UnitSlot[unit] = other.UnitSlot[unit];
        UnitNext[unit] = other.UnitNext[unit];
    }

    public void CopySlot(WeekState other, int slot)
    {
        FirstUnit[slot] = other.FirstUnit[slot];
        RouteA[slot] = other.RouteA[slot];
        RouteB[slot] = other.RouteB[slot];
        Start[slot] = other.Start[slot];
        Minutes[slot] = other.Minutes[slot];
        Setup[slot] = other.Setup[slot];
        Work[slot] = other.Work[slot];
        DrawToDrop[slot] = other.DrawToDrop[slot];
        Latest[slot] = other.Latest[slot];
        LateFrom[slot] = other.LateFrom[slot];
        Pinned[slot] = other.Pinned[slot];
        Chained[slot] = other.Chained[slot];
        Spans[slot] = other.Spans[slot];
    }

    public void CopyRoute(WeekState other, int route)
    {
        int at = route * Width, count = other.Visits[route];
        Visits[route] = count;
        Figures[route] = other.Figures[route];
        Array.Copy(other.Order, at, Order, at, count);
        Array.Copy(other.Reach, at, Reach, at, count);
    }

    public Span<int> OrderOf(int route) => Order.AsSpan(route * Width, Visits[route]);

    public int PositionOf(int route, int slot) => OrderOf(route).IndexOf(slot);

    public void PutAt(int route, int position, int slot)
    {
        Journal?.Route(route);
        int at = route * Width, count = Visits[route]++;
        for (int i = count; i > position; i--) Order[at + i] = Order[at + i - 1];
        Order[at + position] = slot;
    }

    public void TakeFrom(int route, int slot)
    {
        Journal?.Route(route);
        int position = PositionOf(route, slot), at = route * Width, count = --Visits[route];
        for (int i = position; i < count; i++) Order[at + i] = Order[at + i + 1];
    }

    /// <summary>The day of a slot that stands in a route.</summary>
    public int DayOf(int slot) => Week.Routes.Day[RouteA[slot]];

    /// <summary>The most visits any nurse takes a day, plus fixed ones, plus one on trial.</summary>
    private static int WidthFor(CompiledWeek week)
    {
        int cap = week.Routes.Count == 0 ? 0 : week.Routes.Cap.Max();
        int fixedADay = week.FixedVisits.SelectMany(v => new[] { v.Nurse, v.Second }.OfType<string>().Select(n => (n, CompiledWeek.DayOf(v.Start))))
            .CountBy(k => k).Select(g => g.Value).DefaultIfEmpty(0).Max();
        return Math.Max(1, Math.Min(Math.Min(week.Units.Count, cap), WidestDay)) + fixedADay + 1;
    }

    private static int[] Filled(int count, int value)
    {
        var array = new int[count];
        Array.Fill(array, value);
        return array;
    }
}
