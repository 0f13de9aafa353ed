using HomeLine.LineCare.Policy;
using NodaTime;

namespace HomeLine.LineCare;

/// <summary>Whether a material may be used on a patient.</summary>
/// <param name="Allowed">False when it must stay out of the kit, the note and the sheet.</param>
/// <param name="Ask">True when a fact is missing and somebody has to be asked.</param>
/// <param name="Reason">One plain sentence.</param>
/// <param name="Source">Where the rule comes from.</param>
public sealed record MaterialAnswer(bool Allowed, bool Ask, string Reason, string Source);

/// <summary>Cautions about materials that touch the patient.</summary>
public static class Materials
{
    /// <summary>Whether material with chlorhexidine may be used on a day. Never with a known allergy, at any age; not before the age policy names.</summary>
    /// <param name="care">The patient.</param>
    /// <param name="policy">The policy book.</param>
    /// <param name="on">Civil day of use.</param>
    public static MaterialAnswer ChlorhexidineAllowed(PatientCare care, PolicyBook policy, LocalDate on)
    {
        ArgumentNullException.ThrowIfNull(care);
        ArgumentNullException.ThrowIfNull(policy);
        if (care.Risks.HasFlag(RiskFactors.ChlorhexidineAllergy))
            return new MaterialAnswer(false, false, "Allergic to chlorhexidine: no material that contains it.",
                "US FDA drug safety communication on chlorhexidine 2017, through two summaries");
        var rule = policy.InForce(RuleIds.ChlorhexidineAge, on)
            ?? throw new KeyNotFoundException($"No policy value '{RuleIds.ChlorhexidineAge}' is in force on {on}.");
        if (care.BornOn is not { } born)
            return new MaterialAnswer(true, true, "The birth date is missing: the age rule for chlorhexidine is off. Ask.", rule.Source);
        return on < born.PlusMonths((int)rule.Value)
            ? new MaterialAnswer(false, false, $"Under {rule.Value:0} months of age: no material with chlorhexidine.", rule.Source)
            : new MaterialAnswer(true, false, "No allergy to chlorhexidine is recorded and the age is not below the limit.", rule.Source);
    }
}
