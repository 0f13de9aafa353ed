using System.Collections.Immutable;
using HomeLine.Planning.Plans;
using HomeLine.Planning.Problem;
using HomeLine.Planning.Search;

namespace HomeLine.Planning.Editing;

/// <summary>Where a break is made room for when it has none: nowhere, before the moved visit, or before the one after it.</summary>
internal enum Delay
{
    None,
    Itself,
    TheNext,
}

/// <summary>Visits that change under a move.</summary>
/// <param name="Before">As they stand.</param>
/// <param name="After">As they would stand.</param>
/// <param name="Moved">The visit in hand.</param>
/// <param name="Nurses">Whose days are touched.</param>
internal sealed record Laid(ImmutableArray<PlannedVisit> Before, ImmutableArray<PlannedVisit> After, PlannedVisit? Moved, ImmutableHashSet<string> Nurses);

/// <summary>
/// Lays a move out: who is where in which order, and when each visit then starts. Visits that are not moved keep their start unless the road pushes them;
/// those that stay, and two-person visits, are never pushed. With time made for drop points, the ways by them are longer.
/// </summary>
internal sealed class Laying(HandTable table, Delay delay, TimeMade made = TimeMade.Nowhere)
{
    private const int Tries = 4;

    private readonly Dictionary<string, PlannedVisit> _now = new(StringComparer.Ordinal);
    private readonly HashSet<string> _gone = new(StringComparer.Ordinal);
    private readonly HashSet<string> _moved = new(StringComparer.Ordinal);
    private readonly HashSet<string> _keepsStart = new(StringComparer.Ordinal);
    private readonly HashSet<string> _timed = new(StringComparer.Ordinal);
    private readonly Dictionary<(string Nurse, int Day), List<string>> _order = [];
    private readonly StartTimes _starts = new(table);

    /// <summary>
    /// Whether the laid days plainly cannot work: somebody is late where nothing may be pushed, home too late, or has too many visits. Only to pass over
    /// places quickly; the checker has the word on those that are shown.
    /// </summary>
    public bool IsHopeless { get; private set; }

    public Laid Of(HandMove move)
    {
        string? inHand = move switch
        {
            HandMove.Move to => MoveTo(to.Visit, to.To),
            HandMove.PlaceCare care => PlaceCare(care),
            HandMove.TakeOut(var visit) => TakeOut(visit),
            HandMove.ChangeSecond(var visit, var second) => ChangeSecond(visit, second),
            HandMove.Swap(var visit, var with) => Swap(visit, with),
            HandMove.SwapDays(var nurse, var with, int day) => SwapDays(nurse, with, day),
            _ => throw new ArgumentOutOfRangeException(nameof(move), move, "Unknown move"),
        };
        for (int i = 0; i < Tries && LayAll(); i++)
        {
            // A visit of two people may have shifted the day of the other one.
        }

        return Changes(inHand);
    }

    private string MoveTo(string visit, DayPlace to)
    {
        PlannedVisit was = table.Visit(visit);
        Leave(was);
        List<string> there = Order(to.Nurse, to.Day);
        bool beforeNext = to.Position >= there.Count || Now(there[to.Position]).Start > was.Start;
        if (HandTable.DayOf(was) == to.Day && was.Nurse != to.Nurse && beforeNext) _keepsStart.Add(visit);
        Arrive(was, to.Nurse, to.Day, to.Position);
        return visit;
    }

    private string PlaceCare(HandMove.PlaceCare move)
    {
        ImmutableArray<CareTask> care = [.. move.Tasks.Select(table.Task)];
        PlannedVisit? joined = table.Day(move.To.Nurse, move.To.Day).FirstOrDefault(v => v.Patient == care[0].Patient && v.Nurse == move.To.Nurse);
        if (joined is not null)
        {
            ImmutableArray<CareTask> all = [.. table.CareOf(joined), .. care];
            _now[joined.Id] = joined with { Tasks = [.. all.Select(t => t.Id).Order(StringComparer.Ordinal)], Minutes = table.MinutesOf(all, joined.Nurse) };
            foreach (string nurse in HandTable.PeopleOf(joined)) Order(nurse, move.To.Day);
            _moved.Add(joined.Id);
            _keepsStart.Add(joined.Id);
            return joined.Id;
        }

        var visit = new PlannedVisit
        {
            Id = NewName(care[0].Id),
            Patient = care[0].Patient,
            Nurse = move.To.Nurse,
            Second = table.Patient(care[0].Patient).CrewSize > 1 ? Escort(care[0].Patient, move.To) : null,
            Start = move.To.Day * 1440,
            Minutes = table.MinutesOf(care, move.To.Nurse),
            Tasks = [.. care.Select(t => t.Id).Order(StringComparer.Ordinal)],
        };
        Arrive(visit, move.To.Nurse, move.To.Day, move.To.Position);
        return visit.Id;
    }

    private string? TakeOut(string visit)
    {
        Leave(table.Visit(visit));
        _gone.Add(visit);
        return null;
    }

    private string ChangeSecond(string visit, string? second)
    {
        PlannedVisit was = table.Visit(visit);
        int day = HandTable.DayOf(was);
        if (was.Second is { } left) Order(left, day).Remove(visit);
        _now[visit] = was with { Second = second };
        _moved.Add(visit);
        _keepsStart.Add(visit);
        Order(was.Nurse, day);
        if (second is not null) Order(second, day).Add(visit);
        return visit;
    }

    private string Swap(string visit, string with)
    {
        PlannedVisit one = table.Visit(visit), other = table.Visit(with);
        int onePosition = PositionOf(one), otherPosition = PositionOf(other), oneDay = HandTable.DayOf(one), otherDay = HandTable.DayOf(other);
        Leave(one);
        Leave(other);
        // The earlier place first, so that the second still finds its own when both are in one day.
        if (one.Nurse == other.Nurse && oneDay == otherDay && onePosition > otherPosition)
        {
            Arrive(one, other.Nurse, otherDay, otherPosition);
            Arrive(other, one.Nurse, oneDay, onePosition);
        }
        else
        {
            Arrive(other, one.Nurse, oneDay, onePosition);
            Arrive(one, other.Nurse, otherDay, otherPosition);
        }

        return visit;
    }

    private string? SwapDays(string nurse, string with, int day)
    {
        ImmutableArray<PlannedVisit> mine = [.. table.Day(nurse, day).Where(v => v.Nurse == nurse)], hers = [.. table.Day(with, day).Where(v => v.Nurse == with)];
        foreach (PlannedVisit visit in mine.Concat(hers)) Leave(visit);
        foreach ((PlannedVisit visit, string to) in mine.Select(v => (v, with)).Concat(hers.Select(v => (v, nurse))))
        {
            Arrive(visit, to, day, int.MaxValue);
            _keepsStart.Add(visit.Id);
        }

        return null;
    }

    private void Leave(PlannedVisit visit)
    {
        foreach (string nurse in HandTable.PeopleOf(visit)) Order(nurse, HandTable.DayOf(visit)).Remove(visit.Id);
    }

    private void Arrive(PlannedVisit visit, string nurse, int day, int position)
    {
        string? second = visit.Second == nurse ? visit.Nurse : visit.Second;
        int start = HandTable.DayOf(visit) == day ? visit.Start : day * 1440;
        _now[visit.Id] = visit with { Nurse = nurse, Second = second, Start = start, Minutes = table.Knows(visit.Id) ? table.MinutesWith(visit, nurse) : visit.Minutes };
        _moved.Add(visit.Id);
        List<string> order = Order(nurse, day);
        order.Insert(Math.Clamp(position, 0, order.Count), visit.Id);
        // The second person has no place of her own: she is there when the visit starts.
        if (second is not null) Order(second, day).Add(visit.Id);
    }

    private List<string> Order(string nurse, int day)
    {
        if (!_order.TryGetValue((nurse, day), out List<string>? order))
            _order[(nurse, day)] = order = [.. table.Day(nurse, day).Select(v => v.Id)];
        return order;
    }

    private int PositionOf(PlannedVisit visit) => table.Day(visit.Nurse, HandTable.DayOf(visit)).IndexOf(visit);

    private PlannedVisit Now(string id) => _now.TryGetValue(id, out PlannedVisit? changed) ? changed : table.Visit(id);

    /// <summary>Times every touched day once; whether anything shifted.</summary>
    private bool LayAll()
    {
        IsHopeless = false;
        bool shifted = false;
        foreach (((string nurse, int day), List<string> order) in _order)
        {
            foreach (string seated in order.Where(id => Now(id).Nurse != nurse).ToArray())
            {
                order.Remove(seated);
                order.Insert(order.Count(id => Now(id).Start < Now(seated).Start), seated);
            }

            shifted |= Lay(nurse, day, order, null);
            if (made != TimeMade.Nowhere && StopsOf(nurse, order) is { } stops) shifted |= Lay(nurse, day, order, stops);
        }

        return shifted;
    }

    /// <summary>Where time for drop points is made on a day as laid so far; empty where nothing is drawn, or where that is nothing new.</summary>
    private HandInStops? StopsOf(string nurse, List<string> order)
    {
        var seats = order.Select(Now).ToArray();
        if (!seats.Any(v => table.MostToDrop(v, nurse) != int.MaxValue)) return null;
        HandInStops stops = table.Stops(nurse, seats);
        return stops.Make(made, seats.Length, table.Nurse(nurse).Home) ? stops : null;
    }

    private bool Lay(string nurse, int day, List<string> order, HandInStops? stops)
    {
        bool shifted = false;
        PlannedVisit? before = null;
        for (int i = 0; i < order.Count; i++)
        {
            string id = order[i];
            PlannedVisit visit = Now(id);
            bool byDrop = before is not null && stops is not null && stops.Via[i - 1];
            int arrival = _starts.Arrival(nurse, day, before, visit, byDrop ? stops : null) + Break(nurse, day, id, before);
            if (StartOf(visit, day, arrival) is int start && start != visit.Start)
            {
                visit = visit with { Start = start };
                _now[id] = visit;
                shifted = true;
            }

            IsHopeless |= visit.Start < arrival || visit.Start >= (day + 1) * 1440;
            before = visit;
        }

        IsHopeless |= order.Count > table.Nurse(nurse).MaxVisitsADay || (before is not null && _starts.HomeAgain(nurse, before) > _starts.Limit(nurse, day));
        return shifted;
    }

    private int StartOf(PlannedVisit visit, int day, int arrival)
    {
        bool isMoved = _moved.Contains(visit.Id);
        if (!isMoved && (visit.Start >= arrival || table.Stays(visit.Id) || visit.Second is not null)) return visit.Start;
        if (isMoved && (_keepsStart.Contains(visit.Id) || _timed.Contains(visit.Id)) && visit.Start >= arrival && visit.Start > day * 1440)
            return visit.Start;
        // The second person may only make it later.
        if (visit.Second is not null) _timed.Add(visit.Id);
        return _starts.FirstAllowed(visit, day, arrival);
    }

    private int Break(string nurse, int day, string id, PlannedVisit? before)
    {
        if (delay == Delay.None || before is null) return 0;
        bool here = delay == Delay.Itself ? _moved.Contains(id) : _moved.Contains(before.Id);
        return here ? table.Nurse(nurse).Shifts.FirstOrDefault(s => s.Day == day)?.LunchMinutes ?? 0 : 0;
    }

    private Laid Changes(string? inHand)
    {
        var changed = _now.Values.Where(v => !table.Knows(v.Id) || !IsIn(v) || table.Visit(v.Id) != v).ToArray();
        ImmutableArray<PlannedVisit> before = [.. changed.Where(IsIn).Select(v => table.Visit(v.Id)), .. _gone.Select(table.Visit)];
        return new Laid(before, [.. changed.OrderBy(v => v.Start)], inHand is null ? null : Now(inHand), [.. _order.Keys.Select(k => k.Nurse)]);
    }

    private bool IsIn(PlannedVisit visit) => table.OfPatient(visit.Patient).Any(v => v.Id == visit.Id);

    /// <summary>Somebody who works that day, is welcome, and has the fewest minutes planned.</summary>
    private string? Escort(string patient, DayPlace to) => table.Problem.Nurses
        .Where(n => n.Id != to.Nurse && n.Shifts.Any(s => s.Day == to.Day && !s.OnCall) && Search.Scope.HomeFault(table.Patient(patient), n) is null)
        .OrderBy(n => table.Day(n.Id, to.Day).Sum(v => v.Minutes)).ThenBy(n => n.Id, StringComparer.Ordinal)
        .FirstOrDefault()?.Id;

    private string NewName(string task)
    {
        string name = "visit " + task;
        for (int n = 2; table.Knows(name); n++) name = $"visit {task} ({n})";
        return name;
    }
}
