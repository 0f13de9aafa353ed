using System.Collections.Immutable;
using System.Globalization;
using HomeLine.Agency.Access;
using HomeLine.Agency.Mending;
using HomeLine.Agency.Reports;
using HomeLine.Agency.Roster;
using HomeLine.Agency.Storage;
using HomeLine.Agency.WeekPlanning;
using HomeLine.LineCare;
using HomeLine.LineCare.Ledger;
using HomeLine.LineCare.Recording;
using NodaTime;

namespace HomeLine.Agency.Absence;

/// <summary>A hold that was kept, with what has to be found out, and what has to be arranged.</summary>
/// <param name="Hold">The hold.</param>
/// <param name="Flag">What has to be found out; empty when nothing.</param>
/// <param name="Told">What follows: care that falls due meanwhile, a place where nobody is licensed.</param>
public sealed record KeptHold(Hold Hold, string Flag, ImmutableArray<RecordingReply> Told)
{
    /// <summary>Visits of the published weeks that were taken out because nobody is home.</summary>
    public ImmutableArray<WeekVisit> Lifted { get; init; } = [];

    /// <summary>The list of people to tell of it; empty when there is nobody.</summary>
    public string? ToldUnder { get; init; }
}

/// <summary>Putting a patient on hold, inside the work under way: the hold, and the visits it takes out of the published weeks.</summary>
internal sealed class HoldDesk(AgencyDb db, Actor actor, AgencyAtHand agency, Instant realNow)
{
    /// <param name="entry">The hold as entered.</param>
    /// <param name="tellUnder">Identifier of the list of people to tell; empty when the caller makes the list.</param>
    /// <param name="cancel">Cancels the work.</param>
    public async Task<Outcome<KeptHold>> HoldAsync(HoldEntry entry, string? tellUnder, CancellationToken cancel)
    {
        Patient? patient = agency.Roster.Patients.FirstOrDefault(p => p.Id == entry.Patient);
        if (patient is null) return new Refusal("patient-unknown", "There is no such patient.", "Go back to the list and choose again.");
        if (agency.Files.WhatIsDue(patient.Id, agency.Now).OnHold is { } already)
            return new Refusal("on-hold-already", $"The patient is on hold since {DayWords.Day(already.From)}: {already.Reason}.", "End that hold first.");
        LocalDate today = agency.Now.InZone(patient.Zone).Date;
        HoldStart start = HoldStart.Of(entry.From, today);
        if (start.From > today && entry.InHospital)
            return new Refusal("hold-in-future", "A hospital stay cannot begin in the future.", "Correct the day.");
        if (entry.Through < start.From)
            return new Refusal("hold-ends-before-start", "The last day is before the first.", "Correct one of them.");
        if (entry.Elsewhere is not null && (entry.InHospital || entry.Through is null))
            return new Refusal(AbsenceCodes.StayWithoutEnd, "A stay at a place that is named has a last day, and is not a hospital stay.", "Give the last day, or leave the place empty.");
        if (entry.Elsewhere is { } there && DateTimeZoneProviders.Tzdb.GetZoneOrNull(there.ZoneId) is null)
            return new Refusal("zone-unknown", "This time zone is not known.", "Choose one of the list, for example America/New_York.");
        string reason = entry.Reason.Trim().Length > 0 ? entry.Reason.Trim() : entry.InHospital ? "hospital" : "away";
        var hold = new Hold(patient.Id, start.From, entry.InHospital ? null : entry.Through, reason, entry.Elsewhere);
        ImmutableArray<RecordingReply> told = BeforeLeaving.Replies(agency, hold);
        if (Replies.Refusal(told, "") is { } refused) return refused;
        if (entry.InHospital) db.LineEvents.Add(Admitted(patient, start.From == today ? null : start.From, reason));
        else if (agency.Roster.Holds.Any(h => h.Patient == patient.Id && h.From == start.From))
            return new Refusal("on-hold-already", $"There is a hold from {DayWords.Day(start.From)} already.", "Choose another first day, or end that hold.");
        else db.Holds.Add(hold);
        Outcome<ImmutableArray<WeekVisit>> lifted = await LiftAsync(hold, cancel);
        if (!lifted.Succeeded) return lifted.Refusal!;
        bool tells = tellUnder is not null && !lifted.Value.IsEmpty;
        if (tells) AddToTell(tellUnder!, LiftedVisits.Told(patient.Id, lifted.Value, new PeopleNamed(agency)));
        await AuditTrail.AppendAsync(db, actor, "hold-patient", patient.Id.Value, start.Flag is null ? reason : $"{reason}; first day unknown, from today", realNow, cancel);
        return new KeptHold(hold, start.Flag?.Sentence ?? "", told) { Lifted = lifted.Value, ToldUnder = tells ? tellUnder : null };
    }

    /// <summary>Nobody rings at an empty home: the visits come out of this and the coming published weeks.</summary>
    private async Task<Outcome<ImmutableArray<WeekVisit>>> LiftAsync(Hold hold, CancellationToken cancel)
    {
        var weeks = ImmutableArray.CreateBuilder<PlannedWeek>();
        foreach (LocalDate first in (await WeekStore.PublishedWeeksAsync(db, cancel)).Where(first => first >= agency.ThisWeek))
            if (await WeekStore.PublishedAsync(db, first, cancel) is { } stored) weeks.Add(stored.Week);
        LiftedVisits lifted = LiftedVisits.Of(weeks.ToImmutable(), hold.Patient, hold.From, hold.Through, agency.Now.InZone(agency.Roster.Profile.Zone).LocalDateTime);
        foreach (PlannedWeek week in lifted.WeeksAfter)
        {
            Outcome<PlannedWeek> published = await WeekStore.PublishAsync(db, actor, week, $"{hold.Patient} is away: {hold.Reason}", realNow, cancel);
            if (!published.Succeeded) return published.Refusal!;
        }

        return lifted.Visits;
    }

    private void AddToTell(string under, ImmutableArray<PersonToTell> people)
    {
        for (int i = 0; i < people.Length; i++)
            db.ToTell.Add(new ToTell { Id = $"{under}-{i + 1}", Week = agency.ThisWeek, Person = people[i] });
    }

    private LineEvent Admitted(Patient patient, LocalDate? on, string note) => new()
    {
        Id = new EventId(string.Create(CultureInfo.InvariantCulture, $"{patient.Id}-A{agency.Roster.Events.Count(e => e.Patient == patient.Id) + 1}")),
        Patient = patient.Id,
        Kind = LineEventKind.AdmittedToHospital,
        Performed = on is { } day ? CareMoment.SometimeOn(day) : CareMoment.Exactly(agency.Now, patient.Zone),
        RecordedAt = agency.Now,
        Performer = LineCare.Lines.PerformerKind.Outside,
        RecordedBy = actor.Name,
        Certainty = Certainty.CaregiverByPhone,
        Note = note,
    };
}
