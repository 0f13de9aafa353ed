using System.Collections.Immutable;
using HomeLine.Agency.Decisions;
using HomeLine.Agency.Reports;
using HomeLine.Agency.Roster;
using HomeLine.Agency.WeekPlanning;
using HomeLine.LineCare.Ledger;
using HomeLine.LineCare.Lines;
using HomeLine.Planning.Problem;
using NodaTime;

namespace HomeLine.Agency.Mending;

/// <summary>
/// Nobody home, refused, or not safe: three different things. None of them resets a clock. Only the first two may lead to another visit; an unsafe scene
/// and a second refusal wait for a licensed person. Pure.
/// </summary>
internal static class DoorCase
{
    public const string UnsafeHold = "Not safe. Wait for the clinical manager.";

    public static Refusal? Fault(AtTheDoor entry, PlannedWeek week, AgencyAtHand agency)
    {
        WeekVisit? visit = week.Visits.FirstOrDefault(v => v.Id == entry.Visit);
        if (visit is null) return new Refusal("visit-not-found", "This visit is not in the published week.", "Look at the day again.");
        if (visit.Day > agency.Today) return new Refusal("visit-ahead", "This visit is on a later day.", "Choose the visit of today.");
        if (entry.Answer != DoorAnswer.NobodyHome && string.IsNullOrWhiteSpace(entry.Note))
            return new Refusal("door-note-missing", "It is not said what happened.", "Write it in a few words; it goes to the practitioner or the clinical manager.");
        return entry.Answer == DoorAnswer.NobodyHome && entry.Tries.IsEmpty
            ? new Refusal("door-tries-missing", "No try is written down.", "Write when and how somebody was looked for.")
            : null;
    }

    /// <summary>Whether this counts as missed by the agency's policy: enough tries.</summary>
    public static bool IsMissed(AtTheDoor entry, AgencyAtHand agency) =>
        entry.Answer == DoorAnswer.NobodyHome && entry.Tries.Length >= (int)agency.Files.Policy.ValueOf("door.tries", agency.Today);

    /// <summary>The ledger entries it leaves: one for each line the visit was for. They reset nothing.</summary>
    public static IEnumerable<LineEvent> Entries(AtTheDoor entry, WeekVisit visit, AgencyAtHand agency, string id)
    {
        LineEventKind? kind = entry.Answer switch
        {
            DoorAnswer.Refused => LineEventKind.Refused,
            DoorAnswer.NobodyHome when IsMissed(entry, agency) => LineEventKind.Missed,
            _ => null,
        };
        if (kind is not { } known) yield break;
        string note = known == LineEventKind.Missed ? $"Nobody home. {Tried(entry)} {entry.Note}".Trim() : entry.Note.Trim();
        ImmutableArray<LineId?> lines = [.. visit.Care.Select(c => c.Key.Split('|')).Where(k => k.Length == 5 && k[2].Length > 0).Select(k => (LineId?)new LineId(k[2])).Distinct()];
        int number = 0;
        foreach (LineId? line in lines.IsEmpty ? [null] : lines)
        {
            yield return new LineEvent
            {
                Id = new EventId($"{id}-{++number}"),
                Patient = visit.Patient,
                Line = line,
                Kind = known,
                Performed = CareMoment.Exactly(agency.Now, agency.Files[visit.Patient].Zone),
                RecordedAt = agency.Now,
                PerformerName = visit.Nurse,
                Note = note,
            };
        }
    }

    public static MendOffer Offer(AtTheDoor entry, MendSetting setting)
    {
        WeekVisit visit = setting.Visit(entry.Visit)!;
        return entry.Answer switch
        {
            DoorAnswer.Unsafe => Unsafe(entry, visit, setting),
            DoorAnswer.Refused => Refused(entry, visit, setting),
            _ when IsMissed(entry, setting.Agency) => Missed(entry, visit, setting),
            _ => TryAgain(entry, visit, setting),
        };
    }

    private static MendOffer TryAgain(AtTheDoor entry, WeekVisit visit, MendSetting setting)
    {
        string other = setting.People.OtherContact(visit.Patient);
        Instant by = setting.Agency.Now + Duration.FromMinutes((int)setting.Agency.Files.Policy.ValueOf("door.try.next", setting.Agency.Today));
        return new MendOffer
        {
            Facts = [Tried(entry), "No clock is touched. The visit is not missed yet."],
            ToTell = [setting.People.Family(visit.Patient, $"The nurse stands at the door. {(other.Length > 0 ? $"When nobody answers, ring the {other}." : "There is no other contact on record.")}")],
            Next = new NextStep("Ring again, by door and by phone. Then report what came of it.", by),
        };
    }

    private static MendOffer Missed(AtTheDoor entry, WeekVisit visit, MendSetting setting)
    {
        string name = setting.People.Name(visit.Patient);
        NewVisitAnswers again = Again(visit, setting, setting.Agency.Now);
        return new MendOffer
        {
            Facts =
            [
                Tried(entry),
                "Recorded as missed. The clock runs on from the last time the care was given.",
                "Nobody has heard the patient. When this is unlike them, ask the other contact, and call the emergency number if there is reason to worry.",
            ],
            ToTell =
            [
                setting.People.Practitioner(visit.Patient, $"{name}: the visit on {DayWords.When(visit)} was missed, nobody answered. {Care(visit)}"),
                .. Welfare(visit, setting),
            ],
            Answers = again.Answers,
            RuledOut = again.RuledOut,
        };
    }

    private static IEnumerable<PersonToTell> Welfare(WeekVisit visit, MendSetting setting)
    {
        string other = setting.People.OtherContact(visit.Patient);
        yield return other.Length > 0
            ? setting.People.Family(visit.Patient, $"Ask the {other} when the patient was last heard of.")
            : setting.People.ClinicalManager($"{setting.People.Name(visit.Patient)} does not answer and there is no other contact on record.");
    }

    private static MendOffer Refused(AtTheDoor entry, WeekVisit visit, MendSetting setting)
    {
        string name = setting.People.Name(visit.Patient);
        var told = ImmutableArray.Create(setting.People.Practitioner(visit.Patient, $"{name} refused on {DayWords.When(visit)}: {entry.Note.Trim()} {Care(visit)}"));
        ImmutableArray<string> facts = ["Recorded as refused. The interval goes on from the last time the care was given."];
        if (WasRefusedBefore(visit, setting.Agency))
        {
            return new MendOffer
            {
                Facts = [.. facts, "It was refused before. A clinician speaks with the patient before it is offered again; no visit is looked for."],
                ToTell = [.. told, setting.People.ClinicalManager($"{name} refused a second time. Speak with the patient before anything is booked.")],
                Next = new NextStep("A clinician speaks with the patient.", setting.Agency.Now),
            };
        }

        Instant tomorrow = setting.Agency.Today.PlusDays(1).AtStartOfDayInZone(setting.Calendar.Zone).ToInstant();
        NewVisitAnswers again = Again(visit, setting, tomorrow);
        return new MendOffer { Facts = facts, ToTell = told, Answers = again.Answers, RuledOut = again.RuledOut };
    }

    private static MendOffer Unsafe(AtTheDoor entry, WeekVisit visit, MendSetting setting) => new()
    {
        Aloud = ["Leave now. Do not go in and do not wait outside.", "When you or anybody is in danger, call the emergency number.", "Call the branch once you are away."],
        Facts = [$"The visit on {DayWords.When(visit)} is held. No other visit is looked for until the clinical manager has decided.", "No clock is touched."],
        ToTell =
        [
            setting.People.ClinicalManager($"Not safe at {setting.People.Name(visit.Patient)}: {entry.Note.Trim()} Decide how the care goes on. {Care(visit)}"),
            setting.People.Practitioner(visit.Patient, $"{setting.People.Name(visit.Patient)}: the visit on {DayWords.When(visit)} was not made. {Care(visit)}"),
        ],
        Next = new NextStep("The clinical manager decides how the care goes on.", setting.Agency.Now),
    };

    /// <summary>The same care in another visit, as soon as it may be.</summary>
    private static NewVisitAnswers Again(WeekVisit visit, MendSetting setting, Instant from)
    {
        CareTask task = setting.Standing.Problem.Tasks.First(t => t.Id == visit.Id);
        int opens = Math.Max(setting.Calendar.Minute(from), setting.Now);
        CareTask again = task with
        {
            Id = "again",
            Opens = opens,
            HardLatest = Math.Max(task.HardLatest, opens),
            StartSpans = [.. task.StartSpans.Where(s => s.To > opens)],
            TargetBy = null,
        };
        PlannedWeek without = setting.Week with { Visits = [.. setting.Week.Visits.Where(v => v.Id != visit.Id)] };
        return NewVisitAnswers.Of(setting.Agency, without, again, visit.Care, visit);
    }

    private static bool WasRefusedBefore(WeekVisit visit, AgencyAtHand agency)
    {
        LineEvent? last = agency.Files[visit.Patient].Events.LastOrDefault(e => e.Kind is LineEventKind.Refused
            or LineEventKind.DressingChanged or LineEventKind.PortAccessed or LineEventKind.ConnectorChanged);
        return last?.Kind == LineEventKind.Refused || RefusedCare.Twice(agency.Files[visit.Patient], agency.Now).Any();
    }

    private static string Tried(AtTheDoor entry) =>
        $"Tried: {string.Join("; ", entry.Tries.Select(t => $"{DayWords.Time(t.At)} {t.How.Trim()}"))}.";

    private static string Care(WeekVisit visit) => $"It was for: {string.Join("; ", visit.Care.Select(c => c.Label))}.";
}
