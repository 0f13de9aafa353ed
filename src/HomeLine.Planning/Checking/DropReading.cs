using HomeLine.Planning.Problem;

namespace HomeLine.Planning.Checking;

/// <summary>A stop at a drop point between two visits, or before going home.</summary>
/// <param name="After">Position of the visit before it.</param>
/// <param name="Drop">The drop point.</param>
/// <param name="Arrive">When she is there.</param>
/// <param name="Minutes">Minutes it adds to the way: driving and handing in.</param>
/// <param name="Carried">Positions of the visits whose specimens she hands in.</param>
internal sealed record DropFact(int After, DropPoint Drop, long Arrive, long Minutes, int[] Carried);

/// <summary>
/// Reads from the starts of a nurse-day where she hands her specimens in: of all ways to do so in time without moving a visit, the one that adds the fewest minutes; of
/// equal ones the earliest. She charts before she drives on, to a drop point as to a home.
/// </summary>
internal sealed class DropReading
{
    private const long Missing = 1_000_000;

    private readonly PlanFacts _facts;
    private readonly Nurse _nurse;
    private readonly VisitFact[] _visits;
    private readonly int?[] _most;
    private readonly int _handIn;

    public DropReading(PlanFacts facts, Nurse nurse, IEnumerable<VisitFact> visits, int handIn)
    {
        (_facts, _nurse, _visits, _handIn) = (facts, nurse, [.. visits], handIn);
        _most = [.. _visits.Select(v => v.Visit.Nurse == nurse.Id ? v.Tasks.Select(t => t.DrawToDropMinutes).Min() : null)];
    }

    /// <summary>The stops, and the positions of visits whose specimen reaches no drop point in time.</summary>
    public (List<DropFact> Stops, List<int> Late) Read()
    {
        var best = new long[_visits.Length + 1];
        var stops = new DropFact?[_visits.Length];
        for (int i = _visits.Length - 1; i >= 0; i--)
        {
            best[i] = best[i + 1];
            if (_most[i] is null) continue;
            best[i] += Missing;
            foreach (DropFact stop in From(i))
            {
                if (stop.Minutes + best[stop.After + 1] >= best[i]) continue;
                (best[i], stops[i]) = (stop.Minutes + best[stop.After + 1], stop);
            }
        }

        var chosen = new List<DropFact>();
        var late = new List<int>();
        for (int i = 0; i < _visits.Length;)
        {
            if (stops[i] is { } stop) chosen.Add(stop);
            else if (_most[i] is not null) late.Add(i);
            i = stops[i] is { } made ? made.After + 1 : i + 1;
        }

        return (chosen, late);
    }

    /// <summary>Every stop that hands in all specimens drawn from a visit on.</summary>
    private IEnumerable<DropFact> From(int first)
    {
        long due = long.MaxValue;
        for (int after = first; after < _visits.Length; after++)
        {
            PlannedTimes at = Times(after);
            if (_most[after] is { } most) due = Math.Min(due, _visits[after].Visit.Start + (long)most);
            if (at.Leave > due) yield break;
            foreach (DropPoint drop in _facts.Problem.DropPoints)
            {
                long arrive = at.Leave + _facts.Trips.Leaving(at.Place, drop.Place, at.Leave), on = arrive + _handIn;
                if (arrive > due || !drop.Cutoffs.Any(c => arrive <= c && PlanFacts.DayOf(c) == _visits[after].Day)) continue;
                int way = _facts.Trips.Leaving(drop.Place, at.Next, on);
                if (way >= ITravelTimes.Unreachable || on + way > at.NextStart) continue;
                long minutes = on + way - at.Leave - _facts.Trips.Leaving(at.Place, at.Next, at.Leave);
                yield return new DropFact(after, drop, arrive, minutes, [.. Enumerable.Range(first, after - first + 1).Where(i => _most[i] is not null)]);
            }
        }
    }

    private PlannedTimes Times(int after)
    {
        VisitFact visit = _visits[after];
        long leave = (long)visit.Visit.Start + visit.Visit.Minutes + _facts.Problem.Rules.DocumentationMinutes;
        return after + 1 < _visits.Length
            ? new PlannedTimes(visit.Patient!.Place, leave, _visits[after + 1].Patient!.Place, _visits[after + 1].Visit.Start)
            : new PlannedTimes(visit.Patient!.Place, leave, _nurse.Home, long.MaxValue);
    }

    private readonly record struct PlannedTimes(int Place, long Leave, int Next, long NextStart);
}
