using System.Collections.Immutable;
using HomeLine.LineCare.Clocks;
using HomeLine.LineCare.Ledger;
using HomeLine.LineCare.Lines;

namespace HomeLine.LineCare.Recording;

/// <summary>The line is one of the patient's and still in; a line with several lumens needs the lumen named.</summary>
internal static class WhichLine
{
    /// <summary>False when the rest cannot be judged: an event of the patient as a whole, or a line that is not there.</summary>
    public static bool Check(Entering entering)
    {
        var entry = entering.Entry;
        if (entry.Line is null)
        {
            if (NeedsLine(entry.Kind)) entering.Refuse(RecordingCodes.LineUnknown, "Which line is meant?");
            return false;
        }

        if (entering.Line is not { } line)
        {
            entering.Refuse(RecordingCodes.LineUnknown, $"This patient has no line {entry.Line}: which line is meant?");
            return false;
        }

        if (entering.Before.Ended is { } ended && entry.Kind != LineEventKind.SiteChecked && !SameVisit(entering, ended))
        {
            entering.Refuse(RecordingCodes.LineRemoved, $"This line was taken out on {Says.Short(ended.Performed?.Date ?? entering.Today)}: which line is meant?");
            return false;
        }

        Lumens(entering, line, entry.LumensUsed);
        Lumens(entering, line, entry.ConnectorsChanged);
        if (line.Lumens.Length > 1 && NeedsLumen(entry))
            entering.Ask(RecordingCodes.LumenMissing, "This line has several lumens: which one?");
        return true;
    }

    /// <summary>Care written down together with the removal, for the same moment, was given before the line came out: a last dose, for example.</summary>
    private static bool SameVisit(Entering entering, LineEvent ended) =>
        entering.Entry.Performed == ended.Performed && entering.Together.Any(other => other.Id == ended.Id);

    private static void Lumens(Entering entering, Line line, ImmutableArray<string> named)
    {
        if (named.IsDefaultOrEmpty) return;
        foreach (var label in named)
            if (!line.Lumens.Any(lumen => lumen.Label == label))
                entering.Refuse(RecordingCodes.LumenUnknown, $"This line has no lumen {label}.", label);
    }

    private static bool NeedsLumen(LineEvent entry) => entry.Kind switch
    {
        LineEventKind.ConnectorChanged => entry.ConnectorsChanged.IsDefaultOrEmpty,
        LineEventKind.Flushed or LineEventKind.DoseGiven or LineEventKind.BloodDrawn or LineEventKind.BloodCultureDrawn
            or LineEventKind.SetChanged or LineEventKind.LumenOccluded or LineEventKind.LumenCleared => entry.LumensUsed.IsDefaultOrEmpty,
        LineEventKind.ConnectorCompromised => entry.LumensUsed.IsDefaultOrEmpty && entry.ConnectorsChanged.IsDefaultOrEmpty,
        _ => false,
    };

    private static bool NeedsLine(LineEventKind kind) => kind is not (
        LineEventKind.AdmittedToHospital or LineEventKind.ReturnedHome or LineEventKind.Refused or LineEventKind.Missed
        or LineEventKind.NotDone or LineEventKind.PhoneCall or LineEventKind.Recertified or LineEventKind.LabsDrawn or LineEventKind.ServiceGiven);
}
