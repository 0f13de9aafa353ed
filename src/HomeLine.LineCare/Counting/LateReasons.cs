using HomeLine.LineCare.Ledger;
using HomeLine.LineCare.Windows;
using NodaTime;

namespace HomeLine.LineCare.Counting;

/// <summary>Why care was late, read from what the ledger says between the opening of its window and the moment it was done.</summary>
internal sealed class LateReasons(PatientCare care, List<OrderedLedger.Place> places)
{
    /// <summary>The first that applies, in this order: away, refused, visit missed, not done, clock cut short, nothing recorded.</summary>
    public LateBecause Of(DueWindow window, Instant done)
    {
        if (IsAway(window, done)) return LateBecause.Away;
        if (Says(LineEventKind.Refused)) return LateBecause.Refused;
        if (Says(LineEventKind.Missed)) return LateBecause.VisitMissed;
        if (Says(LineEventKind.NotDone)) return LateBecause.NotDone;
        return window.SealClass > 0 || window.Standing == WindowStanding.CutShort ? LateBecause.CutShort : LateBecause.NotRecorded;

        bool Says(LineEventKind kind) => places.Exists(place =>
            place.Entry.Kind == kind && place.At >= window.Opens && place.At <= done && (place.Entry.Line is null || window.Line is null || place.Entry.Line == window.Line));
    }

    private bool IsAway(DueWindow window, Instant done)
    {
        LocalDate lastDay = window.LastDay, doneOn = done.InZone(care.Zone).Date;
        if (care.Holds.Any(hold => hold.From <= doneOn && (hold.Through is not { } end || end >= lastDay))) return true;
        var isAway = false;
        foreach (var place in places)
        {
            if (place.At > window.LateFrom) break;
            isAway = place.Entry.Kind switch { LineEventKind.AdmittedToHospital => true, LineEventKind.ReturnedHome => false, _ => isAway };
        }

        return isAway;
    }
}
