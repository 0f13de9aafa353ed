using System.Collections.Immutable;
using HomeLine.LineCare.Clocks;
using HomeLine.LineCare.Ledger;
using HomeLine.LineCare.Policy;
using HomeLine.LineCare.Windows;
using NodaTime;

namespace HomeLine.LineCare.Calendar;

/// <summary>Puts past care beside the window it was done in, by the policy of that day: a later policy never makes it late.</summary>
internal sealed class PastWindows(PatientCare care, PolicyBook policy)
{
    public ImmutableArray<(ClockKey Key, PastCare Care)> Of(ImmutableArray<PastEvent> events)
    {
        var past = ImmutableArray.CreateBuilder<(ClockKey, PastCare)>();
        foreach (var happened in events)
        {
            if (happened.Touched.IsEmpty) continue;
            var windows = happened.Touched.Any(touched => touched.Change == ClockChange.Reset) ? JustBefore(happened.Entry) : [];
            foreach (var touched in happened.Touched)
            {
                var key = new ClockKey(touched.Item, touched.Line, touched.Lumen, touched.Order);
                var window = windows.FirstOrDefault(w => new ClockKey(w.Item, w.Line, w.Lumen, w.Order) == key);
                var when = touched.Change == ClockChange.Reset ? WhenDone(happened.Entry, window) : DoneWhen.NoWindow;
                past.Add((key, new PastCare(happened.Entry, touched.Change, when, Sentence(happened.Entry, touched.Change, when, window))));
            }
        }

        return past.ToImmutable();
    }

    private ImmutableArray<DueWindow> JustBefore(LineEvent entry)
    {
        if (entry.Performed is not { } performed) return [];
        var at = performed.At ?? care.Zone.AtStartOfDay(performed.Date).ToInstant();
        return WhatIsDue.For(care, policy, at - Duration.Epsilon).Windows;
    }

    private static DoneWhen WhenDone(LineEvent entry, DueWindow? window)
    {
        if (window is null || window.Standing == WindowStanding.DateUnknown || entry.Performed is not { } performed) return DoneWhen.NoWindow;
        var early = performed.At is { } at ? at < window.Opens : performed.Date < window.OpensOn;
        var late = performed.At is { } moment && window.Basis == ClockBasis.Hour ? moment > window.LateFrom : performed.Date > window.LastDay;
        return early ? DoneWhen.BeforeItOpened : late ? DoneWhen.Late : DoneWhen.InsideTheWindow;
    }

    private string Sentence(LineEvent entry, ClockChange change, DoneWhen when, DueWindow? window)
    {
        var on = entry.Performed is { } performed ? Says.When(performed, care.Zone) : "without a date";
        var what = change switch
        {
            ClockChange.Started => "started this clock",
            ClockChange.Reset => "reset this clock",
            ClockChange.CutShort => "cut this clock short: a deadline runs from it",
            ClockChange.Ended => "ended this clock",
            ClockChange.LostItsDate => "took this clock's date away until somebody reads it off or does the care",
            _ => throw new ArgumentOutOfRangeException(nameof(change), change, "No such change."),
        };
        return $"{on}{Says.By(entry)}{Says.Trust(entry.Certainty)}: {what}{Standing(when, window)}.";
    }

    private static string Standing(DoneWhen when, DueWindow? window) => when switch
    {
        DoneWhen.NoWindow => "",
        DoneWhen.BeforeItOpened => $"; before its window of {Says.Short(window!.OpensOn)} to {Says.Short(window.LastDay)}",
        DoneWhen.InsideTheWindow => $"; inside its window of {Says.Short(window!.OpensOn)} to {Says.Short(window.LastDay)}",
        DoneWhen.Late => $"; after its window ended {Says.Short(window!.LastDay)}",
        _ => throw new ArgumentOutOfRangeException(nameof(when), when, "No such standing."),
    };
}
