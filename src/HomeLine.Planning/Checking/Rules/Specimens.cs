using HomeLine.Planning.Plans;
using HomeLine.Planning.Problem;

namespace HomeLine.Planning.Checking.Rules;

/// <summary>
/// H11: a specimen is handed in at a drop point within its minutes from the visit's start and before a collection of that day: by the nurse on her way, where drives
/// to drop points are planned; else it is enough that somebody leaving directly after the visit could.
/// </summary>
internal static class Specimens
{
    public static IEnumerable<Finding> Findings(PlanFacts facts) =>
        facts.Problem.Rules.HandInMinutes is null ? TooLateToDraw(facts) : NotHandedIn(facts);

    private static IEnumerable<Finding> NotHandedIn(PlanFacts facts) =>
        from fact in facts.NurseDays.SelectMany(d => d.LateSpecimens)
        where !fact.Fixed
        from task in fact.Tasks.Where(t => t.DrawToDropMinutes is not null)
        select Late(facts, fact, task);

    private static IEnumerable<Finding> TooLateToDraw(PlanFacts facts)
    {
        foreach (VisitFact fact in facts.Visits.Where(v => !v.Fixed && v.Patient is not null))
        {
            foreach (CareTask task in fact.Tasks.Where(t => t.DrawToDropMinutes is { } most && !CanDrop(facts, fact, most)))
            {
                yield return Late(facts, fact, task);
            }
        }
    }

    private static Finding Late(PlanFacts facts, VisitFact fact, CareTask task) => Found.At("H11", fact, ReasonCode.SpecimenLate,
        $"{task.Label} of {Found.Who(fact)} drawn at {Found.When(facts, fact.Visit.Start)} reaches no drop point in time.",
        "Draw earlier, or on a day with a courier.");

    private static bool CanDrop(PlanFacts facts, VisitFact fact, int most)
    {
        long ready = (long)fact.Visit.Start + fact.Visit.Minutes;
        return facts.Problem.DropPoints.Any(drop =>
        {
            long there = ready + facts.Trips.Leaving(fact.Patient!.Place, drop.Place, ready);
            return there - fact.Visit.Start <= most && drop.Cutoffs.Any(c => there <= c && PlanFacts.DayOf(c) == fact.Day);
        });
    }
}
