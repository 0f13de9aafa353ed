using System.Collections.Immutable;
using HomeLine.LineCare.Ledger;
using HomeLine.LineCare.Policy;
using HomeLine.LineCare.Windows;
using NodaTime;

namespace HomeLine.LineCare.Calendar;

/// <summary>Walks through the weeks ahead: takes the window that ends soonest, assumes its care, and asks the clocks again.</summary>
internal sealed class LookingAhead
{
    /// <summary>A clock that comes round more often than this is shown no further: nobody looks weeks ahead by the hour.</summary>
    private const int MostADay = 1;

    private readonly PatientCare _care;
    private readonly PolicyBook _policy;
    private readonly Instant _now;
    private readonly LocalDate _through;

    private readonly List<(ClockKey Key, WindowAhead Window)> _windows = [];

    /// <summary>Clocks that no assumed care moves; their present window is shown once.</summary>
    private readonly HashSet<ClockKey> _leftAlone = [];

    private PatientCare _assumed;
    private int _count;

    public LookingAhead(PatientCare care, PolicyBook policy, Instant now, LocalDate through)
    {
        (_care, _policy, _now, _through) = (care, policy, now, through);
        _assumed = care with { Events = [.. OrderedLedger.Read(care.Events, care.Zone, now)] };
    }

    public IReadOnlyList<(ClockKey Key, WindowAhead Window)> Windows => _windows;

    public Hold? OnHold { get; private set; }

    public void Walk()
    {
        var clock = _now;
        var end = _care.Zone.AtStartOfDay(_through.PlusDays(1)).ToInstant();
        var answer = Answer(clock);
        OnHold = answer.OnHold;
        var running = answer.Windows;
        foreach (var window in answer.Windows)
            if (!AssumedCare.Repeats(window, _care)) List(window, null);
        while (Soonest(answer, clock) is { } next && next.At < end)
        {
            clock = next.At;
            var before = Answer(clock);
            if (before.Windows.FirstOrDefault(window => KeyOf(window) == KeyOf(next.Window)) is not { } due)
            {
                answer = before;
                continue;
            }

            var entry = AssumedCare.For(due, _assumed, clock, ++_count);
            var with = _assumed with { Events = _assumed.Events.Add(entry) };
            var after = WhatIsDue.For(with, _policy, clock, DaysLeft(clock));
            if (after.Windows.Any(window => IsSame(window, due)))
            {
                _leftAlone.Add(KeyOf(due));
                continue;
            }

            _assumed = with;
            ListDone(before, after, clock);
            if (CountOf(KeyOf(due)) > MostADay * DaysLeft(_now)) _leftAlone.Add(KeyOf(due));
            answer = after;
        }

        foreach (var window in answer.Windows)
            if (AssumedCare.Repeats(window, _care)) List(window, null);
        PutFirst(running);
    }

    /// <summary>What runs now is always shown, also when other care closes it before it opens, or a removal makes it needless.</summary>
    private void PutFirst(ImmutableArray<DueWindow> running)
    {
        var place = 0;
        foreach (var window in running)
            if (IsWithin(window) && !_windows.Exists(listed => IsThat(listed.Window.Window, window)))
                _windows.Insert(place++, (KeyOf(window), new WindowAhead(window, null, false)));
    }

    private static bool IsThat(DueWindow listed, DueWindow running) => listed.Standing == WindowStanding.DateUnknown && running.Standing == WindowStanding.DateUnknown
        ? KeyOf(listed) == KeyOf(running)
        : IsSame(listed, running);

    /// <summary>What the assumed care closed: windows that were open and now are gone or run from it.</summary>
    private void ListDone(CareAnswer before, CareAnswer after, Instant at)
    {
        var left = after.Windows.ToLookup(KeyOf);
        foreach (var window in before.Windows)
        {
            if (!AssumedCare.Repeats(window, _care) || window.Opens > at) continue;
            if (left[KeyOf(window)].Any(same => IsSame(same, window))) continue;
            var day = at.InZone(_care.Zone).Date;
            List(window, at == window.LateFrom ? window.LastDay : day);
        }
    }

    private void List(DueWindow window, LocalDate? assumedOn)
    {
        if (!IsWithin(window)) return;
        var foreseen = AssumedCare.IsAssumed(window.Because.Anchor);
        _windows.Add((KeyOf(window), new WindowAhead(window, assumedOn, foreseen)));
    }

    private int CountOf(ClockKey key) => _windows.Count(listed => listed.Key == key);

    private bool IsWithin(DueWindow window) => window.OpensOn <= _through || window.LastDay <= _through;

    /// <summary>The window whose care is assumed next, and when. Nothing is assumed while planning is on hold.</summary>
    private (DueWindow Window, Instant At)? Soonest(CareAnswer answer, Instant clock)
    {
        (DueWindow Window, Instant At)? soonest = null;
        foreach (var window in answer.Windows)
        {
            if (!AssumedCare.Repeats(window, _care) || _leftAlone.Contains(KeyOf(window))) continue;
            if (AfterHolds(Instant.Max(clock, AssumedCare.MomentFor(window, _care.Zone)), answer.OnHold) is not { } at) continue;
            if (soonest is null || at < soonest.Value.At) soonest = (window, at);
        }

        return soonest;
    }

    private Instant? AfterHolds(Instant at, Hold? inForce)
    {
        if (inForce is { Through: null }) return null;
        for (var day = at.InZone(_care.Zone).Date; ; day = at.InZone(_care.Zone).Date)
        {
            var hold = _care.Holds.FirstOrDefault(h => h.From <= day && (h.Through is not { } last || last >= day));
            if (hold is null) return at;
            if (hold.Through is not { } ends) return null;
            at = ends.PlusDays(1).At(AssumedCare.Midday).InZoneLeniently(_care.Zone).ToInstant();
        }
    }

    private CareAnswer Answer(Instant at) => WhatIsDue.For(_assumed, _policy, at, DaysLeft(at));

    private int DaysLeft(Instant at) => Math.Max(0, Period.DaysBetween(at.InZone(_care.Zone).Date, _through));

    private static bool IsSame(DueWindow one, DueWindow other) =>
        KeyOf(one) == KeyOf(other) && one.Because.Anchor == other.Because.Anchor && one.LastDay == other.LastDay;

    /// <summary>Ordered days of one order share a clock; the day tells them apart.</summary>
    private static ClockKey KeyOf(DueWindow window) => new(window.Item, window.Line, window.Lumen, window.Order);
}
