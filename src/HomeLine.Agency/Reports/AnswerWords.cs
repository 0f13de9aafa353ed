using System.Collections.Immutable;
using System.Globalization;
using HomeLine.Agency.Mending;
using HomeLine.Agency.Roster;
using HomeLine.Agency.WeekPlanning;
using HomeLine.LineCare.Lines;
using HomeLine.LineCare.Orders;
using HomeLine.Planning.Answers;
using HomeLine.Planning.Plans;
using NodaTime;

namespace HomeLine.Agency.Reports;

/// <summary>One answer of the planner in words, with the week it makes and everybody who must be told.</summary>
internal sealed class AnswerWords(
    AgencyRoster roster,
    CareFiles files,
    Patient patient,
    UrgentBundle bundle,
    ShortenedVisits shortened,
    PlanCalendar calendar,
    ProblemReport report,
    Instant now,
    bool keepLater = false)
{
    private readonly Dictionary<string, string> nurses = roster.Nurses.ToDictionary(n => n.Id, n => n.Name);
    private readonly Dictionary<PatientId, Patient> patients = roster.Patients.ToDictionary(p => p.Id);

    public (AnswerInWords Words, PlannedWeek Week) Of(UrgentAnswer answer, string key, PlannedWeek week)
    {
        WeekVisit visit = NewVisit(answer.Visit, key, week);
        PlannedWeek after = After(answer, visit, week);
        string nurse = nurses[answer.Visit.Nurse];
        ImmutableArray<WeekVisit> replaced = keepLater ? [] : [.. answer.Replaced.Select(r => week.Visits.First(v => v.Id == r.Id))];
        var words = new AnswerInWords(
            key,
            $"{nurse}, {Day(visit.Day)} {visit.Start:HH:mm}",
            visit,
            nurse,
            answer.DrivingDelta,
            answer.MeetsTarget,
            answer.Disruption,
            [.. answer.Moved.Select(Move)],
            [
                .. replaced.Select(v => $"{Day(v.Day)} {v.Start:HH:mm} with {nurses[v.Nurse]} is no longer needed."),
                .. shortened.Visits.Select(v => $"{Day(v.After.Day)} {v.After.Start:HH:mm} with {nurses[v.After.Nurse]} {Shorter(v.Before, v.After)}"),
            ],
            keepLater ? [] : [.. answer.Freed.Select(f => $"{nurses[f.Nurse]} gets {f.VisitMinutes} min and {f.DrivingMinutes} min of driving back on {Day(calendar.Date(f.Day))}.")],
            ToTell(answer, visit, replaced),
            NextWindow(visit.Day),
            OrderLedger())
        {
            ToldMinutes = (int)files.Policy.ValueOf("told.range", visit.Day),
            After = key.Length == 1 ? AfterThis.Of(roster, week, after, OtherDays(answer).Prepend(patient.Id), now) : [],
            Changes = Changes(answer, visit, replaced, week, after),
        };
        return (words, after);
    }

    private ImmutableArray<VisitChange> Changes(UrgentAnswer answer, WeekVisit visit, ImmutableArray<WeekVisit> replaced, PlannedWeek week, PlannedWeek after) =>
    [
        new VisitChange(null, visit, $"New: {Day(visit.Day)} {visit.Start:HH:mm}.", 0),
        .. answer.Moved.Select(m => new VisitChange(week.Visits.First(v => v.Id == m.Before.Id), after.Visits.First(v => v.Id == m.After.Id), Move(m), m.Minutes)),
        .. replaced.Select(v => new VisitChange(v, null, $"{Day(v.Day)} {v.Start:HH:mm} is no longer needed.", 0)),
        .. shortened.Visits.Select(v => new VisitChange(v.Before, v.After, Shorter(v.Before, v.After), 0)),
    ];

    private IEnumerable<PatientId> OtherDays(UrgentAnswer answer) => answer.Moved
        .Where(m => calendar.Local(m.Before.Start).Date != calendar.Local(m.After.Start).Date).Select(m => new PatientId(m.Before.Patient));

    private WeekVisit NewVisit(PlannedVisit planned, string key, PlannedWeek week)
    {
        LocalDateTime start = calendar.Local(planned.Start);
        return new WeekVisit
        {
            Id = $"{patient.Id.Value}-{start.Date:MMdd}-v{week.Version + 1}{key.Replace(" ", "", StringComparison.Ordinal)}",
            Patient = patient.Id,
            Nurse = planned.Nurse,
            Second = planned.Second,
            Day = start.Date,
            Start = start.TimeOfDay,
            Minutes = planned.Minutes,
            Care = [.. bundle.Needs.Select(n => n.AsVisitCare())],
            Promise = PromiseState.Told,
            ToldFrom = start.TimeOfDay,
        };
    }

    private PlannedWeek After(UrgentAnswer answer, WeekVisit visit, PlannedWeek week)
    {
        var after = answer.Plan.Visits.ToDictionary(v => v.Id);
        HashSet<string> replaced = keepLater ? [] : [.. answer.Replaced.Select(r => r.Id)];
        var moved = answer.Moved.Select(m => m.After.Id).ToHashSet();
        IEnumerable<WeekVisit> kept = week.Visits
            .Where(v => !replaced.Contains(v.Id))
            .Select(v => after.TryGetValue(v.Id, out PlannedVisit? planned) ? Moved(v, planned, moved.Contains(v.Id)) : v);
        return week with { Visits = [.. kept.Append(visit).OrderBy(v => v.Day).ThenBy(v => v.Start).ThenBy(v => v.Nurse, StringComparer.Ordinal)] };
    }

    private WeekVisit Moved(WeekVisit visit, PlannedVisit planned, bool leavesRange)
    {
        LocalDateTime start = calendar.Local(planned.Start);
        return visit with
        {
            Nurse = planned.Nurse,
            Second = planned.Second,
            Day = start.Date,
            Start = start.TimeOfDay,
            ToldFrom = leavesRange ? start.TimeOfDay : visit.ToldFrom,
        };
    }

    private static string Shorter(WeekVisit before, WeekVisit after) =>
        $"keeps only: {string.Join(", ", after.Care.Select(c => c.Label))} ({after.Minutes} min instead of {before.Minutes}).";

    private string Move(MovedVisit moved)
    {
        string name = patients[new PatientId(moved.Before.Patient)].Name;
        LocalDateTime from = calendar.Local(moved.Before.Start);
        LocalDateTime to = calendar.Local(moved.After.Start);
        string other = moved.After.Nurse == moved.Before.Nurse ? "" : $" with {nurses[moved.After.Nurse]}";
        if (from.Date != to.Date) return $"{name} moves from {Day(from.Date)} {Time(moved.Before.Start)} to {Day(to.Date)} {Time(moved.After.Start)}{other}: one call.";
        string way = moved.Minutes >= 0 ? "later" : "earlier";
        return $"{name} moves from {Time(moved.Before.Start)} to {Time(moved.After.Start)}{other}, {Math.Abs(moved.Minutes)} min {way}: one call.";
    }

    private ImmutableArray<PersonToTell> ToTell(UrgentAnswer answer, WeekVisit visit, ImmutableArray<WeekVisit> replaced)
    {
        Instant by = now + Duration.FromMinutes((int)files.Policy.ValueOf("tell.within", visit.Day));
        var people = ImmutableArray.CreateBuilder<PersonToTell>();
        string cancelled = replaced.IsEmpty ? "" : $" The visit on {string.Join(" and ", replaced.Select(v => Day(v.Day)))} is cancelled.";
        cancelled += string.Concat(shortened.Visits.Select(v => $" The visit on {Day(v.After.Day)} stays and is shorter."));
        people.Add(new PersonToTell(
            $"{report.Caller}, {patient.Name}", Phone(patient.Phone), $"A nurse comes {(visit.Day == calendar.Local(calendar.Minute(now)).Date ? "today" : $"on {Day(visit.Day)}")} between {Range(visit)}.{cancelled}", by));
        people.Add(new PersonToTell(nurses[visit.Nurse], Phone(NursePhone(visit.Nurse)), $"New visit {Day(visit.Day)} {visit.Start:HH:mm}, {visit.Minutes} min.", by) { Nurse = visit.Nurse });
        foreach (IGrouping<string, WeekVisit> nurse in replaced.Where(v => v.Nurse != visit.Nurse).GroupBy(v => v.Nurse))
        {
            people.Add(new PersonToTell(
                nurses[nurse.Key], Phone(NursePhone(nurse.Key)),
                $"The visit on {string.Join(" and ", nurse.Select(v => $"{Day(v.Day)} {v.Start:HH:mm}"))} is no longer needed.", by)
            {
                Nurse = nurse.Key,
            });
        }

        foreach ((WeekVisit before, WeekVisit after) in shortened.Visits)
            people.Add(new PersonToTell(nurses[after.Nurse], Phone(NursePhone(after.Nurse)), $"The visit on {Day(after.Day)} {after.Start:HH:mm} {Shorter(before, after)}", by) { Nurse = after.Nurse });
        foreach (MovedVisit moved in answer.Moved)
        {
            Patient other = patients[new PatientId(moved.Before.Patient)];
            people.Add(new PersonToTell(other.Name, Phone(other.Phone), $"The nurse comes on {Moment(moved.After.Start)} instead of {Moment(moved.Before.Start)}.", by));
            foreach (string nurse in new[] { moved.Before.Nurse, moved.After.Nurse }.Distinct().Where(n => n != visit.Nurse))
                people.Add(new PersonToTell(nurses[nurse], Phone(NursePhone(nurse)), Move(moved), by) { Nurse = nurse });
        }

        if (bundle.Needs.Any(n => n.Item == CareItem.Labs))
            people.Add(new PersonToTell("Laboratory list", "list", $"Draw moves to {Day(visit.Day)} {visit.Start:HH:mm}.", by));
        return people.ToImmutable();
    }

    private string Range(WeekVisit visit)
    {
        int minutes = (int)files.Policy.ValueOf("told.range", visit.Day);
        return $"{visit.Start:HH:mm} and {visit.Start.PlusMinutes(minutes):HH:mm}";
    }

    private string NextWindow(LocalDate day) => bundle.Window.Next is { } next
        ? $"After this visit the dressing is next due {Day(next.OpensAfter(day))} to {Day(day.PlusDays(next.MaxMinutes() / PlanCalendar.MinutesADay))}."
        : "";

    private string OrderLedger()
    {
        CareOrder? order = files[patient.Id].Orders.FirstOrDefault(o => o.Kind == OrderKind.VisitFrequency && o.AsNeededVisits is > 0);
        if (order is null) return "No as-needed visit is ordered: an order request is opened. The visit itself is not held up.";
        int used = order.AsNeededUsed + 1;
        return used <= order.AsNeededVisits
            ? $"As-needed visits: {used} of {order.AsNeededVisits} used."
            : $"All {order.AsNeededVisits} as-needed visits are used: an order request is opened. The visit itself is not held up.";
    }

    private string Moment(int minute) => $"{Day(calendar.Local(minute).Date)} {Time(minute)}";

    private string NursePhone(string nurse) => roster.Nurses.First(n => n.Id == nurse).Phone;

    private string Time(int minute) => calendar.Local(minute).TimeOfDay.ToString("HH:mm", CultureInfo.InvariantCulture);

    private static string Phone(string number) => number.Length > 0 ? $"phone {number}" : "phone: number missing, use the other contact";

    private static string Day(LocalDate date) => date.ToString("ddd d MMM", CultureInfo.InvariantCulture);
}
