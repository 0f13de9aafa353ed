using System.Collections.Immutable;
using HomeLine.LineCare.Clocks;
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
        var places = Places(entries, CivilDays.Of(zone), Voided(entries));
        places.RemoveAll(place => place.At > now);
        return places.ConvertAll(place => place.Entry);
    }

    /// <summary>Every entry that counts, whenever it was performed, each with its place, in order.</summary>
    internal static List<Place> Places(ImmutableArray<LineEvent> entries, CivilDays days, HashSet<EventId>? voided)
    {
        var places = new List<Place>(entries.Length);
        var isOrdered = true;
        foreach (var entry in entries)
        {
            if (voided is not null && voided.Contains(entry.Id)) continue;
            var place = new Place(entry, days);
            isOrdered = isOrdered && (places.Count == 0 || places[^1].CompareTo(place) <= 0);
            places.Add(place);
        }

        if (!isOrdered) places.Sort();
        return places;
    }

    /// <summary>Every entry that another one names as voided, whether or not the naming entry was itself voided later:
    /// a correction of a correction does not bring the first mistake back. Empty when there is none.</summary>
    internal static HashSet<EventId>? Voided(ImmutableArray<LineEvent> entries)
    {
        HashSet<EventId>? voided = null;
        foreach (var entry in entries)
            if (entry.Voids is { } mistaken) (voided ??= []).Add(mistaken);
        return voided;
    }

    /// <summary>Where an entry stands in the order. An entry of which only the day is known has happened once its day has begun.</summary>
    internal readonly struct Place(LineEvent entry, CivilDays days) : IComparable<Place>
    {
        public LineEvent Entry => entry;

        public Instant At { get; } = entry.Performed is { } performed ? performed.At ?? days.StartOf(performed.Date) : entry.RecordedAt;

        private bool HasTime => entry.Performed is not { At: null };

        public int CompareTo(Place other)
        {
            var order = At.CompareTo(other.At);
            if (order == 0) order = HasTime.CompareTo(other.HasTime);
            if (order == 0) order = ((int)Entry.Kind).CompareTo((int)other.Entry.Kind);
            if (order == 0) order = Entry.RecordedAt.CompareTo(other.Entry.RecordedAt);
            return order == 0 ? string.CompareOrdinal(Entry.Id.Value, other.Entry.Id.Value) : order;
        }
    }
}
