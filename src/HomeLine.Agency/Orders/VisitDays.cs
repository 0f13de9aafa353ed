using System.Collections.Immutable;
using HomeLine.Agency.WeekPlanning;
using HomeLine.LineCare;
using HomeLine.LineCare.Ledger;
using HomeLine.LineCare.Lines;
using NodaTime;

namespace HomeLine.Agency.Orders;

/// <summary>The days on which a nurse of the agency was there, or is planned to be. Pure.</summary>
public static class VisitDays
{
    /// <summary>Days of the ledger up to today, and of the published visits from today on; a day counts once.</summary>
    public static ImmutableArray<LocalDate> Of(PatientCare care, IEnumerable<WeekVisit> visits, Instant now)
    {
        LocalDate today = now.InZone(care.Zone).Date;
        return
        [
            .. OrderedLedger.Read(care.Events, care.Zone, now).Where(IsAtTheDoor).Select(e => e.Performed!.Value.Date)
                .Concat(visits.Where(v => v.Patient == care.Patient && v.Day >= today).Select(v => v.Day))
                .Distinct().Order(),
        ];
    }

    /// <summary>Whether the entry was made by a nurse of the agency at the patient's home: calls, refusals and decisions are not.</summary>
    public static bool IsAtTheDoor(LineEvent entry) =>
        entry is { Performer: PerformerKind.Nurse, Performed: not null }
        && entry.Kind is not (LineEventKind.PhoneCall or LineEventKind.Missed or LineEventKind.Refused or LineEventKind.NotDone or LineEventKind.SealReported or LineEventKind.UseLocked or LineEventKind.UseReleased
            or LineEventKind.TipConfirmed or LineEventKind.LumenCleared or LineEventKind.LumenOccluded or LineEventKind.AdmittedToHospital
            or LineEventKind.ReturnedHome or LineEventKind.Inserted);
}
