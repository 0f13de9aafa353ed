using System.Collections.Immutable;
using HomeLine.Agency.Reports;
using HomeLine.Agency.Roster;
using HomeLine.Agency.WeekPlanning;
using HomeLine.LineCare.Lines;
using HomeLine.Planning;
using HomeLine.Planning.Answers;
using HomeLine.Planning.Problem;
using NodaTime;

namespace HomeLine.Agency.Mending;

/// <summary>Where a visit that is not in the plan could go, moving as few told families as can be. Pure.</summary>
/// <param name="Answers">At most three, best first.</param>
/// <param name="RuledOut">Nurses who cannot, and why, in sentences.</param>
internal sealed record NewVisitAnswers(ImmutableArray<MendAnswer> Answers, ImmutableArray<string> RuledOut)
{
    /// <param name="agency">The agency.</param>
    /// <param name="week">The published week, without the visit that is replaced.</param>
    /// <param name="task">What the visit is for, as the planner's task.</param>
    /// <param name="care">The same as the stored week keeps it.</param>
    /// <param name="replaces">A visit of the published week that the new one stands for.</param>
    /// <param name="overtime">Whether anybody may stay longer than her shift.</param>
    public static NewVisitAnswers Of(AgencyAtHand agency, PlannedWeek week, CareTask task, ImmutableArray<VisitCare> care, WeekVisit? replaces = null, bool overtime = true)
    {
        var setting = new MendSetting(agency, week, task);
        WeekProblem problem = overtime ? setting.Standing.Problem : WithoutOvertime(setting.Standing.Problem);
        UrgentAnswers found = Planner.Answer(problem, new UrgentNeed(task.Patient, [task.Id], []));
        return new NewVisitAnswers(
            [.. found.Answers.Select((answer, i) => In(setting, answer, ((char)('A' + i)).ToString(), care, replaces))],
            [.. found.RuledOut.Select(r => $"{setting.People.NurseName(r.Nurse)}: {r.Reason.Sentence}")]);
    }

    private static WeekProblem WithoutOvertime(WeekProblem problem) => problem with
    {
        Nurses = [.. problem.Nurses.Select(n => n with { Shifts = [.. n.Shifts.Select(s => s with { OvertimeTo = s.To })] })],
    };

    private static MendAnswer In(MendSetting setting, UrgentAnswer answer, string key, ImmutableArray<VisitCare> care, WeekVisit? replaces)
    {
        WeekVisit visit = NewVisit(setting, answer, key, care);
        string nurse = setting.People.NurseName(visit.Nurse), name = setting.People.Name(visit.Patient);
        ImmutableArray<VisitChange> moved = [.. new WeekDifference(setting).To(answer.Plan, []).Where(c => c.After is not null)];
        string words = replaces is null
            ? $"{name}: new visit on {DayWords.When(visit)} with {nurse}, {visit.Minutes} min."
            : $"{name}: {DayWords.When(visit)} with {nurse} instead of {DayWords.When(replaces)}.";
        var people = ImmutableArray.CreateBuilder<PersonToTell>();
        people.Add(setting.People.Family(visit.Patient, $"{nurse} comes on {DayWords.Range(visit, setting.ToldMinutes)}."));
        people.Add(setting.People.Nurse(visit.Nurse, $"New visit: {name} on {DayWords.When(visit)}, {visit.Minutes} min. Read it when parked."));
        var told = answer.Moved.Select(m => m.Before.Id).ToHashSet(StringComparer.Ordinal);
        foreach (VisitChange change in moved.Where(c => told.Contains(c.Before!.Id)))
        {
            people.Add(setting.People.Family(change.Before!.Patient, $"The nurse comes on {DayWords.Range(change.After!, setting.ToldMinutes)} instead of {DayWords.When(change.Before)}."));
            if (change.After!.Nurse != visit.Nurse) people.Add(setting.People.Nurse(change.After.Nurse, change.Words));
        }

        if (visit.Second is { } second) people.Add(setting.People.Nurse(second, $"With {nurse}: {name} on {DayWords.When(visit)}."));
        PlannedWeek after = AppliedWeek.Of(setting.Week, [new VisitChange(null, visit, "", 0), .. moved]);
        var then = NurseDayFigures.Of(after, visit.Nurse, visit.Day, setting);
        var was = NurseDayFigures.Of(setting.Week, visit.Nurse, visit.Day, setting);
        int overtime = Math.Max(0, then.Overtime - was.Overtime);
        return new MendAnswer
        {
            Key = key,
            Title = $"{nurse}, {DayWords.When(visit)}",
            Changes = [new VisitChange(replaces, visit, words, 0), .. moved],
            Price = new MendPrice
            {
                Late = answer.MeetsTarget ? 0 : 1,
                Families = answer.Moved.Length,
                Nurses = people.Select(p => p.Nurse).OfType<string>().Distinct().Count(),
                DrivingDelta = answer.DrivingDelta,
                Overtime = overtime,
                Disruption = answer.Disruption,
            },
            ToTell = people.ToImmutable(),
            Decider = overtime > 0 ? $"{nurse} agrees to {overtime} min of overtime." : "",
            Cautions = Cautions(setting, visit),
        };
    }

    private static ImmutableArray<string> Cautions(MendSetting setting, WeekVisit visit) =>
        setting.Agency.Roster.Patients.Any(p => p.Id == visit.Patient)
            ? new WeekDifference(setting).Cautions([new VisitChange(visit with { Nurse = "" }, visit, "", 0)])
            : [];

    private static WeekVisit NewVisit(MendSetting setting, UrgentAnswer answer, string key, ImmutableArray<VisitCare> care)
    {
        LocalDateTime start = setting.Calendar.Local(answer.Visit.Start);
        return new WeekVisit
        {
            Id = $"{answer.Visit.Patient}-{start.Date:MMdd}-v{setting.Week.Version + 1}{key}",
            Patient = new PatientId(answer.Visit.Patient),
            Nurse = answer.Visit.Nurse,
            Second = answer.Visit.Second,
            Day = start.Date,
            Start = start.TimeOfDay,
            Minutes = answer.Visit.Minutes,
            Care = care,
            Promise = Planning.Plans.PromiseState.Told,
            ToldFrom = start.TimeOfDay,
        };
    }
}
