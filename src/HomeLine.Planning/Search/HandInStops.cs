using HomeLine.Planning.Problem;

namespace HomeLine.Planning.Search;

/// <summary>After which visits of a day time for a stop at a drop point is made, whatever follows.</summary>
internal enum TimeMade
{
    /// <summary>After none: only what the starts leave anyhow.</summary>
    Nowhere,

    /// <summary>Where it adds fewest minutes.</summary>
    WhereShortest,

    /// <summary>After every run of draws.</summary>
    AfterEveryRun,

    /// <summary>After every draw.</summary>
    AfterEveryDraw,
}

/// <summary>One visit of a day, as far as specimens go.</summary>
/// <param name="Place">Where.</param>
/// <param name="Start">Its start.</param>
/// <param name="Leave">When she has charted and drives on.</param>
/// <param name="Most">Most minutes from its start to a drop point; the largest number where she draws nothing.</param>
/// <param name="Fixed">What it draws is a fact.</param>
internal readonly record struct DropSeat(int Place, int Start, int Leave, int Most, bool Fixed)
{
    /// <summary>Whether she draws there.</summary>
    public bool Draws => Most != int.MaxValue;
}

/// <summary>
/// Where a nurse hands her specimens in, by the starts of her day alone: the ways that add the fewest minutes in all without moving a visit, of equal ones the earliest,
/// exactly as a reader of the plan would find them. Nothing is allocated once the day fits.
/// </summary>
/// <param name="problem">Its drop points and the minutes of handing in.</param>
/// <param name="leaving">Minutes of a trip by from, to and when it is left for, in the places of the seats.</param>
/// <param name="placeOfDrop">The place of a drop point.</param>
internal sealed class HandInStops(WeekProblem problem, Func<int, int, int, int> leaving, Func<int, int> placeOfDrop)
{
    private const int Missing = 1_000_000;

    private readonly int _handIn = problem.Rules.HandInMinutes ?? 0;
    private int[] _best = new int[16], _after = new int[16], _minutes = new int[16];

    /// <summary>The visits of the day, to be filled in.</summary>
    public DropSeat[] Seats { get; private set; } = new DropSeat[16];

    /// <summary>By position: minutes a stop after it adds to the way on.</summary>
    public int[] Extra { get; private set; } = new int[16];

    /// <summary>By position: whether there is a stop after it.</summary>
    public bool[] Stops { get; private set; } = new bool[16];

    /// <summary>By position: whether time for a stop after it is made; see <see cref="Make"/>.</summary>
    public bool[] Via { get; private set; } = new bool[16];

    /// <summary>Makes room for a day of so many visits.</summary>
    public void Reserve(int count)
    {
        if (Seats.Length > count) return;
        int size = 2 * (count + 1);
        (_best, _after, _minutes, Seats, Extra, Stops, Via) = (new int[size], new int[size], new int[size], new DropSeat[size], new int[size], new bool[size], new bool[size]);
    }

    /// <summary>Minutes from a place by the drop point that adds fewest to the next.</summary>
    public (int Minutes, int Drop) Shortest(int from, int next, int leave)
    {
        (int Minutes, int Drop) best = (ITravelTimes.Unreachable, -1);
        for (int drop = 0; drop < problem.DropPoints.Length; drop++)
        {
            int place = placeOfDrop(drop), on = leave + leaving(from, place, leave) + _handIn;
            int minutes = on + leaving(place, next, on) - leave;
            if (minutes < best.Minutes) best = (minutes, drop);
        }

        return best;
    }

    /// <summary>Works out <see cref="Stops"/> and <see cref="Extra"/> and returns how many specimens that are no facts are handed in nowhere in time.</summary>
    /// <param name="count">Visits of the day.</param>
    /// <param name="home">Where she drives last.</param>
    /// <param name="mayPush">Whether a stop may take time that the next visit does not leave.</param>
    public int Read(int count, int home, bool mayPush = false)
    {
        _best[count] = 0;
        for (int i = count - 1; i >= 0; i--)
        {
            _best[i] = _best[i + 1];
            _after[i] = -1;
            if (!Seats[i].Draws) continue;
            _best[i] += Missing;
            Consider(i, count, home, mayPush);
        }

        Array.Clear(Extra);
        Array.Clear(Stops);
        int late = 0;
        for (int i = 0; i < count;)
        {
            int after = _after[i];
            if (after >= 0) (Extra[after], Stops[after]) = (_minutes[i], true);
            else if (Seats[i].Draws && !Seats[i].Fixed) late++;
            i = after >= 0 ? after + 1 : i + 1;
        }

        return late;
    }

    /// <summary>Sets <see cref="Via"/>; false when that is nothing new. Where it is shortest follows from the seats as they are.</summary>
    public bool Make(TimeMade made, int count, int home)
    {
        Array.Clear(Via);
        if (made == TimeMade.Nowhere) return true;
        if (made == TimeMade.WhereShortest)
        {
            Read(count, home, mayPush: true);
            Stops.AsSpan(0, count).CopyTo(Via);
            return true;
        }

        bool runs = false;
        for (int i = 0; i < count; i++)
        {
            bool follows = Seats[i].Draws && i + 1 < count && Seats[i + 1].Draws;
            runs |= follows;
            Via[i] = Seats[i].Draws && (made == TimeMade.AfterEveryDraw || !follows);
        }

        return made != TimeMade.AfterEveryDraw || runs;
    }

    private void Consider(int first, int count, int home, bool mayPush)
    {
        int due = int.MaxValue, day = CompiledWeek.DayOf(Seats[first].Start);
        for (int after = first; after < count; after++)
        {
            DropSeat seat = Seats[after];
            bool last = after + 1 == count;
            int next = last ? home : Seats[after + 1].Place;
            if (seat.Draws) due = Math.Min(due, seat.Start + seat.Most);
            if (seat.Leave > due) return;
            for (int drop = 0; drop < problem.DropPoints.Length; drop++)
            {
                int place = placeOfDrop(drop), arrive = seat.Leave + leaving(seat.Place, place, seat.Leave), on = arrive + _handIn;
                if (arrive > due || !Collected(drop, day, arrive)) continue;
                int way = leaving(place, next, on);
                if (way >= ITravelTimes.Unreachable || (!last && !mayPush && on + way > Seats[after + 1].Start)) continue;
                int minutes = on + way - seat.Leave - leaving(seat.Place, next, seat.Leave);
                if (minutes + _best[after + 1] >= _best[first]) continue;
                (_best[first], _after[first], _minutes[first]) = (minutes + _best[after + 1], after, minutes);
            }
        }
    }

    private bool Collected(int drop, int day, int arrive)
    {
        foreach (int cutoff in problem.DropPoints[drop].Cutoffs)
        {
            if (arrive <= cutoff && CompiledWeek.DayOf(cutoff) == day) return true;
        }

        return false;
    }
}
