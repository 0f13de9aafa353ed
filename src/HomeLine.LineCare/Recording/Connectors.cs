using HomeLine.LineCare.Clocks;
using HomeLine.LineCare.Ledger;
using HomeLine.LineCare.Lines;
using HomeLine.LineCare.Policy;
using HomeLine.LineCare.Windows;

namespace HomeLine.LineCare.Recording;

/// <summary>Connectors: each change opens the line, so one that comes too soon or again and again is asked about, unless something made it needed.</summary>
internal static class Connectors
{
    public static void Check(Entering entering)
    {
        var entry = entering.Entry;
        if (entering.Line!.Kind == LineKind.Port || entry.ConnectorsChanged.IsDefaultOrEmpty || entry.Performed is null || entry.Note.Length > 0) return;
        if (entry.Kind == LineEventKind.BloodCultureDrawn) return;
        foreach (var label in entry.ConnectorsChanged)
        {
            if (entering.Before.Lumen(label) is not { Compromised: null } || CultureFollows(entering, label)) continue;
            if (!Often(entering, label)) Soon(entering, label);
        }
    }

    private static bool Often(Entering entering, string lumen)
    {
        var within = (int)entering.Value(RuleIds.ConnectorOftenWithin);
        var most = (int)entering.Value(RuleIds.ConnectorOftenCount);
        var from = entering.Day.PlusDays(-within);
        var changes = 1;
        foreach (var other in OrderedLedger.Read(entering.Care.Events, entering.Care.Zone, entering.Now))
            if (other.Line == entering.Entry.Line && other.Id != entering.Entry.Id && other.Id != entering.Entry.Voids && other.Performed is { } performed
                && performed.Date >= from && performed.Date <= entering.Day
                && other.Kind is LineEventKind.ConnectorChanged or LineEventKind.DressingChanged
                && !other.ConnectorsChanged.IsDefaultOrEmpty && other.ConnectorsChanged.Contains(lumen)) changes++;
        if (changes < most) return false;
        entering.Ask(RecordingCodes.ConnectorTooOften,
            $"Connector {lumen} is changed for the {Ordinal(changes)} time in {within} days and nothing says why: what made it needed?", lumen);
        return true;
    }

    private static void Soon(Entering entering, string lumen)
    {
        if (entering.Entry.Performed is not { At: { } at }) return;
        if (entering.WindowBefore(CareItem.Connector, lumen) is not { Standing: WindowStanding.Running } window || at >= window.Opens) return;
        entering.Ask(RecordingCodes.ConnectorTooSoon,
            $"Connector {lumen} may be changed from {Says.Moment(window.Opens, entering.Care.Zone)} unless it was off, cracked or soiled: what made it needed?", lumen);
    }

    /// <summary>A fresh connector belongs before a blood culture.</summary>
    private static bool CultureFollows(Entering entering, string lumen) =>
        entering.Together.Any(other => other.Kind == LineEventKind.BloodCultureDrawn && other.Line == entering.Entry.Line
            && (other.LumensUsed.IsDefaultOrEmpty || other.LumensUsed.Contains(lumen)));

    private static string Ordinal(int number) => number switch
    {
        2 => "second",
        3 => "third",
        4 => "fourth",
        _ => string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{number}th"),
    };
}
