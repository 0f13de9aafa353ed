using System.Collections.Immutable;

namespace HomeLine.Planning.Routing.Crews;

/// <summary>
/// Walks through an order and says what it costs. Every start is the earliest possible one, which is best for every kind of lateness. An order that differs from a
/// known one only in a stretch is walked from the last note before that stretch until everybody is where and when they were in the known one.
/// </summary>
internal sealed class CrewClock
{
    /// <summary>Places of the order between two notes (own value).</summary>
    private const int Step = 8;

    private readonly int[] _travel;
    private readonly int _places;
    private readonly CrewFact[] _facts;
    private readonly CrewNote[] _notes;
    private readonly int[] _largestFrom;
    private readonly CrewNote _now;
    private readonly int _visits;

    public CrewClock(CrewProblem problem)
    {
        _travel = problem.Travel;
        _places = problem.Places;
        _facts = [.. problem.Visits.Select(visit => new CrewFact(visit))];
        _notes = [.. Enumerable.Range(0, (problem.Visits.Length / Step) + 1).Select(_ => new CrewNote(problem.Caregivers))];
        _largestFrom = new int[_notes.Length];
        _now = new CrewNote(problem.Caregivers);
        _visits = problem.Visits.Length;
        StopCount = new int[problem.Caregivers];
        StopPlace = new int[problem.Caregivers * _visits];
        StopReady = new int[problem.Caregivers * _visits];
    }

    /// <summary>Of the known order, everybody's own stops at <c>caregiver * visits + stop</c>: the place in the order, and when they are free after it.</summary>
    public int[] StopCount { get; }
    public int[] StopPlace { get; }
    public int[] StopReady { get; }

    /// <summary>Cost of the order the notes are about.</summary>
    public long Known { get; private set; }

    /// <summary>Walks a whole order and takes notes on the way.</summary>
    public void Note(CrewOrder order)
    {
        _now.Clear();
        Array.Clear(_largestFrom);
        Array.Clear(StopCount);
        int largestBefore = 0;
        for (int at = 0; at < order.Order.Length; at++)
        {
            if (at % Step == 0) _notes[at / Step].CopyFrom(_now);
            int lateness = Visit(order, at), visit = order.Order[at];
            Write(order.First[visit], at);
            if (order.Second[visit] >= 0) Write(order.Second[visit], at);
            _largestFrom[at / Step] = Math.Max(_largestFrom[at / Step], lateness);
            largestBefore = Math.Max(largestBefore, lateness);
        }

        if (order.Order.Length % Step == 0) _notes[^1].CopyFrom(_now);
        for (int note = _largestFrom.Length - 2; note >= 0; note--) _largestFrom[note] = Math.Max(_largestFrom[note], _largestFrom[note + 1]);
        Known = _now.Travel + Home() + _now.Late + largestBefore;
        _knownWithoutLargest = Known - largestBefore;
    }

    private long _knownWithoutLargest;

    private void Write(int caregiver, int at)
    {
        int stop = (caregiver * _visits) + StopCount[caregiver]++;
        StopPlace[stop] = at;
        StopReady[stop] = _now.Free[caregiver];
    }

    /// <summary>Cost of an order that was copied from the known one and changed.</summary>
    public long Cost(CrewOrder order)
    {
        int length = order.Order.Length, note = Math.Min(order.Lowest, length - 1) / Step;
        _now.CopyFrom(_notes[note]);
        for (int at = note * Step; at < length; at++)
        {
            if (at % Step == 0 && at > order.Highest && _now.IsAsIn(_notes[at / Step]))
            {
                CrewNote known = _notes[at / Step];
                long rest = _knownWithoutLargest - known.Travel - known.Late;
                return _now.Travel + _now.Late + rest + Math.Max(_now.Largest, _largestFrom[at / Step]);
            }

            _ = Visit(order, at);
        }

        return _now.Travel + Home() + _now.Late + _now.Largest;
    }

    /// <summary>The walk written down.</summary>
    public CrewPlan Plan(CrewOrder order)
    {
        _now.Clear();
        var stops = ImmutableArray.CreateBuilder<CrewStop>();
        for (int at = 0; at < order.Order.Length; at++)
        {
            int visit = order.Order[at], first = order.First[visit], second = order.Second[visit];
            _ = Visit(order, at);
            int secondStart = second < 0 ? 0 : _now.Free[second] - _facts[visit].SecondDuration;
            stops.Add(new CrewStop(visit, first, _now.Free[first] - _facts[visit].FirstDuration, second, secondStart));
        }

        return new CrewPlan(stops.ToImmutable(), _now.Travel + Home(), _now.Late, _now.Largest);
    }

    private int Visit(CrewOrder order, int at)
    {
        int visit = Cells.At(order.Order, at), first = Cells.At(order.First, visit), second = Cells.At(order.Second, visit);
        ref CrewFact fact = ref Cells.At(_facts, visit);
        int leg = Cells.At(_travel, (Cells.At(_now.Place, first) * _places) + fact.Place), start = Math.Max(Cells.At(_now.Free, first) + leg, fact.Opens);
        int largest = 0;
        _now.Travel += leg;
        if (second >= 0)
        {
            int otherLeg = _travel[(_now.Place[second] * _places) + fact.Place];
            int other = Math.Max(Math.Max(_now.Free[second] + otherLeg, fact.Opens), start + fact.LeastGap);
            start = Math.Max(start, other - fact.MostGap);
            largest = Math.Max(0, other - fact.Closes);
            _now.Travel += otherLeg;
            _now.Late += largest;
            _now.Free[second] = other + fact.SecondDuration;
            _now.Place[second] = fact.Place;
        }

        int lateness = Math.Max(0, start - fact.Closes);
        _now.Late += lateness;
        Cells.At(_now.Free, first) = start + fact.FirstDuration;
        Cells.At(_now.Place, first) = fact.Place;
        largest = Math.Max(largest, lateness);
        _now.Largest = Math.Max(_now.Largest, largest);
        return largest;
    }

    private long Home()
    {
        long travel = 0;
        foreach (int place in _now.Place) travel += _travel[place * _places];
        return travel;
    }
}
