using HomeLine.LineCare.Clocks;
using HomeLine.LineCare.Ledger;
using HomeLine.LineCare.Lines;

namespace HomeLine.LineCare.Recording;

/// <summary>When it was done: never after now, and to the minute where a clock counts hours.</summary>
internal static class Moments
{
    public static void Check(Entering entering)
    {
        var entry = entering.Entry;
        if (entry.Performed is not { } performed)
        {
            if (Starts(entry)) entering.Ask(RecordingCodes.DateMissing, "No date: it starts no clock, and the care stays due at the first contact. Is the date written on the dressing?");
            return;
        }

        if (performed.Date > entering.Today || performed.At > entering.Now)
            entering.Refuse(RecordingCodes.InTheFuture, $"{Says.When(performed, entering.Care.Zone)} lies in the future: record it once it is done.");
        if (entering.Line is { InsertedOn: { } placed } && performed.Date < placed)
            entering.Ask(RecordingCodes.BeforeInsertion, $"{Says.Short(performed.Date)} is before the line was placed on {Says.Short(placed)}: which line is meant?");
        if (!Starts(entry)) return;
        if (entry.Certainty == Certainty.Guess)
            entering.Tell(RecordingCodes.DateGuessed, "A guessed date starts no clock: the care stays due at the first contact.");
        if (performed.At is null && CountsHours(entry))
            entering.Ask(RecordingCodes.TimeMissing, "This clock counts hours: what time was it? Without one it counts from the moment that makes it due soonest.");
    }

    private static bool Starts(LineEvent entry)
    {
        foreach (var item in ResetTable.LineItems)
            if (ResetTable.Of(entry.Kind, item) is ResetEffect.Resets or ResetEffect.Starts or ResetEffect.ResetsNamedLumens) return true;
        return false;
    }

    /// <summary>A set, a connector's floor, and gauze over a port needle count elapsed hours.</summary>
    private static bool CountsHours(LineEvent entry) =>
        entry.Kind is LineEventKind.SetChanged or LineEventKind.ConnectorChanged or LineEventKind.BloodCultureDrawn
        || !entry.ConnectorsChanged.IsDefaultOrEmpty
        || (entry.Kind == LineEventKind.PortAccessed && entry.Dressing is DressingKind.Gauze or DressingKind.GauzeUnderFilm);
}
