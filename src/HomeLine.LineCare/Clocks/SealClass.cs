using HomeLine.LineCare.Ledger;
using HomeLine.LineCare.Lines;
using HomeLine.LineCare.Policy;
using NodaTime;

namespace HomeLine.LineCare.Clocks;

/// <summary>How urgent a broken seal is: 1 (most urgent), 2 or 3, and why it was raised.</summary>
/// <param name="Class">1, 2 or 3 after raising.</param>
/// <param name="Found">1, 2 or 3 by the finding alone.</param>
/// <param name="RaisedFor">Why it was raised by one; empty when it was not.</param>
public sealed record SealClass(int Class, int Found, string RaisedFor)
{
    private const SealFinding Worst = SealFinding.SiteExposed | SealFinding.WetThrough | SealFinding.Soiled | SealFinding.Off;

    /// <summary>The class of a finding on one line of a patient. Our own default classes, for the clinical lead to sign.</summary>
    /// <param name="finding">What was found; nothing noted counts as an edge lifted.</param>
    /// <param name="care">The patient.</param>
    /// <param name="line">The line; empty when it is not known which.</param>
    /// <param name="policy">The policy book.</param>
    /// <param name="on">Civil day of the report.</param>
    public static SealClass Of(SealFinding finding, PatientCare care, Line? line, PolicyBook policy, LocalDate on)
    {
        ArgumentNullException.ThrowIfNull(care);
        ArgumentNullException.ThrowIfNull(policy);
        var found = (finding & Worst) != 0 ? 1 : finding == SealFinding.OuterCornerOnly ? 3 : 2;
        var raised = RaisedBy(care, line, policy, on);
        return new SealClass(raised.Length > 0 && found > 1 ? found - 1 : found, found, found > 1 ? raised : "");
    }

    private static string RaisedBy(PatientCare care, Line? line, PolicyBook policy, LocalDate on)
    {
        if (care.Risks.HasFlag(RiskFactors.InotropeRunning) || care.Infusions.Any(i => i.NeverInterrupt)) return "an infusion that must not stop";
        if (care.Risks.HasFlag(RiskFactors.ParenteralNutrition) || care.Infusions.Any(i => i.Kind == InfusionKind.ParenteralNutrition))
            return "parenteral nutrition";
        if (care.BornOn is { } born && on < born.PlusMonths((int)policy.ValueOf(RuleIds.SealInfantAge, on))) return "an infant";
        if (care.Risks.HasFlag(RiskFactors.LowWhiteCount)) return "a low white count";
        if (care.Risks.HasFlag(RiskFactors.RecentInfection)) return "a recent line infection";
        return line is { Kind: LineKind.Tunneled, InsertedOn: { } placed } && on < placed.PlusDays((int)policy.ValueOf(RuleIds.SealTunneledAge, on))
            ? "a young tunneled line"
            : "";
    }
}
