using HomeLine.LineCare.Lines;
using HomeLine.LineCare.Policy;
using HomeLine.LineCare.Windows;

namespace HomeLine.LineCare.Clocks;

/// <summary>Caregiver validations that run out. One that has run out leaves its tasks to the nurse and asks for a decision.</summary>
internal static class ValidationClock
{
    public static void Add(Reckoning reckoning)
    {
        var early = (int)reckoning.Value(RuleIds.ValidationEarly);
        var rule = reckoning.Policy.InForce(RuleIds.ValidationLife, reckoning.Today)!;
        foreach (var validation in reckoning.Care.Caregivers)
        {
            if (IsRenewed(reckoning, validation)) continue;
            var what = $"{validation.Person} is validated for {Words(validation.Item)} through {Says.Day(validation.ValidThrough)}";
            if (validation.ValidThrough < reckoning.Today)
            {
                reckoning.Ask(validation.Line, DecisionCodes.ValidationLapsed, $"{what}: lapsed, the task falls to the nurse until it is renewed.");
                continue;
            }

            reckoning.Windows.Add(Frame.Days(
                reckoning, CareItem.CaregiverValidation, validation.Line, validation.ValidThrough.PlusDays(-early), validation.ValidThrough) with
            {
                Because = new WindowReason(null, null, rule.Id, Says.Amount(rule.Value, rule.Unit), rule.Level, rule.Source, $"{what}.", []),
            });
        }
    }

    private static bool IsRenewed(Reckoning reckoning, CaregiverValidation old)
    {
        foreach (var other in reckoning.Care.Caregivers)
            if (other.Person == old.Person && other.Item == old.Item && other.Line == old.Line && other.ValidThrough > old.ValidThrough) return true;
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
        _ => item.ToString(),
    };
}
