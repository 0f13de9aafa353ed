using HomeLine.Planning.Plans;

namespace HomeLine.Planning.Checking.Rules;

/// <summary>H13: visits that must stay keep nurse, second person, start and tasks.</summary>
internal static class FixedVisits
{
    public static IEnumerable<Finding> Findings(PlanFacts facts)
    {
        var kept = facts.Visits.Where(v => v.Fixed).Select(v => v.Visit.Id).ToHashSet(StringComparer.Ordinal);
        return from was in facts.Problem.FixedVisits()
               where !kept.Contains(was.Id)
               select new Finding("H13", was.Id, was.Nurse, new PlanningReason(
                   ReasonCode.FixedChanged,
                   $"The visit to {was.Patient} at {Found.When(facts, was.Start)} is under way, done or about to start and must stay as it is.",
                   "Leave it, and plan around it."));
    }
}
