using System.Numerics;
using HomeLine.Planning.Problem;

namespace HomeLine.Planning.Bounding;

/// <summary>
/// What the rest of a nurse-day costs at least, by where she is and when: every way to go on, patients seen before forgotten but for the last one (paths without
/// cycles of two), times rounded down to a grid, break and waiting left aside. Each of that makes it cheaper, never dearer, and roads and prices count exactly. So a partial day
/// that this cannot bring below a reduced cost need not be looked at, and it bounds the whole day where a search for the day had to be cut short.
/// </summary>
internal sealed class DayTail(PlanningRules rules)
{
    /// <summary>Minutes of a step of the grid.</summary>
    private const int Grid = 4;

    private const double Home = -1, Nobody = -2;

    private static readonly int Lanes = Vector<double>.Count;

    private DayGraph _graph = null!;
    private double[] _price = [];
    private double _work;
    private int _steps, _stride;

    // After leaving a patient: the cheapest way on, whom it goes to first, and the cheapest that goes to somebody else first.
    private double[] _on = [], _onTo = [], _on2 = [], _on2To = [];

    // The same from arriving at a patient; whom it goes to first after her.
    private double[] _at = [], _atTo = [], _at2 = [], _at2To = [];

    /// <summary>Least cost of a whole day from leaving home, what it costs before anything is done left aside; 0 for staying at home.</summary>
    public double Whole { get; private set; }

    /// <summary>Least cost of the rest of the day after leaving a patient at a minute.</summary>
    /// <param name="patient">The patient, as numbered in the graph.</param>
    /// <param name="leave">The minute, inside the shift.</param>
    /// <param name="notTo">A patient who is not visited next; -1 for none.</param>
    public double After(int patient, int leave, int notTo)
    {
        int i = (patient * _stride) + ((leave - _graph.Day.Shift.From) / Grid);
        return notTo >= 0 && _onTo[i] == notTo ? _on2[i] : _on[i];
    }

    /// <summary>The visits of the day that <see cref="Whole"/> stands for; none for staying at home. It may come back to a patient.</summary>
    public List<int> Path()
    {
        var path = new List<int>();
        int patient = -1, before = -1, step = 0;
        double least = 0;
        for (int p = 0; p < _graph.Patients; p++)
        {
            int road = _graph.Road(_graph.Home, p), arrive = road / Grid;
            if (arrive >= _steps || (_work * road) + _at[(p * _stride) + arrive] >= least) continue;
            (patient, step, least) = (p, arrive, (_work * road) + _at[(p * _stride) + arrive]);
        }

        while (patient >= 0)
        {
            (int node, int leave, int next) = Cheapest(patient, step, before);
            if (node < 0) break;
            path.Add(node);
            if (next >= 0) step = leave + (_graph.Road(patient, next) / Grid);
            (before, patient) = (patient, next);
        }

        return path;
    }

    private (int Node, int Leave, int Next) Cheapest(int patient, int step, int before)
    {
        int row = patient * _stride, from = _graph.Day.Shift.From;
        var best = (Node: -1, Leave: 0, Next: -1);
        double least = double.PositiveInfinity;
        for (int node = _graph.FirstNode[patient]; node < _graph.FirstNode[patient + 1]; node++)
        {
            VisitNode visit = _graph.Nodes[node];
            int arrival = from + (step * Grid), leave = (Math.Max(arrival, visit.From) + visit.Stay - from) / Grid;
            if (arrival > visit.To || leave >= _steps) continue;
            bool around = before >= 0 && _onTo[row + leave] == before;
            double cost = _price[node] + (around ? _on2[row + leave] : _on[row + leave]);
            if (cost >= least) continue;
            least = cost;
            best = (node, leave, (int)(around ? _on2To[row + leave] : _onTo[row + leave]));
        }

        return best;
    }

    /// <summary>Works it out for a nurse-day at given prices.</summary>
    public void Fill(DayGraph graph, double[] price, double work)
    {
        (_graph, _price, _work) = (graph, price, work);
        Shift shift = graph.Day.Shift;
        _steps = ((shift.OvertimeTo - shift.From) / Grid) + 1;
        int stay = Reserve();
        if (stay / Grid < 1)
        {
            // Visits shorter than a step, or none at all: no bound, or nothing to do.
            Array.Fill(_on, double.NegativeInfinity);
            Whole = stay == int.MaxValue ? 0 : double.NegativeInfinity;
            return;
        }

        int block = Math.Min(stay / Grid, _steps);
        for (int last = _steps - 1; last >= 0; last -= block)
        {
            int first = Math.Max(0, last - block + 1);
            for (int p = 0; p < graph.Patients; p++) Arrive(p, first, last);
            for (int p = 0; p < graph.Patients; p++) Leave(p, first, last);
        }

        Whole = 0;
        for (int p = 0; p < graph.Patients; p++)
        {
            int road = graph.Road(graph.Home, p), step = road / Grid;
            if (step < _steps) Whole = Math.Min(Whole, (_work * road) + _at[(p * _stride) + step]);
        }
    }

    /// <summary>Makes room; returns the shortest stay of any visit, the largest number when there is none.</summary>
    private int Reserve()
    {
        int stay = int.MaxValue, furthest = 0;
        for (int n = 0; n < _graph.Nodes.Length; n++)
        {
            if (!double.IsPositiveInfinity(_price[n])) stay = Math.Min(stay, _graph.Nodes[n].Stay);
        }

        for (int a = 0; a < _graph.Patients; a++)
            for (int b = 0; b < _graph.Patients; b++) furthest = Math.Max(furthest, _graph.Road(a, b));
        _stride = _steps + (furthest / Grid) + (2 * Lanes);
        int size = Math.Max(1, _graph.Patients) * _stride;
        if (_on.Length < size) (_on, _onTo, _on2, _on2To, _at, _atTo, _at2, _at2To) = (new double[size], new double[size], new double[size], new double[size], new double[size], new double[size], new double[size], new double[size]);
        Array.Fill(_at, double.PositiveInfinity, 0, size);
        Array.Fill(_at2, double.PositiveInfinity, 0, size);
        Array.Fill(_atTo, Nobody, 0, size);
        Array.Fill(_at2To, Nobody, 0, size);
        Array.Fill(_on, double.PositiveInfinity, 0, size);
        Array.Fill(_on2, double.PositiveInfinity, 0, size);
        return stay;
    }

    /// <summary>A patient's visits begin at their first minute at or after each arrival: leaving later never costs less here.</summary>
    private void Arrive(int patient, int first, int last)
    {
        int row = patient * _stride, from = _graph.Day.Shift.From;
        for (int node = _graph.FirstNode[patient]; node < _graph.FirstNode[patient + 1]; node++)
        {
            double price = _price[node];
            if (double.IsPositiveInfinity(price)) continue;
            VisitNode visit = _graph.Nodes[node];
            for (int step = first; step <= last; step++)
            {
                int arrival = from + (step * Grid);
                if (arrival > visit.To) break;
                int leave = (Math.Max(arrival, visit.From) + visit.Stay - from) / Grid;
                if (leave >= _steps) break;
                Offer(row + step, price + _on[row + leave], _onTo[row + leave]);
                Offer(row + step, price + _on2[row + leave], _on2To[row + leave]);
            }
        }
    }

    private void Offer(int i, double cost, double to)
    {
        if (cost < _at[i])
        {
            if (to != _atTo[i]) (_at2[i], _at2To[i]) = (_at[i], _atTo[i]);
            (_at[i], _atTo[i]) = (cost, to);
        }
        else if (to != _atTo[i] && cost < _at2[i]) (_at2[i], _at2To[i]) = (cost, to);
    }

    private void Leave(int patient, int first, int last)
    {
        int row = patient * _stride, home = _graph.Road(patient, _graph.Home);
        Shift shift = _graph.Day.Shift;
        Span<double> back = stackalloc double[Lanes];
        var self = new Vector<double>(patient);
        for (int step = first; step <= last; step += Lanes)
        {
            for (int i = 0; i < Lanes; i++)
            {
                int then = shift.From + ((step + i) * Grid) + home;
                back[i] = then > shift.OvertimeTo ? double.PositiveInfinity : _work * (home + (rules.OvertimeFactor * Math.Max(0, then - shift.To)));
            }

            var one = new Vector<double>(back);
            Vector<double> to = new(Home), two = new(double.PositiveInfinity), twoTo = new(Nobody);
            for (int next = 0; next < _graph.Patients; next++)
            {
                if (next == patient) continue;
                int road = _graph.Road(patient, next), at = (next * _stride) + step + (road / Grid);
                Vector<double> straight = new(_at, at), around = new(_at2, at), then = new(_atTo, at), who = new(next);
                Vector<double> cost = Vector.ConditionalSelect(Vector.Equals(then, self), around, straight) + new Vector<double>(_work * road);
                Vector<long> better = Vector.LessThan(cost, one), second = Vector.LessThan(cost, two);
                two = Vector.ConditionalSelect(better, one, Vector.ConditionalSelect(second, cost, two));
                twoTo = Vector.ConditionalSelect(better, to, Vector.ConditionalSelect(second, who, twoTo));
                one = Vector.ConditionalSelect(better, cost, one);
                to = Vector.ConditionalSelect(better, who, to);
            }

            one.CopyTo(_on, row + step);
            to.CopyTo(_onTo, row + step);
            two.CopyTo(_on2, row + step);
            twoTo.CopyTo(_on2To, row + step);
        }
    }
}
