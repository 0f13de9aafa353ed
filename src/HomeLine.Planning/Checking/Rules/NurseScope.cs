using HomeLine.Planning.Plans;

namespace HomeLine.Planning.Checking.Rules;

/// <summary>H3: the nurse has every skill of the visit, signed off that day, and a licence, valid that day, for the state where the patient is.</summary>
internal static class NurseScope
{
    public static IEnumerable<Finding> Findings(PlanFacts facts) => facts.Visits.Where(v => !v.Fixed).SelectMany(OfVisit);

    private static IEnumerable<Finding> OfVisit(VisitFact fact)
    {
        if (fact.Nurse is not { } nurse)
        {
            yield return Found.At("H3", fact, ReasonCode.NurseUnknown,
                $"The visit to {Found.Who(fact)} names {fact.Visit.Nurse}, who is not on the list of nurses.", "Choose a nurse on the list.");
            yield break;
        }

        foreach (string skill in fact.Tasks.SelectMany(t => t.Skills.IsDefault ? [] : t.Skills).Distinct()
            .Where(s => !nurse.Skills.Contains(s) || nurse.SkillEnds.Any(e => e.Skill == s && e.LastDay < fact.Day)))
        {
            yield return Found.At("H3", fact, ReasonCode.SkillMissing,
                $"{nurse.Name} lacks {skill}, which the visit to {Found.Who(fact)} needs.", "Choose a nurse with this skill.");
        }

        if (fact.Patient is { } patient && !nurse.Licences.Any(l => l.State == patient.State && l.LastDay >= fact.Day))
        {
            yield return Found.At("H3", fact, ReasonCode.LicenceMissing,
                $"{nurse.Name} has no licence in {patient.State} on the day of the visit to {patient.Name}.", "Choose a nurse licensed there.");
        }
    }
}
