using HomeLine.Planning.Problem;
using HomeLine.Planning.Standing;

namespace HomeLine.Planning.Answers;

/// <summary>What every answer costs alike: the new visit, the replaced visits, and the driving their absence saves.</summary>
internal sealed class StandingPrice
{
    private readonly UrgentCase _urgent;
    private readonly int[] _savedOnDay;
    private readonly int[] _nurses;
    private readonly int _replaced;

    public StandingPrice(UrgentCase urgent, PushTrial trial)
    {
        _urgent = urgent;
        StandingTable table = urgent.Table;
        DisruptionPoints points = table.Problem.Rules.Disruption;
        _savedOnDay = new int[table.Days];
        _replaced = points.NewVisit + urgent.Replaced.Sum(v => DisruptionPrice.Replaced(points, table.Visits[v].Was));
        _nurses = [.. urgent.Replaced.SelectMany(v => new[] { table.Visits[v].WasNurse, table.Visits[v].WasSecond }).Where(n => n >= 0).Distinct()];
        foreach (int line in Lines())
            _savedOnDay[table.DayOf(line) - table.FirstDay] += trial.Driving(table.Base, line) - trial.Driving(urgent.Staying, line);
    }

    /// <summary>Nurse-days that lose a replaced visit.</summary>
    public IEnumerable<int> Lines() => _urgent.Replaced
        .SelectMany(v => new[] { _urgent.Table.Visits[v].WasNurse, _urgent.Table.Visits[v].WasSecond }.Where(n => n >= 0)
            .Select(n => _urgent.Table.Line(n, Search.CompiledWeek.DayOf(_urgent.Table.Visits[v].Was.Start))))
        .Distinct();

    /// <summary>Points of an answer by what visits that were there cost and whose days change.</summary>
    public int Disruption(int ofOthers, params ReadOnlySpan<int> nurses)
    {
        int changed = _nurses.Length;
        for (int i = 0; i < nurses.Length; i++)
        {
            if (!_nurses.AsSpan().Contains(nurses[i]) && !nurses[..i].Contains(nurses[i])) changed++;
        }

        return _replaced + ofOthers + ((changed - 1) * _urgent.Problem.Rules.Disruption.ExtraNurse);
    }

    /// <summary>Driving added on the day of a line, compared with the published plan.</summary>
    public int Driving(int line, int detour) => detour - _savedOnDay[_urgent.Table.DayOf(line) - _urgent.Table.FirstDay];
}
