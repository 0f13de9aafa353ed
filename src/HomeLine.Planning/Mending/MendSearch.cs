using HomeLine.Planning.Search;
using HomeLine.Planning.Standing;

namespace HomeLine.Planning.Mending;

/// <summary>
/// Repairs a broken plan: what cannot stand is taken out and placed by need, then a few visits at a time are taken out and placed anew, and the plan that makes
/// least late and disturbs least is kept. Visits nothing touches stay where they are.
/// </summary>
internal sealed class MendSearch
{
    private readonly StandingTable _table;
    private readonly BrokenDay _day;
    private readonly MendOptions _options;
    private readonly PushTrial _trial;
    private readonly MendPlaces _places;
    private readonly MendCounting _counting;
    private readonly MendState _state, _kept;
    private readonly List<int> _open = [];
    private readonly List<int> _broken = [];

    public MendSearch(StandingTable table, BrokenDay day, MendOptions options)
    {
        (_table, _day) = (table, day);
        PushTrial trial = _trial = new PushTrial(table);
        var closed = day.Closed.Select(c => table.Line(table.NurseIndex[c.Nurse], c.Day)).ToHashSet();
        _places = new MendPlaces(table, trial, closed, options);
        _options = options;
        _counting = new MendCounting(table, trial);
        _state = new MendState(table, trial);
        _kept = new MendState(table, trial);
    }

    /// <summary>Visits that could not stay as they were, the one that can wait least first.</summary>
    public IReadOnlyList<int> Broken => _broken;

    public MendState Mend(CancellationToken cancel)
    {
        Break();
        _counting.NoteBreaks(_state);
        foreach (int visit in Urgency.Order(_table, _open).ToList()) Place(visit);
        MendCost best = _counting.Of(_state);
        _kept.CopyFrom(_state);
        var chance = new SeededChance(_options.Seed);
        for (int round = 0; round < _options.Rounds && _broken.Count > 0 && !cancel.IsCancellationRequested; round++)
        {
            Shake(chance);
            MendCost cost = _counting.Of(_state);
            if (cost <= best)
            {
                best = cost;
                _kept.CopyFrom(_state);
            }
            else Return();
        }

        return _kept;
    }

    /// <summary>Whether a trouble itself left a nurse no break on some day.</summary>
    public bool BreakGone(string nurse) => _counting.BreakGone(_table.NurseIndex[nurse]);

    /// <summary>Points of disruption of a repaired plan.</summary>
    public long DisruptionOf(MendState state) => _counting.Disruption(state);

    /// <summary>Takes out what lost its nurse, then lays every nurse-day ahead out and takes out what can no longer be kept.</summary>
    private void Break()
    {
        var breaks = new BreakKeeping(_table, _trial, _state);
        for (int v = 0; v < _table.Visits.Length; v++)
        {
            if (_day.IsOut(_table.Visits[v].Was.Id)) Open(v);
        }

        int today = CompiledWeek.DayOf(_table.Problem.Now);
        for (int line = 0; line < _table.Shifts.Length; line++)
        {
            if (_table.DayOf(line) < today || _table.Shifts[line] is null) continue;
            for (int failed = _state.LayOut(line); failed >= 0; failed = _state.LayOut(line)) Open(failed);
        }

        breaks.Restore();

        _broken.AddRange(Urgency.Order(_table, _open));
        _broken.AddRange(Pushed());
    }

    /// <summary>Visits that stay with their nurse but later than promised.</summary>
    private IEnumerable<int> Pushed() => Urgency.Order(_table, Enumerable.Range(0, _table.Visits.Length).Where(v =>
        _state.Standing.Nurse[v] >= 0 && _state.Standing.Start[v] != _table.Visits[v].Was.Start));

    private void Open(int visit)
    {
        foreach (int mate in _table.OfPatient[_table.Visits[visit].Patient])
        {
            if (_state.Standing.MergedInto[mate] != visit) continue;
            _state.Part(mate);
            _open.Add(mate);
        }

        _state.TakeOut(visit);
        _open.Add(visit);
    }

    private void Place(int visit)
    {
        (MendPlace place, MendCost cost) = _places.Best(_state, visit);
        if (cost.Late >= _counting.UnmetOf(visit)) return;
        _state.Put(visit, place);
        _open.Remove(visit);
    }

    private void Shake(SeededChance chance)
    {
        int seed = _broken[chance.Next(_broken.Count)];
        var taken = new List<int>();
        Take(seed, taken);
        for (int more = chance.Next(3); more > 0; more--) Take(Neighbour(seed, chance), taken);
        foreach (int visit in Shuffled(taken.Union(_open), chance)) Place(visit);
    }

    /// <summary>A visit of the day the seed is or was on, most often of a nurse who takes part already.</summary>
    private int Neighbour(int seed, SeededChance chance)
    {
        int at = _state.Standing.Nurse[seed] >= 0 ? _state.Standing.Start[seed] : _table.Visits[seed].Was.Start;
        int nurse = chance.Next(_table.Problem.Nurses.Length);
        int other = _broken[chance.Next(_broken.Count)];
        if (chance.Next(3) > 0 && _state.Standing.Nurse[other] >= 0) nurse = _state.Standing.Nurse[other];
        ReadOnlySpan<int> line = _state.Standing.On(_table.Line(nurse, CompiledWeek.DayOf(at)));
        return line.Length == 0 ? -1 : line[chance.Next(line.Length)];
    }

    private void Take(int visit, List<int> taken)
    {
        if (visit >= 0 && _state.Standing.MergedInto[visit] >= 0 && !taken.Contains(visit))
        {
            _state.Part(visit);
            _open.Add(visit);
            taken.Add(visit);
            return;
        }

        if (visit < 0 || _state.Standing.Nurse[visit] < 0 || _table.Visits[visit].Fixed || taken.Contains(visit)) return;
        if (_table.Visits[visit].Care.Length == 0 || (_table.Visits[visit].WasSecond >= 0 && !_broken.Contains(visit))) return;
        if (CompiledWeek.DayOf(_state.Standing.Start[visit]) < CompiledWeek.DayOf(_table.Problem.Now)) return;
        Open(visit);
        taken.Add(visit);
    }

    private static List<int> Shuffled(IEnumerable<int> visits, SeededChance chance)
    {
        List<int> order = [.. visits];
        for (int i = order.Count - 1; i > 0; i--)
        {
            int j = chance.Next(i + 1);
            (order[i], order[j]) = (order[j], order[i]);
        }

        return order;
    }

    private void Return()
    {
        _state.CopyFrom(_kept);
        _open.Clear();
        _open.AddRange(Enumerable.Range(0, _table.Visits.Length).Where(v => _kept.Standing.Nurse[v] < 0 && _kept.Standing.MergedInto[v] < 0));
    }
}
