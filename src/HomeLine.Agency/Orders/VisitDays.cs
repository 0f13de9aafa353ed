using System.Collections.Immutable;
using HomeLine.Agency.Roster;
using HomeLine.Agency.WeekPlanning;
using HomeLine.LineCare;
using HomeLine.LineCare.Ledger;
using HomeLine.LineCare.Lines;
using NodaTime;

namespace HomeLine.Agency.Orders;

/// <summary>The days on which a nurse of the agency was there, or is planned to be. Pure.</summary>
public static class VisitDays
{
    /// <summary>
    /// Days of the ledger up to today, and of the published visits from today on. A day counts as often as visits of it were signed, with the planned
    /// ones of that day that still stand open; without a signed visit it counts once. A signed visit at which nothing was done counts no more than the
    /// ledger does: not at all.
    /// </summary>
    /// <param name="care">The patient.</param>
    /// <param name="visits">Published visits.</param>
    /// <param name="records">Signed visits; those of other patients are passed over.</param>
    /// <param name="now">Now.</param>
    public static ImmutableArray<LocalDate> Of(PatientCare care, IEnumerable<WeekVisit> visits, ImmutableArray<SignedVisit> records, Instant now)
    {
        LocalDate today = now.InZone(care.Zone).Date;
        LineEvent[] atTheDoor = [.. OrderedLedger.Read(care.Events, care.Zone, now).Where(IsAtTheDoor)];
        var entries = atTheDoor.Select(e => e.Id).ToHashSet();
        SignedVisit[] made = [.. SignedVisit.Standing([.. records.Where(v => v.Patient == care.Patient)]).Where(v => v.Events.Any(entries.Contains))];
        var closed = made.Where(v => v.Visit is not null).Select(v => (v.Visit!, AgencyAtHand.WeekOf(v.Day))).ToHashSet();
        WeekVisit[] ahead = [.. visits.Where(v => v.Patient == care.Patient && v.Day >= today && !closed.Contains((v.Id, AgencyAtHand.WeekOf(v.Day))))];
        ILookup<LocalDate, SignedVisit> madeOn = made.ToLookup(v => v.Day);
        ILookup<LocalDate, WeekVisit> aheadOn = ahead.ToLookup(v => v.Day);
        return
        [
            .. atTheDoor.Select(e => e.Performed!.Value.Date).Concat(made.Select(v => v.Day)).Concat(ahead.Select(v => v.Day)).Distinct().Order()
                .SelectMany(day => Enumerable.Repeat(day, madeOn[day].Any() ? madeOn[day].Count() + aheadOn[day].Count() : 1)),
        ];
    }

    /// <summary>Whether the entry was made by a nurse of the agency at the patient's home: calls, refusals and decisions are not.</summary>
    public static bool IsAtTheDoor(LineEvent entry) =>
        entry is { Performer: PerformerKind.Nurse, Performed: not null }
        && entry.Kind is not (LineEventKind.PhoneCall or LineEventKind.Missed or LineEventKind.Refused or LineEventKind.NotDone or LineEventKind.SealReported or LineEventKind.UseLocked or LineEventKind.UseReleased
            or LineEventKind.TipConfirmed or LineEventKind.LumenCleared or LineEventKind.LumenOccluded or LineEventKind.AdmittedToHospital
            or LineEventKind.ReturnedHome or LineEventKind.Inserted);
}
