using HomeLine.Planning.Problem;

namespace HomeLine.Planning.Bounding;

/// <summary>
/// Lists every nurse-day whose reduced cost is at most a gap. A plan at least as good as the one at hand is made of these alone. Of nurse-days with the same care and
/// points only those are kept that none beats in work and load.
/// </summary>
internal sealed class DayListing(WeekProblem problem, DayGraph graph, int mostLabels)
{
    private const double Hair = 1e-6;

    private readonly PlanningRules _rules = problem.Rules;
    private readonly Shift _shift = graph.Day.Shift;
    private readonly List<Begun> _begun = [];
    private readonly Dictionary<(ulong Care, int Patient, bool Rested), List<int>> _same = [];
    private readonly Dictionary<ulong, List<DayColumn>> _columns = [];
    private readonly ulong[] _care = Keys(graph);
    private double[] _price = [];
    private double _work;
    private DayEndings? _endings;

    private sealed record Begun(double Cost, Seen Seen, int Node, int Parent, int Leave, int Calm, int Busy, int Road, int Visits, bool Rested, ulong Care);

    /// <summary>The nurse-days, or nothing when there are too many.</summary>
    public List<DayColumn>? All(double[] price, double work, double start, double gap, int mostColumns)
    {
        (_price, _work) = (price, work);
        if (graph.Patients > 256) return null;
        _endings = new DayEndings(graph, price, work, mostLabels);
        if (!_endings.Complete) return null;
        Add(new Begun(start, default, -1, -1, _shift.From, int.MaxValue / 2, 0, 0, 0, _shift.LunchMinutes == 0, 0), gap);
        if (_shift.LunchMinutes > 0)
            Add(new Begun(start, default, -1, -1, Math.Max(_shift.From, _shift.LunchFrom + _shift.LunchMinutes), int.MaxValue / 2, 0, 0, 0, true, 0), gap);
        int count = 0;
        for (int i = 0; i < _begun.Count; i++)
        {
            if (_begun.Count > mostLabels || count > mostColumns) return null;
            Begun begun = _begun[i];
            if (begun.Node >= 0 && HomeFrom(begun) <= gap + Hair) count += Keep(i);
            if (begun.Visits < graph.Day.MostVisits) Extend(i, gap);
        }

        return [.. _columns.OrderBy(c => c.Key).SelectMany(c => c.Value)];
    }

    private void Extend(int index, double gap)
    {
        Begun from = _begun[index];
        int here = from.Node < 0 ? graph.Home : graph.PatientOf[from.Node];
        for (int node = 0; node < graph.Nodes.Length; node++)
        {
            int patient = graph.PatientOf[node];
            if (double.IsPositiveInfinity(_price[node]) || from.Seen.Has(graph.Self[patient])) continue;
            int road = graph.Road(here, patient);
            Step(index, from, node, road, false, gap);
            if (!from.Rested && from.Node >= 0 && from.Leave <= _shift.LunchTo) Step(index, from, node, road, true, gap);
        }
    }

    private void Step(int index, Begun from, int node, int road, bool pause, double gap)
    {
        VisitNode visit = graph.Nodes[node];
        int leave = from.Leave, latest = from.Calm, first = visit.From;
        if (pause) (leave, latest, first) = (leave + _shift.LunchMinutes, Math.Min(latest, _shift.LunchTo) + _shift.LunchMinutes, Math.Max(first, _shift.LunchFrom + _shift.LunchMinutes));
        int start = Math.Max(leave + road, first), calm = Math.Min(latest + road, visit.To);
        if (start > visit.To) return;
        int waited = Math.Max(0, start - calm), patient = graph.PatientOf[node];
        Add(
            new Begun(
                from.Cost + _price[node] + (_work * (road + waited)),
                from.Seen.With(graph.Self[patient]),
                node,
                index,
                start + visit.Stay,
                Math.Max(calm, start) + visit.Stay,
                from.Busy + road + visit.Stay,
                from.Road + road + waited,
                from.Visits + 1,
                from.Rested || pause,
                from.Care ^ _care[node]),
            gap);
    }

    private void Add(Begun begun, double gap)
    {
        if (begun.Node >= 0)
        {
            if (!_endings!.MayEnd(graph.PatientOf[begun.Node], begun.Leave, begun.Seen, gap + Hair - begun.Cost)) return;
            var key = (begun.Care, graph.PatientOf[begun.Node], begun.Rested);
            if (!_same.TryGetValue(key, out List<int>? same)) _same[key] = same = [];
            foreach (int other in same)
            {
                if (Beats(_begun[other], begun)) return;
            }

            same.Add(_begun.Count);
        }

        _begun.Add(begun);
    }

    /// <summary>With the same care and points: as little on the road and no more waiting later, whatever work costs.</summary>
    private static bool Beats(Begun a, Begun b) => a.Leave <= b.Leave && a.Busy <= b.Busy && a.Road + Math.Max(0, b.Calm - a.Calm) <= b.Road;

    private double HomeFrom(Begun from)
    {
        int road = graph.Road(graph.PatientOf[from.Node], graph.Home), back = from.Leave + road;
        if (!from.Rested && back > _shift.LunchTo)
        {
            if (from.Leave > _shift.LunchTo) return double.PositiveInfinity;
            back += _shift.LunchMinutes;
        }

        if (back > _shift.OvertimeTo) return double.PositiveInfinity;
        return from.Cost + (_work * (road + (_rules.OvertimeFactor * (double)Math.Max(0, back - _shift.To))));
    }

    private int Keep(int index)
    {
        var nodes = new List<VisitNode>();
        for (int i = index; _begun[i].Node >= 0; i = _begun[i].Parent) nodes.Add(graph.Nodes[_begun[i].Node]);
        nodes.Reverse();
        if (new DayCost(problem).Of(graph.Day, [.. nodes]) is not { } column) return 0;
        ulong care = _begun[index].Care;
        if (!_columns.TryGetValue(care, out List<DayColumn>? same)) _columns[care] = same = [];
        if (same.Any(c => NoWorse(c, column))) return 0;
        int before = same.Count;
        same.RemoveAll(c => NoWorse(column, c));
        same.Add(column);
        return same.Count - before;
    }

    private static bool NoWorse(DayColumn a, DayColumn b) => a.Adds[(int)Tier.Work] <= b.Adds[(int)Tier.Work] && a.Adds[(int)Tier.People] <= b.Adds[(int)Tier.People];

    /// <summary>By node: a key of its care and points. Two nodes with the same care and other starts, but the same points, share it.</summary>
    private static ulong[] Keys(DayGraph graph) =>
    [
        .. graph.Nodes.Select(n => Mixed(((ulong)n.Bundle << 24) ^ n.UnitPoints.SelectMany(p => p).Aggregate(17UL, (h, p) => Mixed(h ^ (ulong)p)))),
    ];

    private static ulong Mixed(ulong z)
    {
        z += 0x9E3779B97F4A7C15UL;
        z = (z ^ (z >> 30)) * 0xBF58476D1CE4E5B9UL;
        z = (z ^ (z >> 27)) * 0x94D049BB133111EBUL;
        return z ^ (z >> 31);
    }
}
