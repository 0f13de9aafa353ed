using System.Collections.Immutable;
using HomeLine.Agency.Roster;
using HomeLine.LineCare;
using HomeLine.LineCare.Lines;
using HomeLine.LineCare.Orders;
using HomeLine.LineCare.Policy;
using HomeLine.LineCare.Scope;
using HomeLine.LineCare.Windows;
using HomeLine.Planning.Plans;
using HomeLine.Planning.Problem;
using NodaTime;

namespace HomeLine.Agency.WeekPlanning;

/// <summary>What one patient needs of the agency's nurses within the horizon, and what cannot be planned and why.</summary>
public sealed record PatientNeeds(ImmutableArray<CareNeed> Needs, ImmutableArray<UnmetNeed> NotPlannable)
{
    /// <summary>Derives the needs from the windows. Pure.</summary>
    public static PatientNeeds Of(Patient patient, PatientCare care, CareAnswer answer, NeedSetting setting) =>
        new PatientNeedsBuilder(patient, care, answer, setting).Build();
}

/// <summary>What every patient's needs are derived with.</summary>
/// <param name="Policy">The policy book.</param>
/// <param name="Calendar">The horizon.</param>
/// <param name="Now">The moment planned from.</param>
/// <param name="PlannedAhead">Whether needs whose window ends after the horizon ride along when the next visit would be too late.</param>
public sealed record NeedSetting(
    PolicyBook Policy,
    PlanCalendar Calendar,
    Instant Now,
    bool PlannedAhead = true)
{
    public LocalDate Today => Now.InZone(Calendar.Zone).Date;
}

/// <summary>One patient's derivation, step by step: gates, chores, limits, repeats, tasks.</summary>
internal sealed class PatientNeedsBuilder(Patient patient, PatientCare care, CareAnswer answer, NeedSetting setting)
{
    private readonly PlanCalendar calendar = setting.Calendar;
    private readonly CareMinutes minutes = new(setting.Policy, setting.Today);
    private readonly RiskWeights weights = new(setting.Policy, setting.Today);
    private readonly ImmutableArray<CareNeed>.Builder needs = ImmutableArray.CreateBuilder<CareNeed>();
    private readonly ImmutableArray<UnmetNeed>.Builder notPlannable = ImmutableArray.CreateBuilder<UnmetNeed>();

    public PatientNeeds Build()
    {
        PlanningSpan span = PlanningSpan.Of(care, answer, calendar, setting.Now);
        ImmutableArray<Chore> chores = [.. Chore.Of(care, answer).Where(c => !CoveredByInfusion(c))];
        if (span.IsEmpty) return new PatientNeeds([], []);
        ImmutableArray<Chore> due = [.. chores.Where(c => calendar.Minute(c.Lead.LateFrom) <= calendar.End)];
        foreach (Chore chore in due) Add(chore, span, Math.Min(calendar.Minute(chore.Lead.LateFrom), calendar.End));
        if (setting.PlannedAhead)
        {
            foreach (Chore chore in chores.Except(due).Where(c => NextVisitComesTooLate(c, due)))
                Add(chore, span, calendar.End);
        }

        return new PatientNeeds(needs.ToImmutable(), notPlannable.ToImmutable());
    }

    /// <summary>An infusion through an idle port that is still to come flushes it, so the flush is no work of its own. A lesson, or a day that passed, does not.</summary>
    private bool CoveredByInfusion(Chore chore) =>
        chore.Item == CareItem.PortFlush
        && answer.Windows.Any(w => w is { Item: CareItem.OrderedService, Order: { } id }
            && care.Orders.Any(o => o.Id == id && o.Line == chore.Line?.Id && o.Kind is OrderKind.NurseDose or OrderKind.LongInfusion or OrderKind.Hydration)
            && w.LastDay >= setting.Now.InZone(care.Zone).Date && w.LastDay <= chore.Lead.LastDay);

    /// <summary>
    /// A window that closes next week, before the next visit can usefully come, has to be met this week;
    /// one that the next visit still reaches is left alone.
    /// </summary>
    private bool NextVisitComesTooLate(Chore chore, ImmutableArray<Chore> due)
    {
        if (calendar.Minute(chore.Lead.Opens) >= calendar.End) return false;
        LocalDate? next = null;
        foreach (Chore other in due)
        {
            if (other.Lead.Next is not { } repeat) continue;
            LocalDate opens = repeat.OpensAfter(other.Lead.LastDay);
            next = next is { } n && n < opens ? n : opens;
        }

        return next is { } date && chore.Lead.LastDay < date;
    }

    private void Add(Chore chore, PlanningSpan span, int lateFrom)
    {
        DueWindow window = chore.Lead;
        if (chore.Order is { Kind: OrderKind.DrugLevel, DoseTimes.IsDefaultOrEmpty: true })
        {
            notPlannable.Add(new UnmetNeed(patient.Id, Label(chore), [LevelWithoutDoseTimes], []) { LastDay = window.LastDay });
            return;
        }

        if (chore.Order is { } ordered && Undelivered(ordered) is { } undelivered)
        {
            notPlannable.Add(new UnmetNeed(patient.Id, Label(chore), [undelivered], []) { LastDay = window.LastDay });
            return;
        }

        int opens = Math.Max(calendar.Minute(window.Opens), span.From);
        if (chore.Order?.NotBefore is { } delivered) opens = Math.Max(opens, calendar.Minute(delivered));
        if (window.Standing == WindowStanding.Ordered && lateFrom <= calendar.Minute(setting.Now))
        {
            notPlannable.Add(new UnmetNeed(patient.Id, Label(chore), [OrderedDayPassed(window.LastDay)], []) { LastDay = window.LastDay });
            return;
        }

        if (FirstDoseMissing(chore, opens) is { IsEmpty: false } missing)
        {
            notPlannable.Add(new UnmetNeed(patient.Id, Label(chore), missing, []) { LastDay = window.LastDay });
            return;
        }

        lateFrom = Math.Min(lateFrom, span.Through + 1);
        if (opens > span.Through)
        {
            RefuseOutOfSpan(chore, span);
            return;
        }

        ImmutableArray<int> steps = [.. RepeatSteps.Earliest(window, opens, lateFrom, calendar, setting.Now)];
        string? before = null;
        for (int i = 0; i < steps.Length; i++)
        {
            // What repeats only after the orders end or a hold begins is not needed before.
            if (i > 0 && steps[i] > span.Through) break;
            CareTask task = Task(chore, Math.Max(steps[i], span.From), lateFrom, span.Through, before, i);
            needs.Add(new CareNeed(chore.Key, task, patient.Id, chore.Item, chore.Windows));
            before = task.Id;
            lateFrom = window.Next is { } repeat
                ? Math.Min(Math.Max(lateFrom, RepeatSteps.NowOrLater(lateFrom, calendar, setting.Now)) + repeat.MaxMinutes(), span.Through + 1)
                : lateFrom;
        }
    }

    /// <summary>A first dose waits for its history, kit, drug and stay; the nurse able to give it is the planner's to find.</summary>
    private ImmutableArray<PlanningReason> FirstDoseMissing(Chore chore, int opens)
    {
        if (chore.Order is not { FirstDose: not null } order) return [];
        ZonedDateTime starts = calendar.Date(opens / PlanCalendar.MinutesADay).At(LocalTime.Midnight.PlusMinutes(opens % PlanCalendar.MinutesADay)).InZoneLeniently(calendar.Zone);
        (int setup, int work) = minutes.Of(order);
        return [.. FirstDoseGate.WhyNot(order, starts.WithZone(patient.Zone), setup + work, setting.Policy)
            .Select(reason => new PlanningReason(reason.Code, reason.Sentence, "Complete the order of the first dose on the patient's page, or have it given where a reaction can be treated."))];
    }

    private CareTask Task(Chore chore, int opens, int lateFrom, int through, string? before, int occurrence)
    {
        DueWindow window = chore.Lead;
        (int setup, int work) = chore.Order is { } order ? minutes.Of(order) : minutes.Of(chore.Item, care, chore.Line, IsFurtherLine(chore));
        bool follows = before is not null && window.Next is not null;
        ImmutableArray<string> skills = CareSkills.Of(chore.Item, chore.Line, chore.Order, patient);
        return new CareTask
        {
            Id = $"{chore.Key}@{window.LastDay:uuuu-MM-dd}" + (occurrence == 0 ? "" : $"+{occurrence}"),
            Patient = patient.Id.Value,
            Label = Label(chore),
            Opens = opens,
            LateFrom = lateFrom,
            HardLatest = window.Standing == WindowStanding.Ordered ? Math.Min(through, lateFrom - 1) : through,
            TargetBy = window.Standing == WindowStanding.CutShort ? calendar.Minute(window.Target) : null,
            StartSpans = StartSpans(chore, opens, lateFrom),
            SetupMinutes = setup + patient.ExtraMinutes,
            WorkMinutes = work,
            Skills = skills,
            Kinds = CareKinds.Of(skills, setup + patient.ExtraMinutes + work, setting.Policy, setting.Today),
            Critical = RiskWeights.IsCritical(chore, care, setting.Today),
            Weight = weights.Of(chore, care, setting.Today),
            After = follows ? before : null,
            MinGap = follows ? window.Next!.MinMinutes() : 0,
            MaxGap = follows ? window.Next!.MaxMinutes() : int.MaxValue,
            GapInDays = follows && window.Next!.InDays(),
            DrawToDropMinutes = chore.Order is { NeedsCourier: true }
                ? (int)setting.Policy.ValueOf("specimen.drawtodrop.max", setting.Today)
                : null,
            Safety = window.Standing is WindowStanding.CutShort or WindowStanding.DateUnknown,
        };
    }

    private static string Label(Chore chore)
    {
        if (chore.Order is { } order) return order.Text.Length > 0 ? order.Text : CareLabels.Of(chore.Item);
        string lumens = string.Join(", ", chore.Windows.Where(w => w.Item == chore.Item).Select(w => w.Lumen).OfType<string>().Distinct());
        string item = lumens.Length > 0 ? $"{CareLabels.Of(chore.Item)} {lumens}" : CareLabels.Of(chore.Item);
        return chore.Line is { } line ? $"{item}, {CareLabels.Of(line.Kind)}" : item;
    }

    private bool IsFurtherLine(Chore chore) =>
        chore.Line is { Kind: LineKind.Midline } && care.Lines.Any(l => l.Kind != LineKind.Midline);

    private ImmutableArray<Span> StartSpans(Chore chore, int opens, int lateFrom)
    {
        (LocalTime From, LocalTime To)[] hours = [.. StartHours(chore.Order)];
        var spans = ImmutableArray.CreateBuilder<Span>();
        for (int day = 0; day < calendar.DayCount && hours.Length > 0; day++)
        {
            LocalDate date = calendar.Date(day);
            foreach ((LocalTime from, LocalTime to) in hours)
            {
                var span = new Span(calendar.Minute(date, from, patient.Zone), calendar.Minute(date, to, patient.Zone));
                if (span.To >= opens && span.From < Math.Max(lateFrom, opens + 1)) spans.Add(span);
            }
        }

        return spans.ToImmutable();
    }

    /// <summary>The order's own hours; for a level without them, the minutes of policy before each dose.</summary>
    private IEnumerable<(LocalTime From, LocalTime To)> StartHours(CareOrder? order)
    {
        if (order is { StartFrom: { } from, StartTo: { } to }) return [(from, to)];
        if (order is not { Kind: OrderKind.DrugLevel }) return [];
        int earliest = (int)setting.Policy.ValueOf("level.lead.max", setting.Today), latest = (int)setting.Policy.ValueOf("level.lead.min", setting.Today);
        return order.DoseTimes.Where(dose => dose.TickOfDay >= earliest * NodaConstants.TicksPerMinute).Order()
            .Select(dose => (dose.PlusMinutes(-earliest), dose.PlusMinutes(-latest)));
    }

    /// <summary>A level is drawn before a dose: without the dose times any moment would be a guess.</summary>
    private static readonly PlanningReason LevelWithoutDoseTimes = new(
        DecisionCodes.LevelWithoutDoseTimes, "The dose times are not known.", "Ask the pharmacist for the dose times first.");

    /// <summary>Why what has to be delivered first may not come: nobody knows when, or nobody is known to be at home to receive it.</summary>
    private PlanningReason? Undelivered(CareOrder order)
    {
        if (order.AwaitsDelivery)
            return new PlanningReason("delivery-unknown", "When the drug comes to the home is not known.", "Ask the pharmacist for the day and time of the delivery.");
        if (order.NotBefore is not { } by || calendar.Minute(by) <= calendar.Minute(setting.Now) || patient.AccessTimes.IsEmpty) return null;
        bool somebody = patient.AccessTimes.Any(a => (a.Weekdays.IsEmpty || a.Weekdays.Contains(by.DayOfWeek)) && a.From <= by.TimeOfDay);
        return somebody ? null : new PlanningReason(
            "delivery-no-receiver",
            $"The drug comes on {by.Date:uuuu-MM-dd} by {by.TimeOfDay:HH:mm}, and nobody is known to be at home to receive it.",
            "Ask the family who receives it, or the pharmacist for another day.");
    }

    private static PlanningReason OrderedDayPassed(LocalDate day) => new(
        "ordered-day-passed",
        $"It was ordered for {day:uuuu-MM-dd} and is not recorded as done.",
        "Record it if it was done; otherwise ask the prescriber for a new day.");

    private void RefuseOutOfSpan(Chore chore, PlanningSpan span) => notPlannable.Add(new UnmetNeed(
        patient.Id,
        Label(chore),
        [new PlanningReason("outside-planning-span", span.Because, "Renew the order, end the hold, or arrange the care elsewhere.")],
        [])
    {
        LastDay = chore.Lead.LastDay,
    });
}
