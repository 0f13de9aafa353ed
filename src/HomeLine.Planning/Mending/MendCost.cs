using HomeLine.Planning.Cost;
using HomeLine.Planning.Problem;
using HomeLine.Planning.Standing;

namespace HomeLine.Planning.Mending;

/// <summary>What steers a repair, compared from left to right: lateness (critical far above other care), disruption, work.</summary>
internal readonly record struct MendCost(long Late, long Disruption, long Work) : IComparable<MendCost>
{
    public static MendCost Worst { get; } = new(long.MaxValue, 0, 0);

    public int CompareTo(MendCost other) => (Late, Disruption, Work).CompareTo((other.Late, other.Disruption, other.Work));

    public static bool operator <(MendCost left, MendCost right) => left.CompareTo(right) < 0;

    public static bool operator >(MendCost left, MendCost right) => left.CompareTo(right) > 0;

    public static bool operator <=(MendCost left, MendCost right) => left.CompareTo(right) <= 0;

    public static bool operator >=(MendCost left, MendCost right) => left.CompareTo(right) >= 0;
}

/// <summary>Counts the cost of a whole plan under repair.</summary>
internal sealed class MendCounting(StandingTable table, PushTrial trial)
{
    private readonly bool[] _changed = new bool[table.Problem.Nurses.Length];
    private readonly long[] _unmet = [.. table.Visits.Select(v => v.Care.Sum(t => Unmet(table.Problem, t)))];
    private readonly PlanningRules _rules = table.Problem.Rules;
    private readonly bool[] _breakHeld = new bool[table.Shifts.Length];

    /// <summary>Notes which nurse-days have room for their break once the troubles are laid out: those must keep it.</summary>
    public void NoteBreaks(MendState state)
    {
        for (int line = 0; line < _breakHeld.Length; line++) _breakHeld[line] = trial.BreakHolds(state.Standing, line);
    }

    /// <summary>Whether a trouble itself, not the repair, left a nurse no break.</summary>
    public bool BreakGone(int nurse) => Enumerable.Range(nurse * table.Days, table.Days).Any(l => !_breakHeld[l]);

    public MendCost Of(MendState state)
    {
        long late = 0, work = 0;
        for (int v = 0; v < table.Visits.Length; v++)
        {
            int by = state.Standing.MergedInto[v] is >= 0 and var into ? into : v;
            if (by != v && !Merging.Holds(table, state.Standing, v, by)) return MendCost.Worst;
            late += state.Standing.Nurse[by] < 0 ? _unmet[v] : trial.LateAt(table.Visits[v], state.Standing.Start[by]);
        }

        for (int line = 0; line < table.Shifts.Length; line++)
        {
            if (state.Standing.On(line).Length == 0) continue;
            if (_breakHeld[line] && !trial.BreakHolds(state.Standing, line)) return MendCost.Worst;
            work += trial.Driving(state.Standing, line);
            if (table.Shifts[line] is { } shift) work += (long)_rules.OvertimeFactor * Math.Max(0, trial.HomeAt(state.Standing, line) - shift.To);
        }

        return new MendCost(late, Disruption(state), work);
    }

    /// <summary>Points of the disruption table: changed visits, families left out, and each nurse beyond the first whose days change.</summary>
    public long Disruption(MendState state)
    {
        Array.Clear(_changed);
        long points = 0;
        for (int v = 0; v < table.Visits.Length; v++)
        {
            StandingVisit visit = table.Visits[v];
            int nurse = state.Standing.Nurse[v], second = state.Standing.Second[v];
            if (state.Standing.MergedInto[v] is >= 0 and var into)
            {
                points += DisruptionPrice.Replaced(_rules.Disruption, visit.Was) + (visit.Told ? _rules.Disruption.PhoneCall : 0);
                _changed[state.Standing.Nurse[into]] = true;
            }
            else if (nurse < 0) points += visit.Told ? _rules.Disruption.MovedTold + _rules.Disruption.PhoneCall : 0;
            else if (!DisruptionPrice.Felt(visit, nurse, second, state.Standing.Start[v])) continue;
            else points += DisruptionPrice.Of(_rules.Disruption, visit, nurse, second, state.Standing.Start[v]);
            _changed[visit.WasNurse] = true;
            if (nurse >= 0) _changed[nurse] = true;
            if (second >= 0) _changed[second] = true;
        }

        for (int line = 0; line < table.Shifts.Length; line++)
        {
            if (table.Shifts[line] is { OnCall: true } && state.Standing.On(line).Length > 0 && table.Base.On(line).Length == 0) points += _rules.Disruption.OnCall;
        }

        return points + (Math.Max(0, _changed.Count(c => c) - 1) * (long)_rules.Disruption.ExtraNurse);
    }

    /// <summary>What one visit costs when nobody makes it.</summary>
    public long UnmetOf(int visit) => _unmet[visit];

    private static long Unmet(WeekProblem problem, CareTask task) =>
        LateCost.Unmet(problem, task) * (task.Critical ? PushTrial.CriticalWeight : 1);
}
