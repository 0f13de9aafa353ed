using System.Collections.Immutable;
using NodaTime;

namespace HomeLine.LineCare.Ledger;

/// <summary>
/// The ledger as the clocks read it: voided entries left out, what has not happened yet left out, the rest in the order performed.
/// The order does not depend on the order of entry: the instant, wherever the patient was staying (an entry without a time stands at the
/// start of its day at home, before those with a time; one without any date at the moment it was entered), then kind, then entry time,
/// then identifier.
/// </summary>
public static class OrderedLedger
{
    /// <summary>Reads a ledger as of an instant.</summary>
    /// <param name="entries">All entries, in any order, corrections among them.</param>
    /// <param name="zone">Zone of the patient's home.</param>
    /// <param name="now">Entries performed after this are left out.</param>
    public static IReadOnlyList<LineEvent> Read(ImmutableArray<LineEvent> entries, DateTimeZone zone, Instant now)
    {
        ArgumentNullException.ThrowIfNull(zone);
        var voided = Voided(entries);
        var today = now.InZone(zone).Date;
        var keys = new List<Key>(entries.Length);
        foreach (var entry in entries)
        {
            if (voided is not null && voided.Contains(entry.Id)) continue;
            var key = new Key(entry, zone);
            if (key.HasTime ? key.At <= now : entry.Performed!.Value.Date <= today) keys.Add(key);
        }

        keys.Sort();
        return keys.ConvertAll(key => key.Entry);
    }

    /// <summary>Every entry that another one names as voided, whether or not the naming entry was itself voided later:
    /// a correction of a correction does not bring the first mistake back.</summary>
    private static HashSet<EventId>? Voided(ImmutableArray<LineEvent> entries)
    {
        HashSet<EventId>? voided = null;
        foreach (var entry in entries)
            if (entry.Voids is { } mistaken) (voided ??= []).Add(mistaken);
        return voided;
    }

    private readonly struct Key : IComparable<Key>
    {
        public Key(LineEvent entry, DateTimeZone zone)
        {
            Entry = entry;
            HasTime = entry.Performed is not { At: null };
            At = entry.Performed is { } performed ? performed.At ?? zone.AtStartOfDay(performed.Date).ToInstant() : entry.RecordedAt;
        }

        public LineEvent Entry { get; }

        public Instant At { get; }

        public bool HasTime { get; }

        public int CompareTo(Key other)
        {
            var order = At.CompareTo(other.At);
            if (order == 0) order = HasTime.CompareTo(other.HasTime);
            if (order == 0) order = Entry.Kind.CompareTo(other.Entry.Kind);
            if (order == 0) order = Entry.RecordedAt.CompareTo(other.Entry.RecordedAt);
            return order == 0 ? string.CompareOrdinal(Entry.Id.Value, other.Entry.Id.Value) : order;
        }
    }
}
