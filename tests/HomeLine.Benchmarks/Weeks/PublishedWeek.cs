using HomeLine.Planning;
using HomeLine.Planning.Plans;
using HomeLine.Planning.Problem;

namespace HomeLine.Benchmarks.Weeks;

/// <summary>A planned week as published: families were told ranges of an hour from the planned start; what lies behind now is done.</summary>
internal static class PublishedWeek
{
    public static WeekProblem Of(WeekProblem week, int rounds, int now)
    {
        WeekPlan plan = Planner.Plan(week, new PlanOptions(1, rounds));
        WeekPlan published = plan with
        {
            Visits = [.. plan.Visits.Select(v => v with { Promise = v.Start < now ? PromiseState.Done : PromiseState.Told, ToldFrom = v.Start })],
        };
        return week with { Now = now, Published = published };
    }
}

/// <summary>A dressing that lifts, or another need within hours, at a drawn patient.</summary>
internal sealed record UrgentEvent(HomeLine.Planning.Answers.UrgentNeed Need, System.Collections.Immutable.ImmutableArray<CareTask> Tasks)
{
    public static UrgentEvent Of(WeekProblem week, Draw draw, int index)
    {
        PatientHome patient = week.Patients[draw.Below(week.Patients.Length)];
        int opens = week.Now + draw.Below(360), hours = 4 + draw.Below(28);
        var task = new CareTask
        {
            Id = $"urgent {index}",
            Patient = patient.Id,
            Label = "lifting dressing",
            Opens = opens,
            LateFrom = opens + (60 * hours),
            TargetBy = opens + (30 * hours),
            SetupMinutes = 15,
            WorkMinutes = 30 + draw.Below(45),
            Skills = draw.Percent(30) ? ["PICC", "PN"] : ["PICC"],
            Weight = 5,
            Critical = draw.Percent(50),
            Safety = true,
        };
        string[] replaced = draw.Percent(40)
            ? [.. week.Published!.Visits.Where(v => v.Patient == patient.Id && v.Promise == PromiseState.Told && v.Start > opens + 240).Take(1).Select(v => v.Id)]
            : [];
        return new UrgentEvent(new HomeLine.Planning.Answers.UrgentNeed(patient.Id, [task.Id], [.. replaced]), [task]);
    }
}
