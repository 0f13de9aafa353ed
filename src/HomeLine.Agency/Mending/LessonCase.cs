using System.Collections.Immutable;
using HomeLine.Agency.Decisions;
using HomeLine.Agency.Roster;
using HomeLine.Agency.WeekPlanning;
using HomeLine.LineCare.Lines;
using HomeLine.LineCare.Orders;
using HomeLine.Planning.Problem;
using NodaTime;

namespace HomeLine.Agency.Mending;

/// <summary>
/// A lesson that cannot be held: the series shifts by one, its last lesson to the first free evening after it; other care of the same day stays. Whether it
/// can be held with the patient alone, the nurse who teaches says. The order names the days, so the practitioner is asked. Pure.
/// </summary>
internal static class LessonCase
{
    private const string TaskId = "lesson";

    public static Refusal? Fault(LessonOff entry, AgencyAtHand agency, PlannedWeek week)
    {
        WeekVisit? visit = week.Visits.FirstOrDefault(v => v.Id == entry.Visit);
        if (visit is null) return new Refusal("visit-not-found", "This visit is not in the published week.", "Look at the day again.");
        if (OrderOf(visit, agency) is null) return new Refusal("no-lesson", "There is no lesson in this visit.", "Choose a visit with a lesson.");
        if (visit.Day.At(visit.Start) <= agency.Now.InZone(agency.Roster.Profile.Zone).LocalDateTime)
            return new Refusal("lesson-begun", "This lesson has begun or is over.", "Report it at the door, or record the visit.");
        return string.IsNullOrWhiteSpace(entry.Why) ? new Refusal("lesson-reason-missing", "It is not said why.", "Write it in a few words; it goes to the practitioner.") : null;
    }

    /// <summary>Whether a visit holds a lesson.</summary>
    public static bool HasLesson(WeekVisit visit, AgencyAtHand agency) => OrderOf(visit, agency) is not null;

    /// <summary>The lesson's days stand in the order: the practitioner hears that they change.</summary>
    public static OrderRequest Request(LessonOff entry, WeekVisit visit, AgencyAtHand agency, string id) => new(
        $"{id}-order", visit.Patient, null, agency.Today,
        $"The lesson on {DayWords.Day(visit.Day)} is off: {entry.Why.Trim()} The series shifts by one. Ask the practitioner for the new day.", "agency");

    public static MendOffer Offer(LessonOff entry, MendSetting setting)
    {
        WeekVisit visit = setting.Visit(entry.Visit)!;
        CareOrder order = OrderOf(visit, setting.Agency)!;
        string name = setting.People.Name(visit.Patient), nurse = setting.People.NurseName(visit.Nurse);
        ImmutableArray<VisitCare> lesson = [.. visit.Care.Where(c => IsOf(c, order))], rest = [.. visit.Care.Where(c => !IsOf(c, order))];
        ImmutableArray<WeekVisit> series = [.. setting.Week.Visits.Where(v => v.Patient == visit.Patient && v.Day >= visit.Day && v.Care.Any(c => IsOf(c, order))).OrderBy(v => v.Day)];
        WeekVisit? shortened = rest.IsEmpty ? null : visit with { Care = rest, Minutes = MinutesOf(visit, rest, setting) };
        PlannedWeek without = setting.Week with { Visits = [.. setting.Week.Visits.Select(v => v.Id == visit.Id ? shortened : v).OfType<WeekVisit>()] };
        NewVisitAnswers found = Task(order, visit, series[^1].Day, setting) is { } task
            ? NewVisitAnswers.Of(setting.Agency, without, task, lesson, shortened is null ? visit : null)
            : new NewVisitAnswers([], []);
        ImmutableArray<MendAnswer> moved = [.. found.Answers
            .Select(a => a with { Changes = shortened is null ? a.Changes : [Shorter(visit, shortened, name), .. a.Changes], Price = a.Price with { Families = a.Price.Families + 1, OtherDay = 1 } })];
        var alone = new MendAnswer
        {
            Key = "",
            Title = $"Teach the patient alone on {DayWords.When(visit)}; nothing is moved",
            Decider = $"{nurse} says that it can be taught so.",
            ToTell = [setting.People.Nurse(visit.Nurse, $"{name}, {DayWords.When(visit)}: {entry.Why.Trim()} Can the patient be taught alone? Read it when parked.")],
        };
        ImmutableArray<MendAnswer> answers = moved.IsEmpty ? [alone, Off(visit, shortened, name, setting)] : [.. moved.Take(2), alone];
        return new MendOffer
        {
            Facts =
            [
                $"The lesson on {DayWords.When(visit)} cannot be held as planned: {entry.Why.Trim()}",
                .. series.Length > 1 ? [$"The series shifts by one: {string.Join(", ", series.Skip(1).Select(v => DayWords.Day(v.Day)))} stay, and what was to be taught moves on."] : ImmutableArray<string>.Empty,
                .. setting.Week.Visits.Where(v => v.Patient == visit.Patient && v.Day >= visit.Day).SelectMany(v => OtherCare(v, order)),
                "The order names the days: the practitioner is asked, the request waits under Orders.",
                .. moved.IsEmpty ? ["No evening of this week is free for it. The next week takes it up once the order names the day."] : ImmutableArray<string>.Empty,
            ],
            Answers = [.. answers.Select((a, i) => a with { Key = ((char)('A' + i)).ToString() })],
            RuledOut = found.RuledOut,
        };
    }

    private static IEnumerable<string> OtherCare(WeekVisit visit, CareOrder order)
    {
        string[] other = [.. visit.Care.Where(c => !IsOf(c, order)).Select(c => c.Label)];
        if (other.Length > 0) yield return $"Stays on {DayWords.Day(visit.Day)}: {string.Join("; ", other)}.";
    }

    private static MendAnswer Off(WeekVisit visit, WeekVisit? shortened, string name, MendSetting setting) => new()
    {
        Key = "",
        Title = "Take the lesson out of this week",
        Changes = [shortened is null ? WeekDifference.Without(visit, name, "the lesson is off; the next week takes it up.") : Shorter(visit, shortened, name)],
        Price = new MendPrice { Families = 1, Nurses = 1 },
        ToTell = [setting.People.Family(visit.Patient, $"The lesson on {DayWords.When(visit)} is off. We call with another day."), setting.People.Nurse(visit.Nurse, $"{name}, {DayWords.When(visit)}: the lesson is off. Read it when parked.")],
    };

    private static VisitChange Shorter(WeekVisit visit, WeekVisit shortened, string name) =>
        new(visit, shortened, $"{name}, {DayWords.When(visit)}: without the lesson, {shortened.Minutes} min instead of {visit.Minutes}.", 0);

    /// <summary>The lesson on an evening after the series; empty when the week has none left.</summary>
    private static CareTask? Task(CareOrder order, WeekVisit visit, LocalDate last, MendSetting setting)
    {
        Patient patient = setting.Agency.Roster.Patients.First(p => p.Id == visit.Patient);
        PlanCalendar calendar = setting.Calendar;
        ImmutableArray<Span> spans = [.. Enumerable.Range(1, 6).Select(last.PlusDays)
            .Where(d => calendar.Day(d) < calendar.DayCount && order.IsActiveOn(d) && (order.Weekdays.IsEmpty || order.Weekdays.Contains(d.DayOfWeek)))
            .Select(d => new Span(
                calendar.Minute(d, order.StartFrom ?? LocalTime.Midnight, patient.Zone), calendar.Minute(d, order.StartTo ?? new LocalTime(23, 59), patient.Zone)))];
        if (spans.IsEmpty) return null;
        (int setup, int work) = new CareMinutes(setting.Agency.Files.Policy, setting.Agency.Today).Of(order);
        return new CareTask
        {
            Id = TaskId,
            Patient = patient.Id.Value,
            Label = order.Text,
            Opens = spans[0].From,
            LateFrom = spans[^1].To + 1,
            HardLatest = spans[^1].To,
            StartSpans = spans,
            SetupMinutes = setup + patient.ExtraMinutes,
            WorkMinutes = work,
            Skills = CareSkills.Of(CareItem.OrderedService, null, order, patient),
            Weight = 1,
        };
    }

    private static int MinutesOf(WeekVisit visit, ImmutableArray<VisitCare> left, MendSetting setting)
    {
        ImmutableArray<CareTask> tasks = [.. setting.Standing.Needs.GetValueOrDefault(visit.Id, []).Where(n => left.Any(c => c.Key == n.Key)).Select(n => n.Task)];
        return tasks.IsEmpty ? visit.Minutes : Math.Min(visit.Minutes, tasks.Max(t => t.SetupMinutes) + tasks.Sum(t => t.WorkMinutes));
    }

    private static CareOrder? OrderOf(WeekVisit visit, AgencyAtHand agency) => agency.Roster.Orders
        .FirstOrDefault(o => o.Patient == visit.Patient && o.Kind == OrderKind.Teaching && visit.Care.Any(c => IsOf(c, o)));

    private static bool IsOf(VisitCare care, CareOrder order) => care.Key.Split('|') is [_, _, _, _, var id] && id == order.Id;
}
