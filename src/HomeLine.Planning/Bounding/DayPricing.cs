using HomeLine.Planning.Problem;

namespace HomeLine.Planning.Bounding;

/// <summary>
/// Finds the nurse-days of least reduced cost: a shortest path with resources over the visits a nurse could make. Starts are free within each visit's times, so
/// waiting is what no later start of the day would save. Patients are remembered only near where the nurse stands (ng-sets, after Baldacci, Mingozzi and
/// Roberti 2011, from memory): paths may return to a patient far away, which makes the bound weaker and the search shorter. A partial day whose rest
/// (<see cref="DayTail"/>) cannot bring it below nothing is left out.
/// </summary>
internal sealed class DayPricing(PlanningRules rules, DayGraph graph, int mostLabels, DayTail tail)
{
    private const double Hair = 1e-7;

    private readonly Shift _shift = graph.Day.Shift;
    private readonly List<int>[] _at = [.. Enumerable.Range(0, 2 * graph.Patients).Select(_ => new List<int>())];
    private readonly int[] _bucket = new int[Math.Max(1, graph.Day.Shift.OvertimeTo - graph.Day.Shift.From + 2)];
    private Label[] _labels = new Label[1024];
    private int[] _next = new int[1024];
    private int _count;
    private double[] _price = [];
    private double _work, _load;
    private bool _onlyFast, _counts, _full;

    /// <summary>No nurse-day has less reduced cost, also where the search had to be cut short; 0 when none is worth making.</summary>
    public double Least { get; private set; }

    /// <summary>Searches, and returns the best nurse-days of negative reduced cost.</summary>
    /// <param name="price">By node: what the visit costs apart from the road.</param>
    /// <param name="work">Price of a minute of work.</param>
    /// <param name="load">Price of a point of load.</param>
    /// <param name="start">What the nurse-day costs before anything is done.</param>
    /// <param name="fast">Forget which patients were seen when comparing; finds columns quickly and proves nothing.</param>
    /// <param name="most">Most nurse-days to return.</param>
    public List<int[]> Search(double[] price, double work, double load, double start, bool fast, int most)
    {
        (_price, _work, _load, _onlyFast, _count) = (price, work, load, fast, 0);
        _counts = graph.Day.MostVisits < graph.Patients;
        foreach (List<int> list in _at) list.Clear();
        Array.Fill(_bucket, -1);
        tail.Fill(graph, price, work);
        Least = Math.Min(0, start + tail.Whole);
        if (Least >= -Hair) return [];
        double least = 0;
        _full = false;
        var ends = new List<(double Cost, int Label)>();
        Begin(start);
        for (int minute = 0; minute < _bucket.Length && !_full; minute++)
        {
            for (int label = _bucket[minute]; label >= 0; label = _next[label])
            {
                if (_labels[label].Dead) continue;
                if (_labels[label].Node >= 0)
                {
                    double cost = HomeFrom(label);
                    if (cost < -Hair) ends.Add((cost, label));
                    least = Math.Min(least, cost);
                }

                if (_labels[label].Visits < graph.Day.MostVisits) Extend(label);
            }
        }

        if (!fast && !_full) Least = Math.Max(Least, least);
        return [.. ends.OrderBy(e => e.Cost).ThenBy(e => e.Label).Take(most).Select(e => Path(e.Label))];
    }

    private void Begin(double start)
    {
        int home = Math.Max(_shift.From, _shift.LunchFrom + _shift.LunchMinutes);
        bool lunch = _shift.LunchMinutes > 0;
        Add(new Label { Cost = start, Node = -1, Parent = -1, Leave = _shift.From, Calm = int.MaxValue / 2, Rested = !lunch });
        if (lunch) Add(new Label { Cost = start, Node = -1, Parent = -1, Leave = home, Calm = int.MaxValue / 2, Rested = true });
    }

    private void Extend(int label)
    {
        int here = _labels[label].Node < 0 ? graph.Home : graph.PatientOf[_labels[label].Node];
        for (int patient = 0; patient < graph.Patients; patient++)
        {
            if (patient == here || _labels[label].Seen.Has(graph.Self[patient])) continue;
            int road = graph.Road(here, patient);
            for (int node = graph.FirstNode[patient]; node < graph.FirstNode[patient + 1]; node++)
            {
                if (double.IsPositiveInfinity(_price[node])) continue;
                Step(label, node, road, pause: false);
                if (!_labels[label].Rested && _labels[label].Node >= 0 && _labels[label].Leave <= _shift.LunchTo) Step(label, node, road, pause: true);
            }
        }
    }

    /// <summary>One visit more, with the break before it or not.</summary>
    private void Step(int label, int node, int road, bool pause)
    {
        ref Label from = ref _labels[label];
        VisitNode visit = graph.Nodes[node];
        if (!Arrive(from, visit, road, pause, out int start, out int calm, out int waited)) return;
        int patient = graph.PatientOf[node];
        Add(new Label
        {
            Cost = from.Cost + _price[node] + (_work * (road + waited)),
            Seen = from.Seen.Kept(graph.Near[patient]).With(graph.Self[patient]),
            Node = node,
            Parent = label,
            Leave = start + visit.Stay,
            Calm = calm + visit.Stay,
            Busy = from.Busy + road + visit.Stay,
            Road = from.Road + road + waited,
            Visits = (short)(from.Visits + 1),
            Rested = from.Rested || pause,
        });
    }

    /// <summary>Earliest and latest calm start of the next visit; false when it is too late.</summary>
    private bool Arrive(in Label from, VisitNode visit, int road, bool pause, out int start, out int calm, out int waited)
    {
        int first = visit.From, latest = from.Calm;
        start = from.Leave + road;
        if (pause)
        {
            start += _shift.LunchMinutes;
            first = Math.Max(first, _shift.LunchFrom + _shift.LunchMinutes);
            latest = Math.Min(latest, _shift.LunchTo) + _shift.LunchMinutes;
        }

        start = Math.Max(start, first);
        calm = Math.Min(latest + road, visit.To);
        waited = Math.Max(0, start - calm);
        calm = Math.Max(calm, start);
        return start <= visit.To;
    }

    /// <summary>Reduced cost of the day when she goes home now; infinite when she cannot.</summary>
    private double HomeFrom(int label)
    {
        ref readonly Label from = ref _labels[label];
        int road = graph.Road(graph.PatientOf[from.Node], graph.Home), back = from.Leave + road;
        if (!from.Rested && back > _shift.LunchTo)
        {
            if (from.Leave > _shift.LunchTo) return double.PositiveInfinity;
            back += _shift.LunchMinutes;
        }

        if (back > _shift.OvertimeTo) return double.PositiveInfinity;
        long busy = from.Busy + road, overtime = Math.Max(0, back - _shift.To);
        return from.Cost + (_work * (road + (rules.OvertimeFactor * overtime))) + (_load * (busy * busy / rules.Soft.LoadDivisor));
    }

    private void Add(in Label label)
    {
        if (label.Leave >= _shift.From + _bucket.Length || _full) return;
        if (label.Node >= 0 && (label.Cost + Rest(label) >= -Hair || IsBeaten(label))) return;
        if (_count >= mostLabels)
        {
            _full = true;
            return;
        }

        if (_count == _labels.Length)
        {
            Array.Resize(ref _labels, 2 * _count);
            Array.Resize(ref _next, 2 * _count);
        }

        int minute = label.Leave - _shift.From;
        _labels[_count] = label;
        _next[_count] = _bucket[minute];
        _bucket[minute] = _count;
        if (label.Node >= 0) _at[(2 * graph.PatientOf[label.Node]) + (label.Rested ? 1 : 0)].Add(_count);
        _count++;
    }

    /// <summary>What the rest of the day costs at least; she does not go straight back to a patient remembered.</summary>
    private double Rest(in Label label)
    {
        int before = label.Parent < 0 || _labels[label.Parent].Node < 0 ? -1 : graph.PatientOf[_labels[label.Parent].Node];
        return tail.After(graph.PatientOf[label.Node], label.Leave, before >= 0 && label.Seen.Has(graph.Self[before]) ? before : -1);
    }

    /// <summary>Whether a label at the same home does everything at least as well; those the new one beats are struck out.</summary>
    private bool IsBeaten(in Label label)
    {
        int place = 2 * graph.PatientOf[label.Node];
        if (!label.Rested)
        {
            // One that has had its break may do whatever one that has not may, but for waiting that the break would fill.
            foreach (int other in _at[place + 1])
            {
                if (Beats(_labels[other], label, _work * _shift.LunchMinutes)) return true;
            }
        }

        List<int> same = _at[place + (label.Rested ? 1 : 0)];
        int kept = 0;
        for (int i = 0; i < same.Count; i++)
        {
            if (Beats(_labels[same[i]], label, 0)) return true;
        }

        for (int i = 0; i < same.Count; i++)
        {
            if (Beats(label, _labels[same[i]], 0)) _labels[same[i]].Dead = true;
            else same[kept++] = same[i];
        }

        same.RemoveRange(kept, same.Count - kept);
        return false;
    }

    private bool Beats(in Label a, in Label b, double penalty) =>
        a.Leave <= b.Leave
        && a.Cost + penalty + (_work * Math.Max(0, b.Calm - a.Calm)) <= b.Cost + 1e-9
        && (_load == 0 || a.Busy <= b.Busy)
        && (!_counts || a.Visits <= b.Visits)
        && (_onlyFast || a.Seen.IsWithin(b.Seen));

    private int[] Path(int label)
    {
        var path = new List<int>();
        for (; label >= 0 && _labels[label].Node >= 0; label = _labels[label].Parent) path.Add(_labels[label].Node);
        path.Reverse();
        return [.. path];
    }
}
