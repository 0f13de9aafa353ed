using HomeLine.LineCare;
using HomeLine.LineCare.Lines;
using HomeLine.LineCare.Orders;
using HomeLine.LineCare.Policy;
using HomeLine.LineCare.Windows;
using NodaTime;

namespace HomeLine.Agency.WeekPlanning;

/// <summary>How much a late item weighs, and which items are critical. Weights and factors are policy; the order they follow is the trade's.</summary>
public sealed class RiskWeights(PolicyBook policy, LocalDate date)
{
    /// <summary>Item weight times patient factor.</summary>
    public int Of(Chore chore, PatientCare care, LocalDate today) => Value($"risk.{PolicyName(chore)}") * Factor(care, today);

    /// <summary>
    /// Critical: an inotrope, a broken seal of the two upper classes, a nurse's daily dose, a first dose,
    /// and an unknown date on a patient on parenteral nutrition or an infant.
    /// </summary>
    public static bool IsCritical(Chore chore, PatientCare care, LocalDate today)
    {
        DueWindow window = chore.Lead;
        if (window.SealClass is 1 or 2) return true;
        if (chore.Order is { Kind: OrderKind.NurseDose }) return true;
        if (chore.Order is { } order && order.Skills.Contains("FD")) return true;
        if (chore.Item == CareItem.Set && care.Infusions.Any(i => i.NeverInterrupt && i.Line == chore.Line?.Id)) return true;
        return window.Standing == WindowStanding.DateUnknown && (care.Risks.HasFlag(RiskFactors.ParenteralNutrition) || IsInfant(care, today));
    }

    private int Factor(PatientCare care, LocalDate today)
    {
        int factor = 1;
        if (care.Risks.HasFlag(RiskFactors.ParenteralNutrition)) factor += Value("risk.factor.pn");
        if (IsInfant(care, today)) factor += Value("risk.factor.infant");
        if (care.Risks.HasFlag(RiskFactors.LowWhiteCount)) factor += Value("risk.factor.lowwhitecount");
        if (care.Risks.HasFlag(RiskFactors.RecentInfection)) factor += Value("risk.factor.recentinfection");
        return Math.Min(factor, Value("risk.factor.cap"));
    }

    private static bool IsInfant(PatientCare care, LocalDate today) => care.BornOn is { } born && born.PlusYears(1) > today;

    private int Value(string ruleId) => (int)policy.ValueOf(ruleId, date);

    private static string PolicyName(Chore chore) => chore.Item switch
    {
        CareItem.Dressing => "dressing",
        CareItem.Securement => "securement",
        CareItem.PortNeedle => "needle",
        CareItem.Connector => "connector",
        CareItem.Set => "set",
        CareItem.Labs => chore.Order?.Kind == OrderKind.DrugLevel ? "level" : "labs",
        CareItem.LumenFlush or CareItem.PortFlush => "flush",
        CareItem.OutsideLength => "length",
        CareItem.SiteCheck => "sitecheck",
        CareItem.Recertification => "recertification",
        CareItem.CaregiverValidation => "validation",
        CareItem.NurseCheck => "nursecheck",
        CareItem.RemovalSiteCheck => "removalcheck",
        CareItem.OrderedService => "service",
        _ => throw new ArgumentOutOfRangeException(nameof(chore), chore.Item, "Unknown item"),
    };
}
