using System.Collections.Immutable;
using HomeLine.Planning.Plans;
using HomeLine.Planning.Problem;
using HomeLine.Planning.Search;

namespace HomeLine.Planning.Mending;

/// <summary>
/// The troubles worked into the problem: who is out, how long trips take, which visits cannot be made as published. What is about to start stays frozen,
/// except where the trouble itself touches it: a nurse who is out, or the rest of the day of one who runs late.
/// </summary>
internal sealed class BrokenDay
{
    private readonly HashSet<string> _out = new(StringComparer.Ordinal);
    private readonly HashSet<string> _late = new(StringComparer.Ordinal);

    public BrokenDay(WeekProblem problem, WeekPlan published, IReadOnlyCollection<Trouble> troubles)
    {
        Refuse(problem, published, troubles);
        var overruns = troubles.OfType<Trouble.Overrun>().ToLookup(o => o.Visit, StringComparer.Ordinal);
        PlannedVisit[] overrunning = [.. published.Visits.Where(v => overruns.Contains(v.Id))];
        foreach (PlannedVisit visit in published.Visits)
        {
            if (IsOut(visit, troubles)) _out.Add(visit.Id);
            else if (overrunning.Any(o => Follows(visit, o))) _late.Add(visit.Id);
        }

        var frozen = problem.FixedVisits().Select(v => v.Id).Concat(overruns.Select(o => o.Key))
            .Where(id => !_out.Contains(id) && !_late.Contains(id)).ToImmutableArray();
        WeekPlan adjusted = published with { Visits = [.. published.Visits.Select(v => Adjusted(v, overruns))] };
        Changes = [.. troubles.OfType<Trouble.Roads>().Select(r => r.Change), .. problem.RoadChanges];
        Problem = problem with
        {
            Published = adjusted,
            FrozenVisits = frozen,
            Rules = problem.Rules with { FrozenAheadMinutes = int.MinValue / 4 },
            Nurses = [.. problem.Nurses.Select(n => Rostered(n, published, troubles))],
        };
        Closed = [.. troubles.OfType<Trouble.NurseOut>().SelectMany(o => DaysOf(problem, o).Select(d => (o.Nurse, d)))];
    }

    /// <summary>The problem as it is now.</summary>
    public WeekProblem Problem { get; }

    /// <summary>Those of the troubles first: where two overlap, the first counts.</summary>
    public ImmutableArray<RoadChange> Changes { get; }

    /// <summary>Nurse and day: takes nothing new.</summary>
    public HashSet<(string Nurse, int Day)> Closed { get; }

    /// <summary>Whether a visit lost its nurse.</summary>
    public bool IsOut(string visit) => _out.Contains(visit);

    private static bool IsOut(PlannedVisit visit, IEnumerable<Trouble> troubles) => visit.Promise != PromiseState.Done && troubles.OfType<Trouble.NurseOut>()
        .Any(o => (visit.Nurse == o.Nurse || visit.Second == o.Nurse) && visit.Start >= o.From && visit.Start < o.To);

    private static bool Follows(PlannedVisit visit, PlannedVisit late) =>
        visit.Start > late.Start && CompiledWeek.DayOf(visit.Start) == CompiledWeek.DayOf(late.Start) && visit.Promise != PromiseState.Done
        && new[] { late.Nurse, late.Second }.OfType<string>().Any(n => visit.Nurse == n || visit.Second == n);

    private PlannedVisit Adjusted(PlannedVisit visit, ILookup<string, Trouble.Overrun> overruns)
    {
        PlannedVisit longer = visit with { Minutes = visit.Minutes + overruns[visit.Id].Sum(o => o.Minutes) };

        // A visit that was frozen but lost its nurse, or follows an overrun, is only promised now: frozen says it cannot change.
        bool thawed = visit.Promise == PromiseState.Frozen && (_out.Contains(visit.Id) || _late.Contains(visit.Id));
        return thawed ? longer with { Promise = PromiseState.Told } : longer;
    }

    /// <summary>A nurse who is out has no shift on a day of which nothing she could still do is left.</summary>
    private Nurse Rostered(Nurse nurse, WeekPlan published, IEnumerable<Trouble> troubles)
    {
        Trouble.NurseOut[] mine = [.. troubles.OfType<Trouble.NurseOut>().Where(o => o.Nurse == nurse.Id)];
        if (mine.Length == 0) return nurse;
        return nurse with
        {
            Shifts = [.. nurse.Shifts.Where(s => !mine.Any(o => o.From < s.OvertimeTo && o.To > s.From)
                || published.Visits.Any(v => (v.Nurse == nurse.Id || v.Second == nurse.Id) && CompiledWeek.DayOf(v.Start) == s.Day && !_out.Contains(v.Id)))],
        };
    }

    private static IEnumerable<int> DaysOf(WeekProblem problem, Trouble.NurseOut o) =>
        problem.Nurses.First(n => n.Id == o.Nurse).Shifts.Where(s => o.From < s.OvertimeTo && o.To > s.From).Select(s => s.Day);

    private static void Refuse(WeekProblem problem, WeekPlan published, IEnumerable<Trouble> troubles)
    {
        foreach (Trouble trouble in troubles)
        {
            string? fault = trouble switch
            {
                Trouble.NurseOut o when problem.Nurses.All(n => n.Id != o.Nurse) => $"Nurse {o.Nurse} is not in the problem.",
                Trouble.NurseOut o when o.To <= o.From => $"Nurse {o.Nurse} would be back before she is out.",
                Trouble.Overrun o when published.Visits.All(v => v.Id != o.Visit) => $"Visit {o.Visit} is not in the published plan.",
                Trouble.Overrun { Minutes: <= 0 } o => $"Visit {o.Visit} overruns by {o.Minutes} minutes; give a number above 0.",
                _ => null,
            };
            if (fault is not null) throw new ArgumentException(fault, nameof(troubles));
        }
    }
}
