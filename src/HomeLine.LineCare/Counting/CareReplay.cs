using System.Collections.Immutable;
using HomeLine.LineCare.Clocks;
using HomeLine.LineCare.Ledger;
using HomeLine.LineCare.Lines;
using HomeLine.LineCare.Policy;
using HomeLine.LineCare.Windows;
using NodaTime;

namespace HomeLine.LineCare.Counting;

/// <summary>
/// Was care in time? The ledger is lived through once more, entry by entry: what was due just before an entry and is no longer due, or due later, just after
/// it was done by it. So a rate is a recount of the ledger, not a tally that somebody kept.
/// </summary>
public static class CareReplay
{
    /// <summary>
    /// A nurse's care that was done in the span, that stood late at its end, or that went by undone. Care of caregivers and clinics is left out.
    /// Corrected entries count as corrected.
    /// </summary>
    /// <param name="care">The patient.</param>
    /// <param name="from">First day, included.</param>
    /// <param name="through">Last day, included; days after today have no entries yet.</param>
    /// <param name="policy">The policy book.</param>
    /// <param name="now">The instant at which is counted.</param>
    public static ImmutableArray<TimedCare> Of(PatientCare care, LocalDate from, LocalDate through, PolicyBook policy, Instant now)
    {
        ArgumentNullException.ThrowIfNull(care);
        ArgumentNullException.ThrowIfNull(policy);
        var days = CivilDays.Of(care.Zone);
        Instant begin = days.StartOf(from), end = Instant.Min(now, days.StartOf(through.PlusDays(1)));
        if (end <= begin) return [];
        var places = OrderedLedger.Places(care.Events, days, OrderedLedger.Voided(care.Events));
        places.RemoveAll(place => place.At >= end);
        var lived = care with { Events = [.. places.Where(place => place.At < begin).Select(place => place.Entry)] };
        var found = ImmutableArray.CreateBuilder<TimedCare>();
        var why = new LateReasons(care, places);
        var recorded = places.Where(place => place.At < begin && place.Entry.Order is not null).Select(place => place.Entry.Order!).ToHashSet(StringComparer.Ordinal);
        CareAnswer last = WhatIsDue.For(lived, policy, begin);
        foreach (var place in places.Where(place => place.At >= begin))
        {
            CareAnswer before = WhatIsDue.For(lived, policy, place.At);
            found.AddRange(WentBy(last, before, begin, place.At).Where(IsKnown).Select(window => new TimedCare(window, CareTiming.WentBy, null, why.Of(window, window.LateFrom))));
            lived = lived.Recording(place.Entry);
            CareAnswer after = WhatIsDue.For(lived, policy, place.At);
            if (IsCare(place.Entry.Kind))
                foreach (DueWindow window in Done(before, after))
                {
                    CareTiming timing = IsKnown(window) ? Timing(window, place.At) : CareTiming.DateWasUnknown;
                    found.Add(new TimedCare(window, timing, place.At, timing == CareTiming.Late ? why.Of(window, place.At) : LateBecause.NotLate));
                }

            if (place.Entry.Order is { } order) recorded.Add(order);
            last = after;
        }

        CareAnswer atEnd = WhatIsDue.For(lived, policy, end);
        found.AddRange(WentBy(last, atEnd, begin, end).Where(IsKnown).Select(window => new TimedCare(window, CareTiming.WentBy, null, why.Of(window, window.LateFrom))));
        found.AddRange(atEnd.Windows.Where(window => IsOurs(window) && window.IsLateAt(end)).Select(window => new TimedCare(window, CareTiming.StillOpen, null, why.Of(window, end))));
        return found.ToImmutable();

        // A roster that was brought along has the last date of each order and not what came before it: those days cannot be judged.
        bool IsKnown(DueWindow window) => window.Standing != WindowStanding.Ordered || window.Order is not { } order || recorded.Contains(order);
    }

    private static CareTiming Timing(DueWindow window, Instant at) =>
        window.Standing == WindowStanding.DateUnknown ? CareTiming.DateWasUnknown
        : window.IsLateAt(at) ? CareTiming.Late
        : at < window.Opens ? CareTiming.Early
        : CareTiming.InWindow;

    /// <summary>What an entry did: due before it, and after it not at all or later.</summary>
    private static IEnumerable<DueWindow> Done(CareAnswer before, CareAnswer after) => WhatWouldMove.Between(before, after)
        .Where(moved => moved.Before is { } was && IsOurs(was) && (moved.After is not { } will || will.LateFrom > was.LateFrom || was.Standing == WindowStanding.DateUnknown))
        .Select(moved => moved.Before!);

    /// <summary>Ordered days that fell late since the span began and are no longer listed although nothing was recorded. Those of before stood late at the end of another span.</summary>
    private static IEnumerable<DueWindow> WentBy(CareAnswer earlier, CareAnswer later, Instant begin, Instant at) => WhatWouldMove.Between(earlier, later)
        .Where(moved => moved is { Before: { Standing: WindowStanding.Ordered } was, After: null } && IsOurs(was) && was.LateFrom >= begin && was.IsLateAt(at))
        .Select(moved => moved.Before!);

    private static bool IsOurs(DueWindow window) => window.Owner == PerformerKind.Nurse;

    /// <summary>Entries that are care; others start, stop or shorten clocks without any having been given.</summary>
    private static bool IsCare(LineEventKind kind) => kind is LineEventKind.DressingChanged or LineEventKind.PortAccessed or LineEventKind.PortDeaccessed
        or LineEventKind.ConnectorChanged or LineEventKind.SetChanged or LineEventKind.Flushed or LineEventKind.DoseGiven or LineEventKind.BloodDrawn
        or LineEventKind.BloodCultureDrawn or LineEventKind.LabsDrawn or LineEventKind.Measured or LineEventKind.SiteChecked or LineEventKind.LumenCleared
        or LineEventKind.Recertified or LineEventKind.ServiceGiven;
}
