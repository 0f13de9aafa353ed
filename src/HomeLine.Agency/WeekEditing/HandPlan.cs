using System.Collections.Immutable;
using HomeLine.Agency.Roster;
using HomeLine.Agency.WeekPlanning;
using HomeLine.Planning.Editing;
using HomeLine.Planning.Plans;
using HomeLine.Planning.Problem;
using NodaTime;

namespace HomeLine.Agency.WeekEditing;

/// <summary>A week as a plan to try moves on. A visit whose care is no longer due still takes its nurse's time.</summary>
internal static class HandPlan
{
    public static HandWeek Of(WeekNeeds needs, PlannedWeek week, PlannedWeek? published, AgencyRoster roster, IReadOnlySet<string> pinned)
    {
        WeekDemand demand = needs.Demand;
        ImmutableArray<WeekVisit> ahead = Ahead(week, demand), promised = published is null ? [] : Ahead(published, demand);
        var mapped = Mapped(demand, week);
        var told = published is null ? [] : Mapped(demand, published);
        ImmutableArray<CareTask> kept = [.. ahead.Where(v => !mapped.ContainsKey(v.Id)).Select(v => Kept(v, roster, demand.Calendar))];
        var keptOf = kept.Select(t => t.Id).ToHashSet();
        WeekProblem problem = demand.Problem with
        {
            Tasks = [.. demand.Problem.Tasks, .. kept],
            Published = new WeekPlan([.. promised.Select(v => Visit(v, told, keptOf, demand.Calendar)).OfType<PlannedVisit>()], [], default),
        };
        return new HandWeek(problem, [.. ahead.Select(v => Visit(v, mapped, keptOf, demand.Calendar)).OfType<PlannedVisit>()], pinned);
    }

    private static ImmutableArray<WeekVisit> Ahead(PlannedWeek week, WeekDemand demand) =>
        [.. week.Visits.Where(v => v.Held is null && demand.Calendar.Minute(v.Day, v.Start) >= demand.Problem.Now)];

    private static Dictionary<string, PlannedVisit> Mapped(WeekDemand demand, PlannedWeek week) =>
        PromisedVisits.In(demand, week).Problem.Published!.Visits.ToDictionary(v => v.Id);

    private static PlannedVisit? Visit(WeekVisit visit, Dictionary<string, PlannedVisit> mapped, HashSet<string> kept, PlanCalendar calendar)
    {
        if (mapped.TryGetValue(visit.Id, out PlannedVisit? found)) return found;
        if (!kept.Contains(KeptName(visit))) return null;
        return new PlannedVisit
        {
            Id = visit.Id,
            Patient = visit.Patient.Value,
            Nurse = visit.Nurse,
            Second = visit.Second,
            Start = calendar.Minute(visit.Day, visit.Start),
            Minutes = visit.Minutes,
            Tasks = [KeptName(visit)],
            Promise = visit.Promise,
            ToldFrom = visit.ToldFrom is { } told ? calendar.Minute(visit.Day, told) : null,
        };
    }

    private static string KeptName(WeekVisit visit) => "kept " + visit.Id;

    private static CareTask Kept(WeekVisit visit, AgencyRoster roster, PlanCalendar calendar) => new()
    {
        Id = KeptName(visit),
        Patient = visit.Patient.Value,
        Label = string.Join("; ", visit.Care.Select(c => c.Label)),
        Opens = calendar.Minute(visit.Day, LocalTime.Midnight),
        LateFrom = calendar.Minute(visit.Day.PlusDays(1), LocalTime.Midnight),
        SetupMinutes = 0,
        WorkMinutes = visit.Minutes,
        Skills = [.. roster.Patients.First(p => p.Id == visit.Patient).NeedsSkills],
        Weight = 1,
    };
}
