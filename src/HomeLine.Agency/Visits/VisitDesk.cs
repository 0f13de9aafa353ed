using System.Collections.Immutable;
using System.Globalization;
using HomeLine.Agency.Access;
using HomeLine.Agency.Caregivers;
using HomeLine.Agency.Reports;
using HomeLine.Agency.Roster;
using HomeLine.Agency.Storage;
using HomeLine.Agency.WeekPlanning;
using HomeLine.LineCare;
using HomeLine.LineCare.Ledger;
using HomeLine.LineCare.Lines;
using HomeLine.LineCare.Recording;
using HomeLine.LineCare.RedFlags;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using NodaTime.Text;

namespace HomeLine.Agency.Visits;

/// <summary>One signed visit inside its transaction: the ledger, the record, who must be told, what was validated, and the stop if there is one.</summary>
internal sealed class VisitDesk(AgencyDb db, Actor actor, VisitSetting setting, VisitEntry entry, VisitCheck check, string id, Instant realNow)
{
    private readonly AgencyAtHand agency = setting.Agency;

    public async Task<Outcome<VisitRecord>> KeepAsync(CancellationToken cancel)
    {
        VisitTimes times = VisitTimes.Of(entry, setting.Patient.Zone)!;
        foreach (LineEvent one in check.Events) db.LineEvents.Add(one);
        string? stopped = null;
        if (check.Stop is not null)
        {
            Outcome<string?> stop = await StopAsync(cancel);
            if (!stop.Succeeded) return stop.Refusal!;
            stopped = stop.Value;
        }

        var record = new VisitRecord
        {
            Id = id,
            Submission = entry.Submission,
            Patient = entry.Patient,
            Visit = entry.Visit,
            Day = entry.Day,
            ArrivedAt = times.Arrived,
            LeftAt = times.Left,
            Nurse = setting.Nurse?.Id ?? "",
            SignedName = setting.Nurse?.Name ?? setting.Name,
            Credential = setting.Nurse?.Credential ?? "",
            SignedBy = actor.UserId,
            SignedAt = agency.Now,
            Entry = entry,
            Events = [.. Kept(), .. check.Events.Select(e => e.Id)],
            Answered = [.. check.Questions.Select(q => new AnsweredQuestion(q.Code, q.Sentence, entry.Answers[q.Key].Trim()))],
            Flags = check.Flags,
            Amends = setting.Amended?.Id,
            NeedsCoSign = check.NeedsCoSign,
            HasSkinHarm = entry.Lines.Any(l => (l.Found & (SiteFinding.AdhesiveInjury | SiteFinding.AntisepticReaction)) != SiteFinding.None),
            Stopped = stopped,
        };
        db.VisitRecords.Add(record);
        AddNotices();
        await ValidateAsync(cancel);
        await AuditTrail.AppendAsync(
            db, actor, setting.Amended is null ? "record-visit" : "amend-visit", $"{entry.Patient} visit {id}",
            setting.Amended is { } amended ? $"amends {amended.Id}: {entry.AmendedBecause.Trim()}" : string.Create(CultureInfo.InvariantCulture, $"{check.Events.Length} entries"), realNow, cancel);
        return record;
    }

    /// <summary>Entries of the amended record that are right and stay.</summary>
    private IEnumerable<EventId> Kept()
    {
        if (setting.Amended is not { } amended) return [];
        var voided = check.Events.Select(e => e.Voids).OfType<EventId>().ToHashSet();
        return amended.Events.Where(e => !voided.Contains(e));
    }

    /// <summary>A red flag of the screen is filed like a call that stopped: line locked, coming visits held, people to tell. A measurement that needs a
    /// call alone is left to the clocks, which lock and ask; somebody is told at once.</summary>
    private async Task<Outcome<string?>> StopAsync(CancellationToken cancel)
    {
        ImmutableArray<LineId> lines = VisitStops.Lines(entry, setting.LinesIn());
        ScreenContext context = ScreenContext.Of(setting.Care, agency.Files.Policy, agency.Today);
        if (VisitStops.Screen(entry, context) is not { Stopped: not null } screen || lines.IsEmpty)
        {
            Tell(0, new PersonToTell("Clinical manager on duty", $"phone {agency.Roster.Profile.OnCallPhone}", $"{setting.Patient.Name}: {string.Join(" ", check.Stop!.Found)}", agency.Now));
            return (string?)null;
        }

        string report = $"R{await db.Reports.CountAsync(cancel) + 1}";
        var problem = new ProblemReport
        {
            Patient = entry.Patient,
            Line = lines[0],
            Caller = $"{setting.Nurse?.Name ?? setting.Name} at the visit",
            SeenAt = VisitTimes.Of(entry, setting.Patient.Zone)!.Arrived,
            Answers = VisitStops.Flags(entry).Distinct().ToImmutableDictionary(q => q, _ => ScreenAnswer.Yes, StringComparer.Ordinal),
            Finding = SealFinding.None,
            InTheirWords = string.Join(" ", check.Stop!.Found),
        };
        PlannedWeek? week = (await WeekStore.PublishedAsync(db, agency.ThisWeek, cancel))?.Week;
        Outcome<ReportResult> filed = await new ReportDesk(db, actor, agency, problem, report, realNow).StopAsync(screen, week, cancel, entry.Visit);
        if (!filed.Succeeded) return filed.Refusal!;
        foreach (LineId line in lines.Skip(1))
            db.LineEvents.Add(new LineEvent
            {
                Id = new EventId($"{report}-lock-{line}"),
                Patient = entry.Patient,
                Line = line,
                Kind = LineEventKind.UseLocked,
                Performed = CareMoment.Exactly(agency.Now, setting.Patient.Zone),
                RecordedAt = agency.Now,
                PerformerName = "agency",
                RecordedBy = actor.Name,
                Note = $"Red flag at visit {id}.",
            });
        return report;
    }

    private void Tell(int number, PersonToTell person) =>
        db.ToTell.Add(new ToTell { Id = $"{id}-{number + 1}", Week = agency.ThisWeek, Person = person });

    /// <summary>Missed and refused care is told to the practitioner; what the prescriber holds is known there.</summary>
    private void AddNotices()
    {
        var missed = entry.Items.Where(i => i is { Standing: ItemStanding.NotDone, Why: { } why } && why != NotDoneReason.HeldByPrescriber).ToList();
        if (missed.Count == 0) return;
        VisitTimes times = VisitTimes.Of(entry, setting.Patient.Zone)!;
        PractitionerTold? told = entry.Told is { Who.Length: > 0, Said.Length: > 0 } said ? said : null;
        db.PractitionerNotices.Add(new PractitionerNotice
        {
            Id = $"{id}-practitioner",
            Record = id,
            Patient = entry.Patient,
            Practitioner = setting.Patient.Practitioner,
            What = string.Join(" ", missed.GroupBy(i => (i.Why, i.WhyText)).Select(g =>
                $"{VisitWords.Of(g.Key.Why!.Value)}{(g.Key.WhyText.Trim().Length > 0 ? $" ({g.Key.WhyText.Trim()})" : "")}: {string.Join(", ", g.Select(i => i.Label))}.")),
            Since = times.Arrived,
            ToldAt = told is null ? null : Instant.Min(times.At(told.At), agency.Now),
            ToldTo = told?.Who.Trim() ?? "",
            ToldBy = told is null ? "" : actor.Name,
            Said = told?.Said.Trim() ?? "",
        });
    }

    private async Task ValidateAsync(CancellationToken cancel)
    {
        LocalDate through = agency.Today.PlusDays((int)setting.Policy("validation.caregiver.life"));
        foreach (TeachBack taught in entry.Teaching.Where(t => t is { Validate: true, Level: TeachLevel.Independent }))
        {
            await ValidateCaregiver.KeepAsync(db, new CaregiverValidation(entry.Patient, taught.Person.Trim(), taught.Item, through, taught.Line), cancel);
            await AuditTrail.AppendAsync(
                db, actor, "validate-caregiver", $"{entry.Patient} {taught.Person.Trim()}", $"{taught.Item} through {LocalDatePattern.Iso.Format(through)}, visit {id}", realNow, cancel);
        }
    }
}
