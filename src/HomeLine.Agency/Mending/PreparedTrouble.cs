using System.Collections.Immutable;
using HomeLine.Agency.Decisions;
using HomeLine.Agency.Reports;
using HomeLine.Agency.Roster;
using HomeLine.Agency.WeekPlanning;
using HomeLine.LineCare.Ledger;
using HomeLine.LineCare.Lines;
using HomeLine.LineCare.RedFlags;
using NodaTime;

namespace HomeLine.Agency.Mending;

/// <summary>What a trouble means, worked out before anything is written: a stop, or an offer with the facts that hold whatever is chosen. Pure.</summary>
internal sealed record PreparedTrouble
{
    public required string Title { get; init; }

    public PatientId? Patient { get; init; }

    /// <summary>Set when the symptom screen stopped: then there is no offer.</summary>
    public ScreenOutcome? Stop { get; init; }

    /// <summary>The report under which a stop is filed.</summary>
    public ProblemReport? Report { get; init; }

    public MendOffer Offer { get; init; } = new();

    /// <summary>The nurse's file with the absence, when a nurse is out.</summary>
    public (string Nurse, Leave Leave)? Absence { get; init; }

    public ImmutableArray<LineEvent> Entries { get; init; } = [];

    public ImmutableArray<OrderRequest> Requests { get; init; } = [];

    /// <summary>The week with a visit held, when nobody may go there until a licensed person has decided.</summary>
    public PlannedWeek? Held { get; init; }

    /// <summary>Nothing waits: it is over as it is filed.</summary>
    public bool IsOver { get; init; }

    /// <exception cref="OperationCanceledException">It was stopped while answers were looked for; nothing is kept.</exception>
    public static Outcome<PreparedTrouble> Of(TroubleEntry entry, AgencyAtHand agency, PlannedWeek? week, string id, CancellationToken cancel)
    {
        Outcome<PreparedTrouble> prepared = Judge(entry, agency, week, id, cancel);
        return prepared.Succeeded && week is not null
            ? prepared.Value with { Offer = prepared.Value.Offer with { Answers = [.. prepared.Value.Offer.Answers.Select(a => HeldPlaces.Without(a, agency.Held)).Select(a => a with { After = After(a, agency, week) })] } }
            : prepared;
    }

    /// <summary>Only another day, a new visit or one that falls away moves a due date.</summary>
    private static ImmutableArray<string> After(MendAnswer answer, AgencyAtHand agency, PlannedWeek week)
    {
        PatientId[] whose = [.. answer.Changes.Where(c => c.Before?.Day != c.After?.Day).Select(c => (c.Before ?? c.After)!.Patient).Distinct()];
        return whose.Length == 0 ? [] : AfterThis.Of(agency.Roster, week, AppliedWeek.Of(week, answer.Changes), whose, agency.Now);
    }

    private static Outcome<PreparedTrouble> Judge(TroubleEntry entry, AgencyAtHand agency, PlannedWeek? week, string id, CancellationToken cancel) => (entry, week) switch
    {
        (ScreenedEntry screened, _) => Screened(screened, agency, week, id),
        (_, null) => NoWeek(),
        (NurseIsOut o, { } w) => NurseOutCase.Fault(o, agency) is { } f ? f : Out(o, agency, w, cancel),
        (RunsLate l, { } w) => LateCase.Fault(l, agency) is { } f ? f : Late(l, agency, w, cancel),
        (RoadShut r, { } w) => ClosureCase.Fault(r, agency) is { } f ? f : Shut(r, agency, w, cancel),
        (AtTheDoor d, { } w) => DoorCase.Fault(d, w, agency) is { } f ? f : Door(d, agency, w, id),
        (TimeFreed t, { } w) => Freed(t, agency, w),
        (RoadOpenAgain o, { } w) => Opened(o, agency, w),
        (ClinicSilent c, { } w) => ClinicCase.Fault(c, agency) is { } f ? f : Clinic(c, agency, w),
        (LessonOff l, { } w) => LessonCase.Fault(l, agency, w) is { } f ? f : Lesson(l, agency, w, id),
        (CanWeTakeIt r, { } w) => ReferralCase.Fault(r.Referral, agency) is { } f ? f : Referral(r, agency, w),
        _ => throw new ArgumentOutOfRangeException(nameof(entry), entry, "Unknown trouble"),
    };

    private static Refusal NoWeek() => new("no-week", "No plan is published for this week.", "Plan and publish the week first; until then decide by phone.");

    private static Outcome<PreparedTrouble> Out(NurseIsOut entry, AgencyAtHand agency, PlannedWeek week, CancellationToken cancel)
    {
        KeptPlace[] lost = [.. HeldPlaces.Of(agency).Where(h => (h.Place.Nurse == entry.Nurse || h.Place.Second == entry.Nurse) && h.Place.Day >= entry.From.Date && h.Place.Day <= entry.Through)];
        var setting = new MendSetting(agency with { Held = [.. agency.Held.Except(lost)] }, week) { Cancel = cancel };
        MendOffer offer = NurseOutCase.Offer(entry, setting);
        bool wholeDay = entry.From.TimeOfDay == LocalTime.Midnight || agency.Roster.Nurses.First(n => n.Id == entry.Nurse).Week
            .Any(w => w.Weekday == entry.From.DayOfWeek && !w.OnCall && entry.From.TimeOfDay <= w.From);
        string why = entry.Why.Trim().Length > 0 ? entry.Why.Trim() : "called out";
        return new PreparedTrouble
        {
            Title = $"{setting.People.NurseName(entry.Nurse)} is out",
            Offer = offer with { Facts = [.. offer.Facts, .. lost.Select(h => $"The place held with her for {h.Name} is lost ({h.Trouble}): look at the referral again.")] },
            Absence = (entry.Nurse, new Leave(entry.From.Date, entry.Through, why) { FromTime = wholeDay ? null : entry.From.TimeOfDay }),
        };
    }

    private static Outcome<PreparedTrouble> Late(RunsLate entry, AgencyAtHand agency, PlannedWeek week, CancellationToken cancel)
    {
        var setting = new MendSetting(agency, week) { Cancel = cancel };
        Outcome<MendOffer> offer = LateCase.Offer(entry, setting);
        return offer.Succeeded
            ? new PreparedTrouble { Title = $"{setting.People.NurseName(entry.Nurse)} is {entry.Minutes} min late", Offer = offer.Value, IsOver = offer.Value.Answers.IsEmpty }
            : offer.Refusal!;
    }

    private static Outcome<PreparedTrouble> Shut(RoadShut entry, AgencyAtHand agency, PlannedWeek week, CancellationToken cancel) => new PreparedTrouble
    {
        Title = $"{ClosureCase.TitleBegins}{string.Join(", ", entry.Crossings.Concat(entry.Towns))}",
        Offer = ClosureCase.Offer(entry, [.. agency.Closures], new MendSetting(agency with { Closures = [] }, week) { Cancel = cancel }),
    };

    private static Outcome<PreparedTrouble> Opened(RoadOpenAgain entry, AgencyAtHand agency, PlannedWeek week)
    {
        MendOffer offer = ReopenedCase.Offer(entry, new MendSetting(agency, week));
        return new PreparedTrouble { Title = $"Open again ({entry.Closure}): visits that were moved", Offer = offer, IsOver = offer.Answers.IsEmpty };
    }

    private static Outcome<PreparedTrouble> Clinic(ClinicSilent entry, AgencyAtHand agency, PlannedWeek week)
    {
        var setting = new MendSetting(agency, week);
        return new PreparedTrouble { Title = $"{setting.People.Name(entry.Patient)}: no report from the clinic", Patient = entry.Patient, Offer = ClinicCase.Offer(entry, setting) };
    }

    private static Outcome<PreparedTrouble> Lesson(LessonOff entry, AgencyAtHand agency, PlannedWeek week, string id)
    {
        var setting = new MendSetting(agency, week);
        WeekVisit visit = setting.Visit(entry.Visit)!;
        return new PreparedTrouble
        {
            Title = $"{setting.People.Name(visit.Patient)}: lesson off",
            Patient = visit.Patient,
            Offer = LessonCase.Offer(entry, setting),
            Requests = [LessonCase.Request(entry, visit, agency, id)],
        };
    }

    private static Outcome<PreparedTrouble> Door(AtTheDoor entry, AgencyAtHand agency, PlannedWeek week, string id)
    {
        var setting = new MendSetting(agency, week);
        WeekVisit visit = setting.Visit(entry.Visit)!;
        string what = entry.Answer switch
        {
            DoorAnswer.NobodyHome => "nobody home",
            DoorAnswer.Refused => "refused",
            DoorAnswer.Unsafe => "not safe",
            _ => throw new ArgumentOutOfRangeException(nameof(entry), entry.Answer, "Unknown answer"),
        };
        return new PreparedTrouble
        {
            Title = $"{setting.People.Name(visit.Patient)}: {what}",
            Patient = visit.Patient,
            Offer = DoorCase.Offer(entry, setting),
            Entries = [.. DoorCase.Entries(entry, visit, agency, id)],
            Held = entry.Answer == DoorAnswer.Unsafe
                ? week with { Visits = [.. week.Visits.Select(v => v.Id == visit.Id ? v with { Held = DoorCase.UnsafeHold } : v)] }
                : null,
        };
    }

    private static Outcome<PreparedTrouble> Freed(TimeFreed entry, AgencyAtHand agency, PlannedWeek week)
    {
        var setting = new MendSetting(agency, week);
        if (setting.Visit(entry.Visit) is not { } visit) return new Refusal("visit-not-found", "This visit is not in the published week.", "Look at the day again.");
        ImmutableArray<MendAnswer> answers = FreedCase.Answers(setting, [visit.Nurse]);
        return answers.IsEmpty
            ? new Refusal("not-earlier", "The visit cannot be earlier by enough to call the family again.", "Leave it as it was promised.")
            : new PreparedTrouble
            {
                Title = $"{setting.People.Name(visit.Patient)} could be earlier",
                Patient = visit.Patient,
                Offer = new MendOffer { Facts = ["Offered, not applied: the family was told a time."], Answers = answers },
            };
    }

    private static Outcome<PreparedTrouble> Referral(CanWeTakeIt entry, AgencyAtHand agency, PlannedWeek week) => new PreparedTrouble
    {
        Title = $"{ReferralCase.TitleBegins}{entry.Referral.Name.Trim()}?",
        Offer = ReferralCase.Offer(entry.Referral, new MendSetting(agency, week)),
    };

    private static Outcome<PreparedTrouble> Screened(ScreenedEntry entry, AgencyAtHand agency, PlannedWeek? week, string id)
    {
        ProblemReport report = AsReport(entry, agency);
        if (ReportFaults.Of(report, agency) is { } fault) return fault;
        var context = ScreenContext.Of(agency.Files[entry.Patient], agency.Files.Policy, agency.Today);
        ImmutableDictionary<string, ScreenAnswer> answers = entry is PumpAlarm pump ? AlarmCase.Answers(pump, context) : entry.Answers;
        ScreenOutcome screen = SymptomScreen.Evaluate(answers, context);
        string name = agency.Roster.Patients.First(p => p.Id == entry.Patient).Name;
        string title = entry switch
        {
            PumpAlarm => $"{name}: pump alarm",
            DoseTaken => $"{name}: dose taken before the level",
            _ => throw new ArgumentOutOfRangeException(nameof(entry), entry, "Unknown call"),
        };
        if (screen.Stopped is not null)
            return new PreparedTrouble { Title = title, Patient = entry.Patient, Stop = screen, Report = report with { Answers = answers } };
        if (!screen.MaySchedule)
            return new Refusal("screen-incomplete", $"The symptom screen is not complete: {screen.Next?.Text}", "Ask the remaining questions first.");
        if (week is null) return NoWeek();
        var prepared = new PreparedTrouble { Title = title, Patient = entry.Patient };
        return entry switch
        {
            PumpAlarm alarm => AlarmCase.Fault(alarm) is { } unread ? unread : prepared with
            {
                Offer = AlarmCase.Offer(alarm, new MendSetting(agency, week), context),
                Entries = [Call(alarm, agency, id, $"Pump alarm ({alarm.Alarm}), {(alarm.Solved == true ? "ended" : "not ended")} by phone. {alarm.InTheirWords}".Trim())],
                IsOver = alarm.Solved == true,
            },
            DoseTaken dose => Taken(dose, agency, week, id, prepared),
            _ => throw new ArgumentOutOfRangeException(nameof(entry), entry, "Unknown call"),
        };
    }

    private static Outcome<PreparedTrouble> Taken(DoseTaken entry, AgencyAtHand agency, PlannedWeek week, string id, PreparedTrouble prepared)
    {
        if (DoseTakenCase.Fault(entry, agency) is { } fault) return fault;
        Outcome<MendOffer> offer = DoseTakenCase.Offer(entry, new MendSetting(agency, week));
        if (!offer.Succeeded) return offer.Refusal!;
        string at = DayWords.Time(entry.TakenAt.InZone(agency.Files[entry.Patient].Zone).TimeOfDay);
        return prepared with
        {
            Offer = offer.Value,
            Entries = [Call(entry, agency, id, $"Says the dose was taken at {at}, before the level. {entry.InTheirWords}".Trim())],
            Requests = [new OrderRequest($"{id}-order", entry.Patient, entry.Line, agency.Today, $"The level was cancelled: the dose was taken at {at}. Ask the pharmacist whether and when a new level is drawn.", entry.Caller)],
        };
    }

    private static ProblemReport AsReport(ScreenedEntry entry, AgencyAtHand agency) => new()
    {
        Patient = entry.Patient,
        Line = entry.Line,
        Caller = entry.Caller,
        SeenAt = agency.Now,
        Answers = entry.Answers,
        Finding = SealFinding.None,
        InTheirWords = entry.InTheirWords,
    };

    private static LineEvent Call(ScreenedEntry entry, AgencyAtHand agency, string id, string note) => new()
    {
        Id = new EventId($"{id}-call"),
        Patient = entry.Patient,
        Line = entry.Line,
        Kind = LineEventKind.PhoneCall,
        Performed = CareMoment.Exactly(agency.Now, agency.Files[entry.Patient].Zone),
        RecordedAt = agency.Now,
        Performer = PerformerKind.Nurse,
        PerformerName = "agency",
        Certainty = Certainty.CaregiverByPhone,
        Note = note,
    };
}
