using System.Collections.Immutable;
using HomeLine.Agency.Roster;
using HomeLine.Planning.Plans;
using HomeLine.Planning.Problem;
using NodaTime;

namespace HomeLine.Agency.WeekPlanning;

/// <summary>
/// A stored week as the planner sees it: each visit one task with the visit's own minutes, inside the windows of the care it holds.
/// Used to check a week, to draw it, and to mend it without taking visits apart.
/// </summary>
/// <param name="Problem">The problem with one task for each visit.</param>
/// <param name="Plan">The week itself, as the published plan.</param>
/// <param name="Calendar">The minute axis.</param>
/// <param name="Needs">What each visit answers, by its identifier; a visit whose care is no longer due answers nothing.</param>
public sealed record StandingWeek(
    WeekProblem Problem, WeekPlan Plan, PlanCalendar Calendar, ImmutableDictionary<string, ImmutableArray<CareNeed>> Needs)
{
    /// <param name="roster">The roster.</param>
    /// <param name="files">The roster cut by patient.</param>
    /// <param name="week">The stored week.</param>
    /// <param name="now">The moment looked from; visits before it are done or under way.</param>
    /// <param name="urgent">The task of a need that came up since.</param>
    /// <param name="covered">Visits whose care that task takes over: they stand for it in the published plan.</param>
    public static StandingWeek Of(
        AgencyRoster roster, CareFiles files, PlannedWeek week, Instant now, CareTask? urgent = null, IReadOnlySet<string>? covered = null)
    {
        const int days = 7;
        var calendar = new PlanCalendar(roster.Profile.Zone, week.FirstDay, days);
        RoadTravel roads = RoadTravel.Of(roster);
        var patients = roster.Patients.ToDictionary(p => p.Id);

        // A visit that lies behind keeps the windows it was planned in. One that lies ahead has those of now, counting visits that
        // should have been made by now as made: the due list is where a missed one shows.
        Instant begins = week.Visits.IsEmpty ? now : week.Visits.Min(v => v.Day.At(v.Start).InZoneLeniently(calendar.Zone).ToInstant());
        AgencyRoster kept = Foreseen.At(roster, [week], now, now);
        int minute = calendar.Minute(now);
        ILookup<bool, WeekVisit> isBehind = week.Visits.ToLookup(v => calendar.Minute(v.Day, v.Start) < minute);
        ILookup<string, CareNeed> ahead = NeedsAt(isBehind[false], begins < now ? files.After(roster, kept) : files, now);
        ILookup<string, CareNeed> behind = begins < now ? NeedsAt(isBehind[true], files, begins) : ahead;
        var nurses = roster.Nurses.ToDictionary(n => n.Id);
        int interpreter = (int)files.Policy.ValueOf("visit.interpreter", now.InZone(calendar.Zone).Date);
        ImmutableArray<WeekVisit> visits = [.. week.Visits.Where(v => v.Held is null)];
        var answered = visits.ToImmutableDictionary(v => v.Id, v => Answered(v, calendar.Minute(v.Day, v.Start) < minute ? behind : ahead, calendar));
        ImmutableArray<CareTask> tasks = [.. visits.Where(v => covered?.Contains(v.Id) != true).Select(v =>
        {
            Patient patient = patients[v.Patient];
            int extraMinutes = NeedsInterpreter(patient, nurses[v.Nurse]) ? interpreter : 0;
            CareTask task = Task(v, patient, v.Minutes - extraMinutes, answered[v.Id], calendar);
            return answered[v.Id].IsEmpty ? task with { Kinds = CareKinds.Of(task.Skills, task.WorkMinutes, files.Policy, v.Day) } : task;
        }), .. urgent is null ? (ReadOnlySpan<CareTask>)[] : [urgent]];
        WeekProblem problem = WeekDemand.ProblemOf(roster, files, roads, calendar, now, tasks);
        var plan = new WeekPlan([.. visits.Select(v => Visit(v, covered?.Contains(v.Id) == true ? urgent!.Id : v.Id, calendar))], [], default);
        return new StandingWeek(
            problem with { Published = plan, FrozenVisits = Frozen(plan, minute, files, now, calendar) },
            plan,
            calendar,
            answered);

        ILookup<string, CareNeed> NeedsAt(IEnumerable<WeekVisit> of, CareFiles cut, Instant at) =>
            WeekDemand.NeedsOf(of.Select(v => v.Patient).Distinct().Select(id => patients[id]), cut, calendar, at).Needs.ToLookup(n => n.Key);
    }

    private static ImmutableArray<string> Frozen(WeekPlan plan, int now, CareFiles files, Instant at, PlanCalendar calendar)
    {
        int ahead = (int)files.Policy.ValueOf("frozen.ahead", at.InZone(calendar.Zone).Date);
        return [.. plan.Visits.Where(v => v.Start < now + ahead).Select(v => v.Id)];
    }

    private static ImmutableArray<CareNeed> Answered(WeekVisit visit, ILookup<string, CareNeed> needs, PlanCalendar calendar)
    {
        int start = calendar.Minute(visit.Day, visit.Start);
        return [.. visit.Care.Select(c => PromisedVisits.Nearest(needs[c.Key], n => n.Task, start)).OfType<CareNeed>()];
    }

    private static CareTask Task(WeekVisit visit, Patient patient, int minutes, ImmutableArray<CareNeed> needs, PlanCalendar calendar)
    {
        ImmutableArray<CareTask> parts = [.. needs.Select(n => n.Task)];
        var whole = new CareTask
        {
            Id = visit.Id,
            Patient = visit.Patient.Value,
            Label = string.Join("; ", visit.Care.Select(c => c.Label)),
            Opens = calendar.Minute(visit.Day, LocalTime.Midnight),
            LateFrom = calendar.Minute(visit.Day.PlusDays(1), LocalTime.Midnight),
            SetupMinutes = 0,
            WorkMinutes = minutes,
            Skills = [.. patient.NeedsSkills],
            Weight = 1,
        };
        return parts.IsEmpty ? whole : Merge(whole, parts);
    }

    private static bool NeedsInterpreter(Patient patient, NurseFile nurse) =>
        patient.Language is not ("en" or "") && !nurse.Traits.Contains($"language:{patient.Language}");

    private static CareTask Merge(CareTask whole, ImmutableArray<CareTask> parts) => whole with
    {
        Opens = parts.Max(p => p.Opens),
        LateFrom = parts.Min(p => p.LateFrom),
        HardLatest = parts.Min(p => p.HardLatest),
        StartSpans = parts.FirstOrDefault(p => !p.StartSpans.IsEmpty)?.StartSpans ?? [],
        Skills = [.. parts.SelectMany(p => p.Skills).Distinct().Order(StringComparer.Ordinal)],
        Kinds = [.. parts.SelectMany(p => p.Kinds).Distinct().Order(StringComparer.Ordinal)],
        Critical = parts.Any(p => p.Critical),
        Weight = parts.Sum(p => p.Weight),
        DrawToDropMinutes = parts.Min(p => p.DrawToDropMinutes),
        Safety = parts.Any(p => p.Safety),
    };

    private static PlannedVisit Visit(WeekVisit visit, string task, PlanCalendar calendar) => new()
    {
        Id = visit.Id,
        Patient = visit.Patient.Value,
        Nurse = visit.Nurse,
        Second = visit.Second,
        Start = calendar.Minute(visit.Day, visit.Start),
        Minutes = visit.Minutes,
        Tasks = [task],
        Promise = visit.Promise,
        ToldFrom = visit.ToldFrom is { } told ? calendar.Minute(visit.Day, told) : null,
    };
}
