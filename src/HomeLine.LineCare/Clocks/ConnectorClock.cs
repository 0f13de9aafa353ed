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
            var window = new WindowDraft(
                CareItem.Connector, story.Line.Id, lumen.Label, lumen.Connector, RuleFor(reckoning, story.Line, lumen.Label),
                lumen.Connector.IsDated ? "Connector {0} changed" : "Connector {0}")
            { About = lumen.Label }.Window(reckoning);
            reckoning.Windows.Add(lumen.Compromised is { } found ? Now(reckoning, window, found) : window);
        }
    }

    private static ClockRule RuleFor(Reckoning reckoning, Line line, string lumen)
    {
        foreach (var infusion in reckoning.Care.Infusions)
        {
            if (infusion.Line != line.Id || infusion.Lumen != lumen) continue;
            if (infusion.Kind == InfusionKind.Continuous) return ClockRule.ConnectorContinuous;
            if (infusion.Kind is InfusionKind.ParenteralNutrition or InfusionKind.Lipid) return ClockRule.ConnectorNutrition;
        }

        return ClockRule.ConnectorIntermittent;
    }

    /// <summary>Cracked, off, contaminated or with blood inside: due the same day whatever the floor says.</summary>
    private static DueWindow Now(Reckoning reckoning, DueWindow window, LineEvent found)
    {
        var at = found.Performed is { } performed ? reckoning.EarliestOf(performed) : found.RecordedAt;
        var rule = reckoning.Policy.InForce(RuleIds.ConnectorCompromised, reckoning.Today)!;
        var last = reckoning.EndOf(reckoning.DayOf(at).PlusDays((int)rule.Value));
        if (window.Standing != WindowStanding.DateUnknown) last = Instant.Min(last, window.LateFrom);
        var lastDay = reckoning.LastDayBefore(last);
        return window with
        {
            Standing = WindowStanding.CutShort,
            Basis = ClockBasis.Hour,
            Opens = Instant.Min(at, window.Opens),
            OpensOn = LocalDate.Min(reckoning.DayOf(at), window.OpensOn),
            Target = Instant.Min(last, at + Duration.FromHours((double)reckoning.Value(RuleIds.ConnectorCompromisedTarget))),
            LateFrom = last,
            LastDay = lastDay,
            Owner = Owners.Of(reckoning, CareItem.Connector, window.Line, lastDay),
            Facts = Why.Of(found, (window, rule, at, reckoning.Days), static (by, f) => new WindowReason(
                by!.Id, f.Days.DayOf(f.at), f.rule.Id, Says.Amount(f.rule.Value, f.rule.Unit), f.rule.Level, f.rule.Source,
                $"Connector {f.window.Lumen} found cracked, off or with blood inside {f.Days.Told(f.at)}; due the same day.",
                [$"The clock before it was found: {f.window.Because.Sentence}"])),
        };
    }
}
