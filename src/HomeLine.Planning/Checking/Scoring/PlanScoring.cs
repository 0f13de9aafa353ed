using HomeLine.Planning.Plans;
using HomeLine.Planning.Problem;

namespace HomeLine.Planning.Checking.Scoring;

/// <summary>The score and the figures, from scratch.</summary>
internal static class PlanScoring
{
    public static PlanScore Score(PlanFacts facts)
    {
        PlanningRules rules = facts.Problem.Rules;
        long critical = 0, risk = 0, duties = 0;
        foreach (CareTask task in facts.Problem.Tasks)
        {
            VisitFact? visit = facts.VisitOf(task.Id);
            if (visit is null && task.LeftOutDuty is { } wished)
            {
                duties += wished;
                continue;
            }

            long late = visit is null
                ? LatePoints.Unmet(facts.Problem, task)
                : LatePoints.Done(rules, task, visit.Visit.Start, LateFrom(facts, task));
            if (task.Critical) critical += late;
            else risk += late;
            if (visit is not null && task.TargetBy is { } target && visit.Visit.Start > target) duties += task.Weight;
        }

        duties += facts.Problem.Patients.Sum(p => BeyondOrders(facts, p)) * rules.AllowanceExceededPoints;
        long work = facts.NurseDays.Sum(d =>
            ((long)d.Visits.Length * rules.VisitPriceMinutes) + d.Driving + d.Wait + (rules.OvertimeFactor * d.Overtime));
        return new PlanScore(critical, risk, duties, work, PeoplePoints.Of(facts), UnusedLife(facts));
    }

    public static PlanFigures Figures(PlanFacts facts)
    {
        Shift[] shifts =
        [
            .. facts.Problem.Nurses.SelectMany(n => n.Shifts).Where(s => !s.OnCall && s.Day >= 0 && s.Day < facts.Problem.DayCount),
        ];
        int visits = facts.Visits.Sum(v => v.People);
        return new PlanFigures(
            visits,
            (int)facts.Visits.Sum(v => (long)v.Visit.Minutes * v.People),
            visits * facts.Problem.Rules.DocumentationMinutes,
            (int)facts.NurseDays.Sum(d => d.Driving - d.Drops.Sum(s => s.Minutes)),
            (int)facts.NurseDays.Sum(d => d.Overtime),
            shifts.Length,
            shifts.Sum(s => s.To - s.From),
            facts.Problem.Tasks.Count(t => facts.VisitOf(t.Id) is { } v && v.Visit.Start >= LateFrom(facts, t)),
            facts.NurseDays.Sum(d => d.Drops.Count),
            (int)facts.NurseDays.Sum(d => d.Drops.Sum(s => s.Minutes)));
    }

    /// <summary>First late minute, the chain's most minutes included.</summary>
    private static long LateFrom(PlanFacts facts, CareTask task)
    {
        if (task.MaxGap == int.MaxValue || facts.VisitBefore(task) is not { } before) return task.LateFrom;
        long byChain = task.GapInDays
            ? (before.Day + (task.MaxGap / 1440) + 1) * 1440L
            : (long)before.Visit.Start + task.MaxGap + 1;
        return Math.Min(task.LateFrom, byChain);
    }

    private static long BeyondOrders(PlanFacts facts, PatientHome patient) => patient.Allowances.Sum(allowance =>
    {
        int counted = facts.Visits.Count(v => v.Visit.Patient == patient.Id
            && v.Day >= allowance.FirstDay && v.Day <= allowance.LastDay && !v.Tasks.All(t => t.Safety));
        return Math.Max(0L, counted - allowance.Visits);
    });

    /// <summary>Whole days between the day care is done and its last day on time, and one for each habit broken.</summary>
    private static long UnusedLife(PlanFacts facts)
    {
        long life = 0;
        foreach (CareTask task in facts.Problem.Tasks)
        {
            if (facts.VisitOf(task.Id) is not { } visit) continue;
            if (task.LateFrom != int.MaxValue) life += Math.Max(0, PlanFacts.DayOf(task.LateFrom - 1L) - visit.Day);
            if (task.UsualDay is { } usual && usual != visit.Day) life++;
        }

        return life;
    }
}
