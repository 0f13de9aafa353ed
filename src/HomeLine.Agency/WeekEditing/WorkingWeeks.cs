using System.Collections.Concurrent;
using System.Collections.Immutable;
using HomeLine.Agency.Mending;
using HomeLine.Agency.Roster;
using HomeLine.Agency.Storage;
using HomeLine.Agency.WeekPlanning;
using NodaTime;

namespace HomeLine.Agency.WeekEditing;

/// <summary>
/// The weeks people work on, kept ready in memory so that a what-if need not read and derive anything. Only a help: everything in it comes from the
/// database, and a change is always made on what is read there. Pages listen here to see each other's changes.
/// </summary>
public sealed class WorkingWeeks
{
    /// <summary>How long needs derived for a what-if may be behind the clock: our own default.</summary>
    private static readonly Duration Fresh = Duration.FromMinutes(2);

    /// <summary>How long a week as a whole is handed out again while nothing in it moved: our own default.</summary>
    private static readonly Duration AMinute = Duration.FromMinutes(1);

    private readonly ConcurrentDictionary<LocalDate, WorkingWeek> ready = new();

    /// <summary>Raised when a draft changed or a week was published, on any thread.</summary>
    public event Action<WeekChanged>? Changed;

    internal void Tell(WeekChanged change) => Changed?.Invoke(change);

    /// <summary>The week as stored, made ready; what is known of it is used while nothing has moved on.</summary>
    /// <param name="db">The database.</param>
    /// <param name="agency">The agency at hand.</param>
    /// <param name="firstDay">The week.</param>
    /// <param name="cancel">Cancels the work.</param>
    /// <param name="toLookAt">For a page: by the clock it may be a minute old. What is written is judged by the clock of its own turn.</param>
    internal async Task<WorkingWeek> OfAsync(AgencyDb db, AgencyAtHand agency, LocalDate firstDay, CancellationToken cancel, bool toLookAt = false)
    {
        agency = HeldPlaces.With(agency);
        StoredWeek? draft = HeldPlaces.Into(await WeekStore.DraftAsync(db, firstDay, cancel), agency);
        StoredWeek? published = HeldPlaces.Into(await WeekStore.PublishedAsync(db, firstDay, cancel), agency);
        StoredWeek? before = firstDay == agency.ThisWeek ? null : await WeekStore.PublishedAsync(db, agency.ThisWeek, cancel);
        WorkingWeek? known = ready.GetValueOrDefault(firstDay);
        bool sameNeeds = known is not null && (known.Published?.Version ?? 0) == (published?.Week.Version ?? 0)
            && agency.Now >= known.Agency.Now && agency.Now - known.Agency.Now < Fresh && Same(known.Agency.Roster, agency.Roster) && Same(known.Agency.Closures, agency.Closures);
        if (sameNeeds && known!.Revision == (draft?.Revision ?? 0) && (known.Agency.Now == agency.Now || (toLookAt && agency.Now - known.Agency.Now < AMinute)) && known.Agency.Held.SequenceEqual(agency.Held)) return known;
        WeekNeeds needs = sameNeeds && known!.Agency.Now == agency.Now
            ? known.Needs
            : NeedsOf(agency, [.. new[] { before, published }.OfType<StoredWeek>().Select(w => w.Week)], firstDay);
        var week = new WorkingWeek(agency, published?.Week, draft, await EditStore.OfAsync(db, firstDay, cancel), firstDay, needs);
        ready[firstDay] = week;
        return week;
    }

    /// <summary>The week as it was last made ready, if that is the revision asked for, not too long ago, and on the same roads with the same places held.</summary>
    internal WorkingWeek? Known(LocalDate firstDay, int revision, AgencyAtHand agency) =>
        ready.TryGetValue(firstDay, out WorkingWeek? week) && week.Revision == revision && agency.Now >= week.Agency.Now && agency.Now - week.Agency.Now < Fresh
            && Same(week.Agency.Closures, agency.Closures) && week.Agency.Held.SequenceEqual(agency.Held) ? week : null;

    private static WeekNeeds NeedsOf(AgencyAtHand agency, ImmutableArray<PlannedWeek> published, LocalDate firstDay)
    {
        WeekDemand demand = WeekDemand.Ahead(agency.Roster, published, firstDay, agency.Now).WithClosures(agency.Closures, agency.Roster);
        return new WeekNeeds(demand, RoadTravel.Of(agency.Roster));
    }

    private static bool Same(ImmutableArray<RoadShut> a, ImmutableArray<RoadShut> b) => a == b || StoredJson.Write(a) == StoredJson.Write(b);

    private static bool Same(AgencyRoster a, AgencyRoster b) =>
        ReferenceEquals(a, b) || ((a with { Map = b.Map }) == b && StoredJson.Write(a.Map) == StoredJson.Write(b.Map));
}

/// <summary>A draft changed, or a week was published.</summary>
/// <param name="FirstDay">The week.</param>
/// <param name="Revision">The draft's revision since; 0 when it was published.</param>
/// <param name="By">By whom.</param>
/// <param name="Words">What, in a sentence.</param>
public sealed record WeekChanged(LocalDate FirstDay, int Revision, string By, string Words);
