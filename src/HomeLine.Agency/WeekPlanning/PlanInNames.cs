using HomeLine.LineCare.Lines;
using HomeLine.Planning.Plans;
using NodaTime;

namespace HomeLine.Agency.WeekPlanning;

/// <summary>The planner's answer back in dates, names and care: what is stored and shown.</summary>
public static class PlanInNames
{
    private const int DaysOfAWeek = 7;

    /// <summary>The week itself. Days beyond it were looked at for the week's sake and are planned in their own time.</summary>
    public static PlannedWeek Of(WeekPlan plan, WeekDemand demand)
    {
        int end = demand.Calendar.Minute(demand.Calendar.FirstDay.PlusDays(DaysOfAWeek), LocalTime.Midnight);
        return new PlannedWeek
        {
            FirstDay = demand.Calendar.FirstDay,
            Visits = [.. plan.Visits.Where(v => v.Start < end).Select(v => Visit(v, demand))],
            Unmet = [.. plan.Unmet.Where(u => demand.Needs[u.Task].Task.LateFrom <= end).Select(u => Unmet(u, demand)), .. demand.NotPlannable],
        };
    }

    private static WeekVisit Visit(PlannedVisit visit, WeekDemand demand)
    {
        LocalDateTime start = demand.Calendar.Local(visit.Start);
        return new WeekVisit
        {
            Id = visit.Id,
            Patient = new PatientId(visit.Patient),
            Nurse = visit.Nurse,
            Second = visit.Second,
            Day = start.Date,
            Start = start.TimeOfDay,
            Minutes = visit.Minutes,
            Care = [.. visit.Tasks.Select(t => demand.Needs[t].AsVisitCare())],
            Promise = visit.Promise,
            ToldFrom = visit.ToldFrom is { } told ? demand.Calendar.Local(told).TimeOfDay : null,
        };
    }

    private static UnmetNeed Unmet(UnmetTask unmet, WeekDemand demand)
    {
        CareNeed need = demand.Needs[unmet.Task];
        return new UnmetNeed(need.Patient, need.Task.Label, unmet.Reasons, unmet.Relaxations) { LastDay = need.Windows[0].LastDay };
    }
}
