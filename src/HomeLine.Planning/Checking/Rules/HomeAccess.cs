using HomeLine.Planning.Plans;
using HomeLine.Planning.Problem;

namespace HomeLine.Planning.Checking.Rules;

/// <summary>H6: the home receives at that time, and receives this nurse; both people of a two-person visit are held to it.</summary>
internal static class HomeAccess
{
    public static IEnumerable<Finding> Findings(PlanFacts facts) =>
        from fact in facts.Visits
        where !fact.Fixed
        from patient in new[] { fact.Patient }.OfType<PatientHome>()
        from finding in Times(facts, fact, patient).Concat(
            new[] { fact.Nurse, fact.Second }.OfType<Nurse>().SelectMany(n => People(fact, patient, n)))
        select finding;

    private static IEnumerable<Finding> Times(PlanFacts facts, VisitFact fact, PatientHome patient)
    {
        long start = fact.Visit.Start;
        if (patient.StartSpans.IsDefaultOrEmpty || patient.StartSpans.Any(s => start >= s.From && start <= s.To)) yield break;
        yield return Found.At("H6", fact, ReasonCode.HomeClosed,
            $"{patient.Name} does not receive at {Found.When(facts, start)}.", "Choose a time the patient agreed to.");
    }

    private static IEnumerable<Finding> People(VisitFact fact, PatientHome patient, Nurse nurse)
    {
        if (patient.RefusedNurses.Contains(nurse.Id))
        {
            yield return Found.At("H6", fact, ReasonCode.NurseRefused,
                $"{patient.Name} does not want {nurse.Name}.", "Choose another nurse.");
        }

        foreach (string trait in patient.RequiredTraits.Where(t => !nurse.Traits.Contains(t)))
        {
            yield return Found.At("H6", fact, ReasonCode.TraitMissing,
                $"{nurse.Name} is not '{trait}', which {patient.Name} needs.", "Choose another nurse.");
        }

        foreach (string trait in patient.ExcludedTraits.Where(nurse.Traits.Contains))
        {
            yield return Found.At("H6", fact, ReasonCode.TraitExcluded,
                $"{nurse.Name} has '{trait}', which the home of {patient.Name} excludes.", "Choose another nurse.");
        }
    }
}
