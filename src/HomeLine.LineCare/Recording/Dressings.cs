using HomeLine.LineCare.Clocks;
using HomeLine.LineCare.Ledger;
using HomeLine.LineCare.Lines;
using HomeLine.LineCare.Windows;

namespace HomeLine.LineCare.Recording;

/// <summary>What was put on the site: said, allowed for this patient, and not needlessly early.</summary>
internal static class Dressings
{
    public static void Check(Entering entering)
    {
        var entry = entering.Entry;
        if (entry.Kind is not (LineEventKind.DressingChanged or LineEventKind.PortAccessed or LineEventKind.Inserted)) return;
        Material(entering);
        if (entry.Kind != LineEventKind.Inserted) Early(entering);
        if (entry.Dressing != DressingKind.AntisepticFilm) return;
        var answer = Materials.ChlorhexidineAllowed(entering.Care, entering.Policy, entering.Day);
        if (!answer.Allowed) entering.Ask(DecisionCodes.Chlorhexidine, $"{answer.Reason} Was this really put on? Then it has to come off.");
        else if (answer.Ask) entering.Ask(DecisionCodes.BirthDateMissing, answer.Reason);
    }

    private static void Material(Entering entering)
    {
        var entry = entering.Entry;
        var line = entering.Line!;
        switch (entry.Kind, entry.Dressing)
        {
            case (LineEventKind.PortAccessed, null or DressingKind.None):
                entering.Refuse(RecordingCodes.NeedleWithoutDressing,
                    "Needle, dressing, extension and connector are changed together: which dressing went on?");
                break;
            case (LineEventKind.Inserted, null):
                entering.Ask(RecordingCodes.MaterialUnknown, "Which dressing was put on? Until it is known it counts as gauze.");
                break;
            case (LineEventKind.DressingChanged, null):
                entering.Ask(RecordingCodes.MaterialUnknown, "Which dressing was put on? Until it is known it counts as the kind that was there.");
                break;
            case (LineEventKind.DressingChanged or LineEventKind.Inserted, DressingKind.None) when line.Kind != LineKind.Port
                && !(line is { Kind: LineKind.Tunneled, ExitSiteHealed: true })
                && !entering.HasOrder(order => order.Id == entry.Order):
                entering.Refuse(RecordingCodes.BareSite,
                    "The exit site is not documented as healed: it needs a dressing, or an order that none is needed.");
                break;
        }
    }

    /// <summary>A change before its window opens without a broken seal costs skin; the reason is asked.</summary>
    private static void Early(Entering entering)
    {
        if (entering.Entry.Performed is not { At: { } at } || entering.Before.BrokenSeals.Length > 0 || entering.Entry.Note.Length > 0) return;
        var item = entering.Entry.Kind == LineEventKind.PortAccessed ? CareItem.PortNeedle : CareItem.Dressing;
        if (entering.WindowBefore(item) is not { Standing: WindowStanding.Running } window || at >= window.Opens) return;
        entering.Ask(RecordingCodes.BeforeItOpens,
            $"The seal is not reported broken and the window opens {Says.Short(window.OpensOn)}: why is it changed now? Each needless change costs skin.");
    }
}
