using System.Collections.Immutable;
using HomeLine.Planning.Plans;
using HomeLine.Planning.Problem;

namespace HomeLine.Planning.Checking;

/// <summary>A nurse hands specimens in at a drop point on her way.</summary>
/// <param name="Nurse">Who.</param>
/// <param name="After">The visit she comes from.</param>
/// <param name="Name">The drop point.</param>
/// <param name="Place">Its place index.</param>
/// <param name="Arrive">When she is there, plan minutes.</param>
/// <param name="Leave">When she drives on.</param>
/// <param name="Minutes">Minutes the stop adds to her way, paid: the longer drive and handing in.</param>
/// <param name="Visits">The visits whose specimens she hands in.</param>
public sealed record DropStop(string Nurse, string After, string Name, int Place, int Arrive, int Leave, int Minutes, ImmutableArray<string> Visits);

/// <summary>Where specimens are handed in, as the checker reads it from the starts of a plan.</summary>
public static class DropStops
{
    /// <summary>All stops of a plan, by day, nurse and time; none where drives to drop points are not planned.</summary>
    public static ImmutableArray<DropStop> Of(WeekProblem problem, WeekPlan plan)
    {
        if (problem.Rules.HandInMinutes is not { } handIn) return [];
        var facts = new PlanFacts(problem, plan, problem.RoadChanges);
        return
        [
            .. from day in facts.NurseDays
               from stop in day.Drops
               select new DropStop(
                   day.Nurse.Id,
                   day.Visits[stop.After].Visit.Id,
                   stop.Drop.Name,
                   stop.Drop.Place,
                   (int)stop.Arrive,
                   (int)stop.Arrive + handIn,
                   (int)stop.Minutes,
                   [.. stop.Carried.Select(i => day.Visits[i].Visit.Id)]),
        ];
    }
}
