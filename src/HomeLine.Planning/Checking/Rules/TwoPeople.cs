using HomeLine.Planning.Plans;

namespace HomeLine.Planning.Checking.Rules;

/// <summary>
/// H8: a two-person visit has two different people at the same start. To any other visit a second person may come along, for example to supervise;
/// the search never sends one by itself.
/// </summary>
internal static class TwoPeople
{
    public static IEnumerable<Finding> Findings(PlanFacts facts)
    {
        foreach (VisitFact fact in facts.Visits.Where(v => !v.Fixed && v.Patient is not null))
        {
            bool two = fact.Patient!.CrewSize > 1;
            if (two && fact.Visit.Second is null)
            {
                yield return Found.At("H8", fact, ReasonCode.SecondMissing,
                    $"{fact.Patient.Name} is visited by two people; only one is planned.", "Send a second person.");
            }

            if (fact.Visit.Second is { } second && (second == fact.Visit.Nurse || fact.Second is null))
            {
                yield return Found.At("H8", fact, ReasonCode.SecondWrong,
                    $"{second} cannot be the second person at {fact.Patient.Name}.", "Send another second person, or none where one is enough.");
            }
        }
    }
}
