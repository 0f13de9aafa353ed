using HomeLine.LineCare.Ledger;
using HomeLine.LineCare.Lines;
using HomeLine.LineCare.Policy;
using HomeLine.LineCare.Windows;
using NodaTime;

namespace HomeLine.LineCare.Clocks;

/// <summary>The needleless connector of each lumen: floor in elapsed hours, ceiling in civil days; with the set inside a continuous infusion.
/// On an accessed port it goes with the needle; an occluded lumen has none.</summary>
internal static class ConnectorClock
{
    public static void Add(Reckoning reckoning, LineStory story)
    {
        if (story.Line.Kind == LineKind.Port) return;
        foreach (var lumen in story.Lumens)
        {
            if (lumen.Occluded) continue;
            var pair = PairFor(reckoning, story.Line, lumen.Label);
            var window = new WindowDraft(
                CareItem.Connector, story.Line.Id, lumen.Label, lumen.Connector, RuleIds.Max(pair), RuleIds.Min(pair),
                lumen.Connector.IsDated ? $"Connector {lumen.Label} changed" : $"Connector {lumen.Label}").Window(reckoning);
            reckoning.Windows.Add(lumen.Compromised is { } found ? Now(reckoning, window, found) : window);
        }
    }

    private static string PairFor(Reckoning reckoning, Line line, string lumen)
    {
        foreach (var infusion in reckoning.Care.Infusions)
        {
            if (infusion.Line != line.Id || infusion.Lumen != lumen) continue;
            if (infusion.Kind == InfusionKind.Continuous) return RuleIds.ConnectorContinuous;
            if (infusion.Kind is InfusionKind.ParenteralNutrition or InfusionKind.Lipid) return RuleIds.ConnectorNutrition;
        }

        return RuleIds.ConnectorIntermittent;
    }

    /// <summary>Cracked, off, contaminated or with blood inside: due the same day whatever the floor says.</summary>
    private static DueWindow Now(Reckoning reckoning, DueWindow window, LineEvent found)
    {
        var at = found.Performed is { } performed ? reckoning.EarliestOf(performed) : found.RecordedAt;
        var rule = reckoning.Policy.InForce(RuleIds.ConnectorCompromised, reckoning.Today)!;
        var last = reckoning.EndOf(reckoning.DayOf(at).PlusDays((int)rule.Value));
        if (window.Standing != WindowStanding.DateUnknown) last = Instant.Min(last, window.LateFrom);
        return window with
        {
            Standing = WindowStanding.CutShort,
            Basis = ClockBasis.Hour,
            Opens = Instant.Min(at, window.Opens),
            OpensOn = LocalDate.Min(reckoning.DayOf(at), window.OpensOn),
            Target = Instant.Min(last, at + Duration.FromHours((double)reckoning.Value(RuleIds.ConnectorCompromisedTarget))),
            LateFrom = last,
            LastDay = reckoning.LastDayBefore(last),
            Owner = Owners.Of(reckoning, CareItem.Connector, window.Line, reckoning.LastDayBefore(last)),
            Because = new WindowReason(
                found.Id, reckoning.DayOf(at), rule.Id, Says.Amount(rule.Value, rule.Unit), rule.Level, rule.Source,
                $"Connector {window.Lumen} found cracked, off or with blood inside {Says.Moment(at, reckoning.Care.Zone)}; due the same day.",
                [$"The clock before it was found: {window.Because.Sentence}"]),
        };
    }
}
