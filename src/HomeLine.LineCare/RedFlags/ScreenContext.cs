using HomeLine.LineCare.Lines;
using HomeLine.LineCare.Policy;
using NodaTime;

namespace HomeLine.LineCare.RedFlags;

/// <summary>What about the patient decides which questions are asked.</summary>
/// <param name="InfusionMustNotStop">A heart infusion or another one that must never be interrupted is running.</param>
/// <param name="ParenteralNutrition">On parenteral nutrition.</param>
/// <param name="Child">Younger than policy's adult age, or the age is not known.</param>
public sealed record ScreenContext(bool InfusionMustNotStop, bool ParenteralNutrition, bool Child)
{
    /// <summary>The temperature, in °C, at which the caller is sent to a clinician; the shipped policy's unless the agency set its own.</summary>
    public decimal FeverAtCelsius { get; init; } = PolicyBook.Default.ValueOf(RuleIds.FeverCall, LocalDate.MaxIsoValue);

    /// <summary>Every question is asked: for a caller whose patient is not known yet.</summary>
    public static readonly ScreenContext Unknown = new(true, true, true);

    /// <summary>The context of a known patient. A missing birth date counts as a child: one question more, never one less.</summary>
    /// <param name="care">The patient.</param>
    /// <param name="policy">The policy book.</param>
    /// <param name="on">Civil day of the call.</param>
    public static ScreenContext Of(PatientCare care, PolicyBook policy, LocalDate on)
    {
        ArgumentNullException.ThrowIfNull(care);
        ArgumentNullException.ThrowIfNull(policy);
        return new ScreenContext(
            care.Risks.HasFlag(RiskFactors.InotropeRunning) || care.Infusions.Any(infusion => infusion.NeverInterrupt),
            care.Risks.HasFlag(RiskFactors.ParenteralNutrition) || care.Infusions.Any(i => i.Kind == InfusionKind.ParenteralNutrition),
            care.BornOn is not { } born || on < born.PlusYears((int)policy.ValueOf(RuleIds.ScreenAdultAge, on)))
        {
            FeverAtCelsius = policy.ValueOf(RuleIds.FeverCall, on),
        };
    }
}
