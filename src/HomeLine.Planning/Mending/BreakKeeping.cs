using HomeLine.Planning.Search;
using HomeLine.Planning.Standing;

namespace HomeLine.Planning.Mending;

/// <summary>
/// A visit that is taken out may take the gap with it in which a nurse's break was. Where one visit of her day a little later makes room again, and whoever
/// comes after it can still be reached, it starts later; the least delay is taken.
/// </summary>
internal sealed class BreakKeeping(StandingTable table, PushTrial trial, MendState state)
{
    private readonly bool[] _held = [.. Enumerable.Range(0, table.Shifts.Length).Select(line => trial.BreakHolds(state.Standing, line))];

    /// <summary>Makes room on every nurse-day from today on that had room for its break before the troubles and has none now.</summary>
    public void Restore()
    {
        int today = CompiledWeek.DayOf(table.Problem.Now);
        for (int line = 0; line < _held.Length; line++)
        {
            if (_held[line] && table.DayOf(line) >= today && !trial.BreakHolds(state.Standing, line)) Restore(line);
        }
    }

    private void Restore(int line)
    {
        foreach ((int visit, int start) in Delays(line).OrderBy(d => d.Start - state.Standing.Start[d.Visit]).ToArray())
        {
            int liked = state.Anchor[visit];
            state.Anchor[visit] = start;
            if (state.LayOut(line) < 0 && trial.BreakHolds(state.Standing, line)) return;
            state.Anchor[visit] = liked;
            state.LayOut(line);
        }
    }

    /// <summary>By visit of the day that may move: the first start that leaves the break before it.</summary>
    private List<(int Visit, int Start)> Delays(int line)
    {
        var found = new List<(int, int)>();
        Problem.Shift shift = table.Shifts[line]!;
        ReadOnlySpan<int> order = state.Standing.On(line);
        for (int i = 0; i < order.Length; i++)
        {
            StandingVisit facts = table.Visits[order[i]];
            if (facts.Fixed || state.Standing.Second[order[i]] >= 0) continue;
            int arrival = trial.ArrivalAt(state.Standing, line, i, facts.Patient, notBefore: shift.LunchFrom, pause: shift.LunchMinutes);
            int start = facts.StartAfter(Math.Max(arrival, state.Standing.Start[order[i]]));
            if (start > state.Standing.Start[order[i]] && PushTrial.TiesHold(state.Standing, facts, start)) found.Add((order[i], start));
        }

        return found;
    }
}
