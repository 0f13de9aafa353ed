using HomeLine.LineCare.Lines;
using NodaTime;

namespace HomeLine.LineCare.RedFlags;

/// <summary>What about the patient decides which questions are asked.</summary>
/// <param name="InfusionMustNotStop">A heart infusion or another one that must never be interrupted is running.</param>
/// <param name="ParenteralNutrition">On parenteral nutrition.</param>
/// <param name="Child">Under 18, or the age is not known.</param>
public sealed record ScreenContext(bool InfusionMustNotStop, bool ParenteralNutrition, bool Child)
{
    private const int AdultAtYears = 18;

    /// <summary>Every question is asked: for a caller whose patient is not known yet.</summary>
    public static readonly ScreenContext Unknown = new(true, true, true);

    /// <summary>The context of a known patient. A missing birth date counts as a child: one question more, never one less.</summary>
    /// <param name="care">The patient.</param>
    /// <param name="on">Civil day of the call.</param>
    public static ScreenContext Of(PatientCare care, LocalDate on)
    {
        ArgumentNullException.ThrowIfNull(care);
        return new ScreenContext(
            care.Risks.HasFlag(RiskFactors.InotropeRunning) || care.Infusions.Any(infusion => infusion.NeverInterrupt),
            care.Risks.HasFlag(RiskFactors.ParenteralNutrition) || care.Infusions.Any(i => i.Kind == InfusionKind.ParenteralNutrition),
            care.BornOn is not { } born || on < born.PlusYears(AdultAtYears));
    }
}
