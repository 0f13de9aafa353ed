using HomeLine.Planning.Checking;
using HomeLine.Planning.Plans;
using HomeLine.Planning.Problem;

namespace HomeLine.Planning.Bounding;

/// <summary>
/// Proves tier by tier what no plan can go below. A tier that the plan reaches is closed: from then on only what keeps it is looked at. The first three are first
/// compared with the sum of what each piece of care costs at best by itself; then, and for work, by column generation; the rest by an exact choice among all
/// nurse-days that a plan as good as this one could use.
/// </summary>
internal sealed class WeekBounding
{
    private readonly WeekProblem _problem;
    private readonly BoundOptions _options;
    private readonly BoundWeek _week;
    private readonly Rows _rows;
    private readonly DayGraph[] _graphs;
    private readonly TierBounding _bounding;
    private readonly PlanScore _planned;
    private readonly DayColumn[] _planColumns;
    private readonly long[][] _best;
    private readonly bool[] _byVisit = new bool[3];
    private readonly long?[] _limits = new long?[6];
    private readonly List<TierBound> _found = [];

    /// <exception cref="ArgumentException">The plan breaks a rule, or a visit that must stay lies where no nurse-day can have it.</exception>
    public WeekBounding(WeekProblem problem, WeekPlan plan, BoundOptions options)
    {
        CheckReport report = Checker.Check(problem, plan);
        if (!report.Accepted) throw new ArgumentException($"The plan breaks a rule: {report.Findings[0].Reason.Sentence}", nameof(plan));
        problem = LeastTravel.Of(problem);
        StayingVisits.Refuse(problem);
        (_problem, _options, _planned) = (problem, options, report.Score);
        _week = new BoundWeek(problem);
        _rows = new Rows(_week);
        _graphs = [.. _week.Days.Select(d => new DayGraph(problem, d, options.NearPatients))];
        _bounding = new TierBounding(_week, _rows, _graphs, options);
        _planColumns = [.. new PlannedColumns(_week).Of(plan)];
        _bounding.Columns.AddRange(_planColumns);
        _best = [.. _week.Units.Select(u => (long[])[.. u.Unmet])];
    }

    public WeekBound Of(CancellationToken cancel)
    {
        for (Tier tier = Tier.Critical; tier <= Tier.Work; tier++)
        {
            long planned = WeekBound.Amount(_planned, tier), least = tier < Tier.Work ? ByCareAlone(tier) : 0;
            if (tier < Tier.Work && least == planned)
            {
                _byVisit[(int)tier] = true;
                Close(tier, planned);
                continue;
            }

            _bounding.Minimise(tier, planned, _limits, IsOut, IsOut, cancel);
            if (!double.IsNegativeInfinity(_bounding.Proven)) least = Math.Max(least, RoundedUp(tier, _bounding.Proven));
            Refuse(tier, planned, least);
            if (tier == Tier.Work || least < planned) return WithTheRest(tier, least, cancel);
            Close(tier, planned);
            _limits[(int)tier] = planned;
        }

        return Result();
    }

    /// <exception cref="InvalidOperationException">A plan that keeps every rule lies below what was proven: rules and bound contradict each other.</exception>
    private static void Refuse(Tier tier, long planned, long least)
    {
        if (least > planned) throw new InvalidOperationException($"{tier}: a plan with {planned} keeps every rule, yet {least} was proven to be the least.");
    }

    private WeekBound Result() => new([.. _found], _bounding.Rounds, _bounding.Columns.Count);

    private void Close(Tier tier, long planned) => _found.Add(new TierBound(tier, planned, planned));

    /// <summary>Sum over the care of its least points anywhere in the visits that keep the tiers before.</summary>
    private long ByCareAlone(Tier tier)
    {
        var least = new long[_week.Units.Length];
        foreach (CareUnit unit in _week.Units) least[unit.Index] = UnmetIsOut(unit) ? long.MaxValue : unit.Unmet[(int)tier];
        foreach (VisitNode node in _week.Days.SelectMany(d => d.Nodes).Where(n => !n.IsSecond && !IsOut(n)))
        {
            for (int u = 0; u < node.Units.Length; u++)
                least[node.Units[u].Index] = Math.Min(least[node.Units[u].Index], node.UnitPoints[u][(int)tier]);
        }

        foreach (CareUnit unit in _week.Units) _best[unit.Index][(int)tier] = least[unit.Index];
        return least.Sum();
    }

    /// <summary>The visit costs more in a closed tier than its care does at best, so no plan as good as this one makes it.</summary>
    private bool IsOut(VisitNode node)
    {
        if (node.IsSecond || node.Stays) return false;
        for (int t = 0; t < _byVisit.Length; t++)
        {
            if (!_byVisit[t]) continue;
            for (int u = 0; u < node.Units.Length; u++)
            {
                if (node.UnitPoints[u][t] > _best[node.Units[u].Index][t]) return true;
            }
        }

        return false;
    }

    private bool IsOut(SideVariable side)
    {
        if (side.Unit >= 0) return UnmetIsOut(_week.Units[side.Unit]);
        for (int t = 0; t < _byVisit.Length; t++)
        {
            if (_byVisit[t] && side.Adds[t] > 0) return true;
        }

        return false;
    }

    private bool UnmetIsOut(CareUnit unit)
    {
        if (unit.Fixed is not null) return true;
        for (int t = 0; t < _byVisit.Length; t++)
        {
            if (_byVisit[t] && unit.Unmet[t] > _best[unit.Index][t]) return true;
        }

        return false;
    }

    /// <summary>Points of lateness come in steps: no plan has an amount between two of them.</summary>
    private long RoundedUp(Tier tier, double proven)
    {
        long step = tier switch
        {
            Tier.Critical => _problem.Tasks.Where(t => t.Critical).Aggregate(0L, (g, t) => Common(g, (long)_problem.Rules.CriticalStepPoints * t.Weight)),
            Tier.Risk => _problem.Tasks.Where(t => !t.Critical).Aggregate(0L, (g, t) => Common(g, (long)_problem.Rules.LateStepPoints * t.Weight)),
            _ => 1,
        };
        step = Math.Max(1, step);
        return (long)Math.Ceiling((proven - 1e-4) / step) * step;
    }

    private static long Common(long a, long b) => b == 0 ? a : Common(b, a % b);

    /// <summary>This tier, if it is still open, and all later ones: by listing all nurse-days within the gap and choosing exactly, where they are few enough.</summary>
    private WeekBound WithTheRest(Tier from, long least, CancellationToken cancel)
    {
        long planned = WeekBound.Amount(_planned, from);
        ColumnChoice? choice = double.IsNegativeInfinity(_bounding.Proven) || cancel.IsCancellationRequested ? null : Choice(from, planned - _bounding.Proven, cancel);
        for (Tier tier = from; tier <= Tier.UnusedLife; tier++)
        {
            planned = WeekBound.Amount(_planned, tier);
            if (tier > from) least = 0;
            if (choice is not null && least < planned) least = Math.Max(least, choice.Least(tier, cancel));
            Refuse(tier, planned, least);
            _found.Add(new TierBound(tier, planned, least));
            if (least < planned || choice is null) return Result();
            choice.Limit(tier, planned);
        }

        return Result();
    }

    private ColumnChoice? Choice(Tier from, double gap, CancellationToken cancel)
    {
        var columns = new List<DayColumn>();
        if (_options.Columns == 0) return null;
        foreach (DayGraph graph in _graphs)
        {
            if (cancel.IsCancellationRequested) return null;
            double[] price = TierBounding.Prices(graph, _bounding.RowPrice, _bounding.TierPrice, IsOut);
            double start = -_bounding.RowPrice[_rows.OfDay[graph.Day.Index]];
            if (new DayListing(_problem, graph, _options.Labels).All(price, _bounding.TierPrice[(int)Tier.Work], start, gap, _options.Columns - columns.Count) is not { } listed) return null;
            columns.AddRange(listed);
        }

        var choice = new ColumnChoice(_rows, columns, IsOut, _options.Effort);
        choice.Suggest(_planColumns);
        for (Tier tier = Tier.Critical; tier < from; tier++)
        {
            if (_limits[(int)tier] is { } most) choice.Limit(tier, most);
        }

        return choice;
    }
}
