namespace HomeLine.Planning.Bounding;

/// <summary>
/// What the rest of a nurse-day costs at least after a patient: the same shortest paths walked from the evening backwards, with breaks, waiting and overtime left aside.
/// </summary>
internal sealed class DayEndings
{
    private readonly DayGraph _graph;
    private readonly double[] _price;
    private readonly double _work;
    private readonly List<Ending>[] _after;
    private readonly int _mostLabels;
    private int _made;

    private sealed record Ending(int Patient, double Cost, int Latest, Seen Seen)
    {
        /// <summary>Another ending does everything at least as well.</summary>
        public bool Beaten { get; set; }
    }

    public DayEndings(DayGraph graph, double[] price, double work, int mostLabels)
    {
        (_graph, _price, _work, _mostLabels) = (graph, price, work, mostLabels);
        _after = [.. Enumerable.Range(0, graph.Patients).Select(_ => new List<Ending>())];
        Walk();
        foreach (List<Ending> list in _after) list.Sort((a, b) => (a.Cost, a.Latest).CompareTo((b.Cost, b.Latest)));
    }

    /// <summary>Whether every ending was looked at.</summary>
    public bool Complete => _made <= _mostLabels;

    /// <summary>Whether a day that leaves a patient at a minute, having seen others, can still end at or below a reduced cost.</summary>
    public bool MayEnd(int patient, int leave, in Seen seen, double most)
    {
        foreach (Ending ending in _after[patient])
        {
            if (ending.Cost > most) return false;
            if (ending.Latest >= leave && !ending.Seen.Has(seen)) return true;
        }

        return false;
    }

    private void Walk()
    {
        var queue = new PriorityQueue<Ending, (int, int)>();
        for (int p = 0; p < _graph.Patients; p++)
        {
            int road = _graph.Road(p, _graph.Home);
            Add(new Ending(p, _work * road, _graph.Day.Shift.OvertimeTo - road, default), queue);
        }

        while (queue.TryDequeue(out Ending? ending, out _) && Complete)
        {
            if (!ending.Beaten) Prepend(ending, queue);
        }
    }

    /// <summary>The patient the ending begins after is visited, coming from each other patient.</summary>
    private void Prepend(Ending ending, PriorityQueue<Ending, (int, int)> queue)
    {
        int patient = ending.Patient;
        Seen seen = ending.Seen.Kept(_graph.Near[patient]).With(_graph.Self[patient]);
        for (int node = _graph.FirstNode[patient]; node < _graph.FirstNode[patient + 1]; node++)
        {
            VisitNode visit = _graph.Nodes[node];
            int start = Math.Min(visit.To, ending.Latest - visit.Stay);
            if (double.IsPositiveInfinity(_price[node]) || start < visit.From) continue;
            for (int from = 0; from < _graph.Patients; from++)
            {
                if (from == patient || seen.Has(_graph.Self[from])) continue;
                int road = _graph.Road(from, patient);
                Add(new Ending(from, ending.Cost + _price[node] + (_work * road), start - road, seen), queue);
            }
        }
    }

    private void Add(Ending ending, PriorityQueue<Ending, (int, int)> queue)
    {
        if (ending.Latest < _graph.Day.Shift.From) return;
        List<Ending> same = _after[ending.Patient];
        foreach (Ending other in same)
        {
            if (Beats(other, ending)) return;
        }

        for (int i = same.Count - 1; i >= 0; i--)
        {
            if (!Beats(ending, same[i])) continue;
            same[i].Beaten = true;
            same.RemoveAt(i);
        }

        same.Add(ending);
        queue.Enqueue(ending, (-ending.Latest, _made++));
    }

    private static bool Beats(Ending a, Ending b) => a.Latest >= b.Latest && a.Cost <= b.Cost + 1e-9 && a.Seen.IsWithin(b.Seen);
}
