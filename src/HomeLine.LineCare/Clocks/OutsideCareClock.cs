using HomeLine.LineCare.Lines;
using HomeLine.LineCare.Windows;

namespace HomeLine.LineCare.Clocks;

/// <summary>Care expected from a clinic belongs to the clinic until its report is overdue; then it is back with the nurse, and somebody chases the report.</summary>
internal static class OutsideCareClock
{
    public static void Apply(Reckoning reckoning)
    {
        foreach (var expected in reckoning.Care.Outside)
        {
            var open = false;
            for (var i = 0; i < reckoning.Windows.Count; i++)
            {
                if (!IsExpected(reckoning.Windows[i], expected)) continue;
                open = true;
                if (reckoning.Now < expected.ReportBy)
                    reckoning.Windows[i] = reckoning.Windows[i] with { Owner = PerformerKind.Outside };
            }

            if (open && reckoning.Now >= expected.ReportBy)
                reckoning.Ask(expected.Line, DecisionCodes.OutsideCareNotReported, Says.Iso(expected.On), expected.On,
                    $"{expected.Where} was to do this on {Says.Short(expected.On)} and no report came by {Says.Moment(expected.ReportBy, reckoning.Care.Zone)}.");
        }
    }

    /// <summary>A broken seal does not wait for a clinic; what a clinic cannot do for the agency stays with the agency: looking at care by
    /// somebody not validated, and validating caregivers.</summary>
    private static bool IsExpected(DueWindow window, OutsideCare expected) =>
        window.Line == expected.Line
        && window.Standing != WindowStanding.CutShort
        && window.Item is not (CareItem.NurseCheck or CareItem.CaregiverValidation)
        && expected.Items.Contains(window.Item)
        && !(window.Because.AnchorDate >= expected.On);
}
