using HomeLine.LineCare.Lines;
using HomeLine.LineCare.Policy;
using HomeLine.LineCare.Windows;

namespace HomeLine.LineCare.Clocks;

/// <summary>Caregiver validations that run out. One that has run out leaves its tasks to the nurse and asks for a decision.</summary>
internal static class ValidationClock
{
    public static void Add(Reckoning reckoning)
    {
        if (reckoning.Care.Caregivers.IsEmpty) return;
        var early = (int)reckoning.Value(RuleIds.ValidationEarly);
        var rule = reckoning.Policy.InForce(RuleIds.ValidationLife, reckoning.Today)!;
        List<CaregiverValidation>? lapsed = null;
        foreach (var validation in reckoning.Care.Caregivers)
        {
            if (IsRenewed(reckoning, validation)) continue;
            if (validation.ValidThrough < reckoning.Today)
            {
                (lapsed ??= []).Add(validation);
                continue;
            }

            var why = Why.Of(null, (validation, rule), static (_, f) => new WindowReason(
                null, null, f.rule.Id, Says.Amount(f.rule.Value, f.rule.Unit), f.rule.Level, f.rule.Source,
                $"{f.validation.Person} is validated for {Words(f.validation.Item)} through {Says.Day(f.validation.ValidThrough)}.", []));
            reckoning.Windows.Add(Frame.Days(
                reckoning, why, CareItem.CaregiverValidation, validation.Line, validation.ValidThrough.PlusDays(-early), validation.ValidThrough));
        }

        if (lapsed is not null) AskAbout(reckoning, lapsed);
    }

    /// <summary>One question per person and line, whatever the number of tasks that lapsed.</summary>
    private static void AskAbout(Reckoning reckoning, List<CaregiverValidation> lapsed)
    {
        foreach (var group in lapsed.GroupBy(validation => (validation.Person, validation.Line, validation.ValidThrough)))
            reckoning.Ask(group.Key.Line, DecisionCodes.ValidationLapsed,
                $"{group.Key.Person} {Says.Iso(group.Key.ValidThrough)}", group.Key.ValidThrough.PlusDays(1),
                $"{group.Key.Person} was validated for {string.Join(", ", group.Select(v => Words(v.Item)))} through {Says.Day(group.Key.ValidThrough)}: "
                + "lapsed, the nurse does it until it is renewed.");
    }

    /// <summary>Renewed on its line; one that counted for every line, on each line the patient has.</summary>
    private static bool IsRenewed(Reckoning reckoning, CaregiverValidation old)
    {
        if (IsRenewed(reckoning, old, old.Line)) return true;
        if (old.Line is not null) return false;
        var inPlace = reckoning.Care.InPlace(reckoning.Now);
        foreach (var line in inPlace)
            if (!IsRenewed(reckoning, old, line.Id)) return false;
        return !inPlace.IsEmpty;
    }

    private static bool IsRenewed(Reckoning reckoning, CaregiverValidation old, LineId? line)
    {
        foreach (var other in reckoning.Care.Caregivers)
            if (other.Person == old.Person && other.Item == old.Item && (other.Line == line || other.Line is null) && other.ValidThrough > old.ValidThrough) return true;
        return false;
    }

    private static string Words(CareItem item) => item switch
    {
        CareItem.Dressing => "dressings",
        CareItem.Connector => "connectors",
        CareItem.Set => "sets",
        CareItem.PortNeedle => "the port needle",
        CareItem.LumenFlush => "flushing",
        CareItem.PortFlush => "flushing the port",
        CareItem.Securement => "the securement",
        CareItem.OutsideLength => "the outside length",
        CareItem.SiteCheck => "the site check",
        CareItem.Labs => "draws",
        _ => item.ToString(),
    };
}
