using HomeLine.Planning.Plans;
using HomeLine.Planning.Problem;

namespace HomeLine.Planning.Search;

/// <summary>Whether a nurse may do care for a patient on a day at all, and if not, why: what no roster change mends comes first.</summary>
internal static class Scope
{
    /// <summary>The most binding reason; empty when she may.</summary>
    public static PlanningReason? Fault(WeekProblem problem, PatientHome patient, IEnumerable<CareTask> care, Nurse nurse, int day)
    {
        string? skill = care.SelectMany(t => t.Skills).FirstOrDefault(s => !nurse.IsSignedOff(s, day));
        if (skill is not null)
        {
            string lapsed = nurse.Skills.Contains(skill) ? $"The sign-off of {nurse.Name} for {skill} has lapsed by {PlanClock.DayName(problem.FirstDay, day)}." : $"{nurse.Name} lacks {skill}.";
            return new PlanningReason(ReasonCode.SkillMissing, lapsed, $"Choose a nurse with {skill}.");
        }

        if (!nurse.Licences.Any(l => l.State == patient.State && l.LastDay >= day))
        {
            return new PlanningReason(ReasonCode.LicenceMissing,
                $"{nurse.Name} has no licence in {patient.State} on {PlanClock.DayName(problem.FirstDay, day)}.",
                $"Choose a nurse licensed in {patient.State}.");
        }

        return HomeFault(patient, nurse);
    }

    /// <summary>What the home says about a nurse, also as a second person.</summary>
    public static PlanningReason? HomeFault(PatientHome patient, Nurse nurse)
    {
        if (patient.RefusedNurses.Contains(nurse.Id))
            return new PlanningReason(ReasonCode.NurseRefused, $"{patient.Name} does not want {nurse.Name}.", "Choose another nurse.");
        if (patient.RequiredTraits.FirstOrDefault(t => !nurse.Traits.Contains(t)) is { } missing)
        {
            return new PlanningReason(ReasonCode.TraitMissing,
                $"{nurse.Name} is not '{missing}', which {patient.Name} needs.", "Choose another nurse.");
        }

        return patient.ExcludedTraits.FirstOrDefault(t => nurse.Traits.Contains(t)) is { } excluded
            ? new PlanningReason(ReasonCode.TraitExcluded,
                $"{nurse.Name} has '{excluded}', which the home of {patient.Name} excludes.", "Choose another nurse.")
            : null;
    }
}
