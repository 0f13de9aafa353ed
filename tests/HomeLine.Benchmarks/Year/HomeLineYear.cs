using System.Collections.Immutable;
using HomeLine.Agency.Reports;
using HomeLine.Agency.WeekPlanning;
using HomeLine.LineCare.Ledger;
using HomeLine.LineCare.RedFlags;
using HomeLine.Planning;
using HomeLine.Planning.Answers;
using HomeLine.Planning.Mending;
using HomeLine.Planning.Plans;
using HomeLine.Planning.Problem;
using NodaTime;

namespace HomeLine.Benchmarks.Year;

/// <summary>The program's own way: the week planned by the search, broken days mended, lifting dressings answered, new needs placed where they disturb least.</summary>
internal sealed class HomeLineYear(PlanOptions options, int daysLookedAt, bool keepsReserve) : IYearPlanner
{
    private const string UrgentTask = "needed";

    public string Name => keepsReserve ? "HomeLine" : "HomeLine, no reserve planned";

    public PlannedWeek Plan(YearWorld world, LocalDate monday)
    {
        WeekDemand demand = WeekDemand.Ahead(world.Roster, [world.Week], monday, world.Now, daysLookedAt);
        WeekPlan plan = keepsReserve
            ? Planner.PlanWithReserve(demand.Problem, options, DayReserve.Rules(world.Files.Policy, monday)).Plan
            : Planner.Plan(demand.Problem, options);
        return Told(PlanInNames.Of(plan, demand));
    }

    public PlannedWeek Morning(YearWorld world)
    {
        PlannedWeek week = Mend(world, world.Week);
        return Place(world, week);
    }

    public PlannedWeek Lifted(YearWorld world, LineEvent report)
    {
        var told = new ProblemReport
        {
            Patient = report.Patient,
            Line = report.Line!.Value,
            Caller = "family",
            SeenAt = world.Now,
            Answers = ImmutableDictionary<string, ScreenAnswer>.Empty,
            Finding = report.Seal,
        };
        var offer = SealOffer.Of(world.Roster, world.Files, world.Week, told, [], world.Now);
        return offer.Succeeded && offer.Value.Offer.Answers is [var best, ..] ? Told(offer.Value.Weeks[best.Key]) : Place(world, world.Week);
    }

    /// <summary>Nurses who called out and roads that are closed today, mended at once.</summary>
    private static PlannedWeek Mend(YearWorld world, PlannedWeek week)
    {
        // The roster of the morning has the absences in it already; the plan that stands was made without them.
        var usual = world.Roster with { Nurses = [.. world.Roster.Nurses.Select(n => n with { Leaves = [] })], Map = world.RoadsOf(world.Year.First) };
        StandingWeek standing = StandingWeek.Of(usual, CareFiles.Of(usual), week, world.Now);
        var troubles = ImmutableArray.CreateBuilder<Trouble>();
        foreach (var nurse in world.Roster.Nurses.Where(n => !n.Leaves.IsEmpty))
        {
            int to = Math.Min(standing.Calendar.End, standing.Calendar.Minute(nurse.Leaves[0].Through.PlusDays(1), LocalTime.Midnight));
            if (to > standing.Problem.Now) troubles.Add(new Trouble.NurseOut(nurse.Id, standing.Problem.Now, to));
        }

        if (world.Year.Snows(world.Today))
        {
            int midnight = standing.Calendar.Minute(world.Today.PlusDays(1), LocalTime.Midnight);
            troubles.Add(new Trouble.Roads(new RoadChange(standing.Problem.Now, midnight, RoadTravel.Of(world.Roster).Times)));
        }

        if (troubles.Count == 0) return week;
        MendedWeek mended = Planner.Mend(standing.Problem, troubles.ToImmutable(), new MendOptions(Rounds: 200));
        return With(week, mended.Plan, standing);
    }

    /// <summary>Care that came up since the week was published: each patient's in one visit, where it disturbs least.</summary>
    private static PlannedWeek Place(YearWorld world, PlannedWeek week)
    {
        WeekDemand demand = WeekDemand.Ahead(world.Roster, [week], week.FirstDay, world.Now);
        var planned = demand.Problem.Published?.Visits.SelectMany(v => v.Tasks).ToHashSet(StringComparer.Ordinal) ?? [];
        var open = demand.Needs.Values.Where(n => n.Task.After is null && !planned.Contains(n.Task.Id) && n.Windows[0].LastDay < week.FirstDay.PlusDays(7)).GroupBy(n => n.Patient).OrderBy(g => g.Min(n => n.Task.LateFrom)).ThenBy(g => g.Key.Value, StringComparer.Ordinal);
        foreach (var patient in open)
        {
            foreach (ImmutableArray<CareNeed> together in Together(patient))
            {
                CareTask task = Merge(together, demand.Problem.Now);
                StandingWeek standing = StandingWeek.Of(world.Roster, world.Files, week, world.Now, task);
                UrgentAnswers answers = Planner.Answer(standing.Problem, new UrgentNeed(patient.Key.Value, [task.Id], []));
                if (answers.Answers is not [var best, ..]) continue;
                LocalDateTime start = standing.Calendar.Local(best.Visit.Start);
                week = With(week, best.Plan, standing);
                week = week with
                {
                    Visits = week.Visits.Add(new WeekVisit
                    {
                        Id = $"{patient.Key}-{world.Today:MMdd}-{week.Visits.Length}",
                        Patient = patient.Key,
                        Nurse = best.Visit.Nurse,
                        Second = best.Visit.Second,
                        Day = start.Date,
                        Start = start.TimeOfDay,
                        Minutes = best.Visit.Minutes,
                        Care = [.. together.Select(n => n.AsVisitCare())],
                        Promise = PromiseState.Told,
                        ToldFrom = start.TimeOfDay,
                    }),
                };
            }
        }

        return week;
    }

    /// <summary>Needs whose windows share some time go together; the earliest to be late leads.</summary>
    private static IEnumerable<ImmutableArray<CareNeed>> Together(IEnumerable<CareNeed> needs)
    {
        var rest = needs.OrderBy(n => n.Task.LateFrom).ThenBy(n => n.Task.Id, StringComparer.Ordinal).ToList();
        while (rest.Count > 0)
        {
            CareNeed lead = rest[0];
            ImmutableArray<CareNeed> group = [lead, .. rest.Skip(1).Where(n => n.Task.StartSpans.IsEmpty && n.Task.Opens < Math.Max(lead.Task.LateFrom, lead.Task.Opens + 1440) && n.Task.HardLatest > lead.Task.Opens)];
            rest.RemoveAll(group.Contains);
            yield return group;
        }
    }

    private static CareTask Merge(ImmutableArray<CareNeed> needs, int now)
    {
        ImmutableArray<CareTask> parts = [.. needs.Select(n => n.Task)];
        return parts[0] with
        {
            Id = UrgentTask,
            Label = string.Join("; ", parts.Select(p => p.Label)),
            Opens = Math.Max(now, parts.Max(p => p.Opens)),
            LateFrom = parts.Min(p => p.LateFrom),
            HardLatest = parts.Min(p => p.HardLatest),
            StartSpans = parts.FirstOrDefault(p => !p.StartSpans.IsEmpty)?.StartSpans ?? [],
            SetupMinutes = parts.Max(p => p.SetupMinutes),
            WorkMinutes = parts.Sum(p => p.WorkMinutes),
            Skills = [.. parts.SelectMany(p => p.Skills).Distinct().Order(StringComparer.Ordinal)],
            After = null,
        };
    }

    /// <summary>The stored week as the plan moves it; visits it leaves out fall away.</summary>
    private static PlannedWeek With(PlannedWeek week, WeekPlan plan, StandingWeek standing)
    {
        var after = plan.Visits.ToDictionary(v => v.Id, StringComparer.Ordinal);
        var stood = standing.Plan.Visits.Select(v => v.Id).ToHashSet(StringComparer.Ordinal);
        return week with
        {
            Visits = [.. week.Visits.Where(v => !stood.Contains(v.Id) || after.ContainsKey(v.Id)).Select(v => after.TryGetValue(v.Id, out PlannedVisit? moved) ? Moved(v, moved, standing) : v)],
        };
    }

    private static WeekVisit Moved(WeekVisit visit, PlannedVisit planned, StandingWeek standing)
    {
        LocalDateTime start = standing.Calendar.Local(planned.Start);
        bool outside = start.Date != visit.Day || start.TimeOfDay < (visit.ToldFrom ?? visit.Start) || start.TimeOfDay > (visit.ToldFrom ?? visit.Start).PlusMinutes(60);
        return visit with { Nurse = planned.Nurse, Second = planned.Second, Day = start.Date, Start = start.TimeOfDay, ToldFrom = outside ? start.TimeOfDay : visit.ToldFrom };
    }

    private static PlannedWeek Told(PlannedWeek week) => week with { Visits = [.. week.Visits.Select(v => v with { Promise = PromiseState.Told, ToldFrom = v.ToldFrom ?? v.Start })] };
}
