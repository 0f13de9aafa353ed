using HomeLine.Agency.Roster;

namespace HomeLine.Agency.Decisions;

/// <summary>
/// A wish about who comes that rests on a protected trait of staff. Planning never follows it: a clinical manager decides by the agency's policy, and where
/// somebody shall not be sent writes that person on the patient's record. Pure.
/// </summary>
public static class ProtectedWish
{
    /// <summary>
    /// How such traits begin. From memory: race, colour, religion and national origin of 42 USC 2000e-2, age of 29 USC 623, disability of 42 USC 12112. A wish for a
    /// nurse of one's own sex for intimate care is kept apart and is followed (common practice, no source).
    /// </summary>
    private static readonly string[] Begins = ["race:", "colour:", "color:", "religion:", "origin:", "age:", "disability:", "orientation:"];

    /// <summary>Whether a trait is one of them.</summary>
    public static bool Is(string trait) => Begins.Any(b => trait.StartsWith(b, StringComparison.OrdinalIgnoreCase));

    /// <summary>What a clinical manager is asked about one patient.</summary>
    internal static IEnumerable<OpenDecision> Of(Patient patient) => patient.RequiredTraits.Concat(patient.ExcludedTraits).Where(Is).Distinct().Select(trait => OpenDecision.Of(
        patient.Id, null, AppDecisionCodes.ProtectedWish,
        $"A wish about who comes rests on a protected trait of staff ({trait}). Planning does not follow it. Decide by the agency's policy, and talk with the patient.",
        trait, null));
}
