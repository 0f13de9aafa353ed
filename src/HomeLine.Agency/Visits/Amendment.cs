using System.Collections.Immutable;
using HomeLine.LineCare.Ledger;
using NodaTime;

namespace HomeLine.Agency.Visits;

/// <summary>
/// What an amended visit changes in the ledger: entries that stay right are left alone, each wrong one is voided by the entry that takes its place,
/// and one that never happened by an entry that moves no clock. Nothing is deleted. Pure.
/// </summary>
/// <param name="Kept">Entries of the old record that stay.</param>
/// <param name="Added">New entries, corrections among them.</param>
internal sealed record Amendment(ImmutableArray<EventId> Kept, ImmutableArray<LineEvent> Added)
{
    public static Amendment Of(ImmutableArray<LineEvent> before, ImmutableArray<LineEvent> after, string reason, string record, Instant recordedAt)
    {
        var old = before.ToList();
        var added = new List<LineEvent>();
        var kept = ImmutableArray.CreateBuilder<EventId>();
        foreach (LineEvent one in after)
        {
            if (old.FirstOrDefault(o => IsSame(o, one)) is { } same)
            {
                kept.Add(same.Id);
                old.Remove(same);
            }
            else
            {
                added.Add(one);
            }
        }

        for (int i = 0; i < added.Count; i++)
        {
            LineEvent one = added[i];
            LineEvent? mistaken = old.FirstOrDefault(o => o.Kind == one.Kind && o.Line == one.Line) ?? old.FirstOrDefault(o => o.Line == one.Line && MovesNothing(one.Kind));
            if (mistaken is null) continue;
            old.Remove(mistaken);
            added[i] = one with { Voids = mistaken.Id, Note = $"{one.Note} Amended: {reason}".Trim() };
        }

        foreach (LineEvent left in old)
        {
            added.Add(left with
            {
                Id = new EventId($"{record}-void-{left.Id}"),
                Kind = LineEventKind.NotDone,
                RecordedAt = recordedAt,
                Dressing = null,
                SecurementChanged = false,
                ConnectorsChanged = [],
                LumensUsed = [],
                OutsideLengthCm = null,
                ArmGirthCm = null,
                Seal = SealFinding.None,
                Order = null,
                Voids = left.Id,
                Note = $"Entered by mistake. Amended: {reason}",
            });
        }

        return new Amendment(kept.ToImmutable(), [.. added]);
    }

    private static bool MovesNothing(LineEventKind kind) => kind is LineEventKind.NotDone or LineEventKind.Missed or LineEventKind.Refused;

    /// <summary>The same care at the same moment; who wrote it down and when does not matter, and an answer added to the note neither.</summary>
    private static bool IsSame(LineEvent one, LineEvent other) =>
        one.Kind == other.Kind && one.Line == other.Line && one.Performed == other.Performed && one.Performer == other.Performer
        && one.Dressing == other.Dressing && one.SecurementChanged == other.SecurementChanged && one.OutsideLengthCm == other.OutsideLengthCm
        && one.ArmGirthCm == other.ArmGirthCm && one.Seal == other.Seal && one.Order == other.Order
        && one.ConnectorsChanged.SequenceEqual(other.ConnectorsChanged) && one.LumensUsed.SequenceEqual(other.LumensUsed)
        && one.Note.StartsWith(other.Note, StringComparison.Ordinal);
}
