using HomeLine.LineCare.Ledger;

namespace HomeLine.LineCare.Recording;

/// <summary>Something ran through a line or lumen that is not to be used as usual: asked, because it may have happened, and shown to somebody licensed.</summary>
internal static class UseOfTheLine
{
    public static void Check(Entering entering)
    {
        var entry = entering.Entry;
        if (entry.Kind == LineEventKind.UseReleased)
        {
            if (entry.Performer != Lines.PerformerKind.Nurse || string.IsNullOrWhiteSpace(entry.PerformerName) || string.IsNullOrWhiteSpace(entry.Note))
                entering.Refuse(RecordingCodes.ReleaseUnsigned, "A line is released by a licensed person, by name and with a reason.");
            return;
        }

        if (entry.Kind is not (LineEventKind.Flushed or LineEventKind.DoseGiven or LineEventKind.BloodDrawn
            or LineEventKind.BloodCultureDrawn or LineEventKind.SetChanged)) return;
        foreach (var line in WhatIsDue.For(entering.Care, entering.Policy, entering.At).Locks)
            if (line.Line == entry.Line && line.Lumen is null)
                entering.Ask(RecordingCodes.LineLocked, $"This line is not to be used as usual. {line.Reason} Was it used?");
        foreach (var lumen in entering.Before.Lumens)
            if (lumen.Occluded && Names(entering, lumen))
                entering.Ask(RecordingCodes.LumenOccluded, $"Lumen {lumen.Label} is marked occluded: was it this lumen, and has it been cleared?", lumen.Label);
    }

    private static bool Names(Entering entering, LumenStory lumen) => entering.Entry.LumensUsed.IsDefaultOrEmpty
        ? entering.Before.Lumens.Length == 1
        : entering.Entry.LumensUsed.Contains(lumen.Label);
}
