using System.Collections.Immutable;
using HomeLine.LineCare.Lines;
using NodaTime;

namespace HomeLine.LineCare.Ledger;

internal sealed partial class LineStory
{
    private static bool Resets(CareItem item, LineEvent entry, bool recorded) => ResetTable.Of(entry.Kind, item) switch
    {
        ResetEffect.Resets or ResetEffect.Starts => true,
        ResetEffect.IfRecorded or ResetEffect.ResetsNamedLumens => recorded,
        _ => false,
    };

    /// <summary>A set change or a flush that names no lumen touches the only one; with several it names what it means.</summary>
    private bool ResetsLumen(CareItem item, LineEvent entry, ImmutableArray<string> named, LumenStory lumen) =>
        Resets(item, entry, Names(named, lumen) || (named.IsDefaultOrEmpty && ImpliesEvery(item, entry)));

    private bool ImpliesEvery(CareItem item, LineEvent entry) =>
        ResetTable.Of(entry.Kind, item) == ResetEffect.ResetsNamedLumens
        && (Lumens.Length == 1 || entry.Kind == LineEventKind.SetChanged);

    private static bool Names(ImmutableArray<string> labels, LumenStory lumen)
    {
        if (labels.IsDefaultOrEmpty) return false;
        foreach (var label in labels)
            if (label == lumen.Label) return true;
        return false;
    }

    private IEnumerable<LumenStory> Named(ImmutableArray<string> labels) =>
        labels.IsDefaultOrEmpty ? Lumens : Lumens.Where(lumen => Names(labels, lumen));

    /// <summary>A moment for comparing with a hospital stay: the instant, or noon when only the day is known.</summary>
    private Instant MomentOf(LineEvent entry) => entry.Performed switch
    {
        { At: { } at } => at,
        { } moment => moment.Date.At(LocalTime.Noon).InZoneLeniently(_zone).ToInstant(),
        _ => entry.RecordedAt,
    };
}
