using HomeLine.Planning.Checking.Scoring;
using HomeLine.Planning.Problem;

namespace HomeLine.Planning.Bounding;

/// <summary>A variable of the master problem that is not a nurse-day: care left out, visits beyond the orders, a pair of days of a chain, a face.</summary>
/// <param name="Terms">Rows and how often it counts there.</param>
/// <param name="Adds">By <see cref="Tier"/>: what it adds.</param>
/// <param name="Most">Its largest value.</param>
/// <param name="Unit">The care it leaves out, or -1.</param>
internal sealed record SideVariable((int Row, int Times)[] Terms, long[] Adds, int Most, int Unit = -1);

/// <summary>
/// What every plan keeps, as rows over nurse-days and side variables: care once or unmet, a nurse-day once, one visit a patient a day, orders, days of a chain,
/// two people, faces. Makes the rows and tells each visit in which it counts.
/// </summary>
internal sealed class Rows
{
    private readonly BoundWeek _week;
    private readonly List<(int Least, int Most)> _bounds = [];
    private readonly HashSet<int> _ofPeople = [];
    private readonly Dictionary<(int Unit, int Day), List<int>> _onDay = [];
    private readonly Dictionary<int, int> _stayingSecond = [];

    public Rows(BoundWeek week)
    {
        _week = week;
        Cover = [.. week.Units.Select(_ => Row(1, 1))];
        OfDay = [.. week.Days.Select(_ => Row(0, 1))];
        List<(int, int)>[] unmet = [.. week.Units.Select(u => new List<(int, int)> { (Cover[u.Index], 1) })];
        Chains(unmet);
        foreach (CareUnit unit in week.Units)
            Sides.Add(new SideVariable([.. unmet[unit.Index]], [.. unit.Unmet, 0, 0, 0], 1, unit.Index));
        Doors();
        Orders();
        Caps();
        Faces();
        foreach (NurseDay day in week.Days)
            foreach (VisitNode node in day.Nodes) Care(day, node);
    }

    /// <summary>By row: the least and the most its sum may be.</summary>
    public IReadOnlyList<(int Least, int Most)> Bounds => _bounds;

    /// <summary>By nurse-day: its row.</summary>
    public int[] OfDay { get; }

    public List<SideVariable> Sides { get; } = [];

    /// <summary>By care: the row that it is done once or unmet.</summary>
    public int[] Cover { get; }

    /// <summary>Rows that matter to the people tier alone.</summary>
    public bool OnlyPeople(int row) => _ofPeople.Contains(row);

    private int Row(int least, int most)
    {
        _bounds.Add((least, most));
        return _bounds.Count - 1;
    }

    private void Care(NurseDay day, VisitNode node)
    {
        if (node.IsSecond && node.Stays) node.Rows.Add((StayingSecond(node.Units[0]), 1));
        foreach (CareUnit unit in node.Units)
        {
            if (!node.IsSecond) node.Rows.Add((Cover[unit.Index], 1));
            if (!node.IsSecond && _onDay.TryGetValue((unit.Index, day.Shift.Day), out List<int>? rows)) node.Rows.AddRange(rows.Select(r => (r, 1)));
        }
    }

    /// <summary>Whoever goes along on a visit that must stay goes along in every plan.</summary>
    private int StayingSecond(CareUnit unit) => _stayingSecond.TryGetValue(unit.Index, out int row) ? row : _stayingSecond[unit.Index] = Row(1, 1);

    /// <summary>For each link of a chain a pair of days, "not at all" among them; pairs too close together do not exist.</summary>
    private void Chains(List<(int, int)>[] unmet)
    {
        foreach (CareTask task in _week.Problem.Tasks)
        {
            if (task.After is not { } before || !_week.UnitOfTask.TryGetValue(before, out int first)) continue;
            int then = _week.UnitOfTask[task.Id], days = _week.Problem.DayCount;
            if (first == then || (task.MinGap <= 0 && task.MaxGap == int.MaxValue)) continue;
            int[] firstRows = [.. Enumerable.Range(0, days + 1).Select(_ => Row(0, 0))], thenRows = [.. Enumerable.Range(0, days + 1).Select(_ => Row(0, 0))];
            for (int d = 0; d < days; d++)
            {
                On(first, d).Add(firstRows[d]);
                On(then, d).Add(thenRows[d]);
            }

            unmet[first].Add((firstRows[days], 1));
            unmet[then].Add((thenRows[days], 1));
            for (int a = 0; a <= days; a++)
            {
                for (int b = 0; b <= days; b++)
                {
                    if (a < days && b < days && !FarEnough(task, a, b)) continue;
                    long[] adds = new long[6];
                    if (a < days && b < days) adds[task.Critical ? 0 : 1] = Later(task, a, b);
                    Sides.Add(new SideVariable([(firstRows[a], -1), (thenRows[b], -1)], adds, 1));
                }
            }
        }
    }

    private List<int> On(int unit, int day) => _onDay.TryGetValue((unit, day), out List<int>? rows) ? rows : _onDay[(unit, day)] = [];

    private static bool FarEnough(CareTask task, int a, int b) => ((b - a) * 1440L) + (task.GapInDays ? 0 : 1439) >= task.MinGap;

    /// <summary>Least points the chain adds when its times lie on these days.</summary>
    private long Later(CareTask task, int a, int b)
    {
        if (task.MaxGap == int.MaxValue) return 0;
        long byChain = task.GapInDays ? (a + (task.MaxGap / 1440) + 1) * 1440L : ((a + 1) * 1440L) + task.MaxGap, first = b * 1440L;
        PlanningRules rules = _week.Problem.Rules;
        return Math.Max(0, LatePoints.Done(rules, task, first, Math.Min(task.LateFrom, byChain)) - LatePoints.Done(rules, task, first + 1439, task.LateFrom));
    }

    /// <summary>One visit a patient a day, and as many second people as two-person visits, by care. Visits that must stay keep the people they have.</summary>
    private void Doors()
    {
        foreach (var door in _week.Days.SelectMany(d => d.Nodes, (d, n) => (Day: d, Node: n)).GroupBy(p => (p.Node.Patient, p.Day.Shift.Day)))
        {
            if (door.Select(p => p.Day.Index).Distinct().Skip(1).Any())
            {
                int row = Row(0, 1);
                foreach ((_, VisitNode node) in door.Where(p => !p.Node.IsSecond)) node.Rows.Add((row, 1));
            }

            if (_week.Problem.Patients[door.Key.Patient].CrewSize < 2) continue;
            var free = door.Where(p => !p.Node.Stays).ToArray();
            foreach (int there in free.Select(p => p.Day.Index).Distinct())
            {
                // Whoever comes, in whichever part, comes to a visit that is made: otherwise one nurse could be half of either person.
                int row = Row(int.MinValue, 0);
                foreach ((NurseDay day, VisitNode node) in free)
                {
                    int times = (day.Index == there ? 1 : 0) - (node.IsSecond ? 0 : 1);
                    if (times != 0) node.Rows.Add((row, times));
                }
            }

            foreach (int unit in free.SelectMany(p => p.Node.Units).Select(u => u.Index).Distinct().Order())
            {
                int row = Row(0, 0);
                foreach ((_, VisitNode node) in free.Where(p => p.Node.Units.Any(u => u.Index == unit))) node.Rows.Add((row, node.IsSecond ? 1 : -1));
            }
        }
    }

    private void Orders()
    {
        for (int p = 0; p < _week.Problem.Patients.Length; p++)
        {
            foreach (WeekAllowance allowance in _week.Problem.Patients[p].Allowances)
            {
                if (allowance.Visits > allowance.LastDay - allowance.FirstDay) continue;
                int row = Row(int.MinValue, allowance.Visits);
                Sides.Add(new SideVariable([(row, -1)], [0, 0, _week.Problem.Rules.AllowanceExceededPoints, 0, 0, 0], _week.Problem.DayCount));
                foreach (NurseDay day in _week.Days.Where(d => d.Shift.Day >= allowance.FirstDay && d.Shift.Day <= allowance.LastDay))
                {
                    foreach (VisitNode node in day.Nodes)
                    {
                        if (node.Patient == p && !node.IsSecond && node.Units.Any(u => u.CountsForOrders)) node.Rows.Add((row, 1));
                    }
                }
            }
        }
    }

    /// <summary>Visits of a kind a nurse makes in a day or seven. Where those that must stay are more already, nothing is added to them.</summary>
    private void Caps()
    {
        foreach (var days in _week.Days.GroupBy(d => d.Nurse))
        {
            foreach (VisitCap cap in _week.Problem.Nurses[days.Key].Caps)
            {
                foreach (var stretch in days.GroupBy(d => cap.Stretch(d.Shift.Day)))
                {
                    VisitNode[] ofKind = [.. stretch.SelectMany(d => d.Nodes).Where(n => !n.IsSecond && n.Units.Any(u => u.IsOf(cap.Kind)))];
                    int stay = ofKind.Count(n => n.Stays);
                    if (ofKind.Length == stay) continue;
                    int row = Row(int.MinValue, Math.Max(cap.Most, stay));
                    foreach (VisitNode node in ofKind) node.Rows.Add((row, 1));
                }
            }
        }
    }

    /// <summary>Each nurse beyond the first whom a patient sees.</summary>
    private void Faces()
    {
        int price = _week.Problem.Rules.Soft.ExtraFace;
        foreach (var patient in _week.Days.SelectMany(d => d.Nodes.Where(n => !n.IsSecond), (d, n) => (Day: d, Node: n)).GroupBy(p => p.Node.Patient))
        {
            int seen = PeopleRow(int.MinValue, 0);
            Sides.Add(new SideVariable([(seen, 1)], [0, 0, 0, 0, -price, 0], 1));
            foreach (var nurse in patient.GroupBy(p => p.Day.Nurse))
            {
                var terms = new List<(int, int)> { (seen, -1) };
                foreach (var day in nurse.GroupBy(p => p.Day.Index))
                {
                    int row = PeopleRow(int.MinValue, 0);
                    terms.Add((row, -1));
                    foreach ((_, VisitNode node) in day) node.Rows.Add((row, 1));
                }

                Sides.Add(new SideVariable([.. terms], [0, 0, 0, 0, price, 0], 1));
            }
        }
    }

    private int PeopleRow(int least, int most)
    {
        int row = Row(least, most);
        _ofPeople.Add(row);
        return row;
    }
}
