using System.Collections.Immutable;
using HomeLine.Agency.Roster;
using HomeLine.Agency.WeekEditing;
using HomeLine.LineCare.Lines;
using HomeLine.Planning.Plans;
using HomeLine.Planning.Problem;

namespace HomeLine.Agency.OwnWeek;

/// <summary>
/// A week as one nurse may plan it: everybody else's visits stand where they are, and what is free can only be hers. Pure.
/// </summary>
/// <param name="Problem">What the planner gets.</param>
/// <param name="Staying">Visits she does not move: other people's, those she makes with somebody, pinned ones, what is about to start.</param>
/// <param name="Patients">Whose care she plans.</param>
internal sealed record OwnWeekDemand(WeekProblem Problem, ImmutableArray<PlannedVisit> Staying, ImmutableHashSet<string> Patients)
{
    /// <summary>A skill nobody else has: the planner gives what asks for it to her alone.</summary>
    private const string Hers = "planned by herself";

    public static OwnWeekDemand Of(WorkingWeek week, string nurse)
    {
        WeekProblem problem = week.Hand.Problem;
        bool IsOwn(PlannedVisit v) => v.Nurse == nurse && v.Second is null;
        ImmutableArray<PlannedVisit> staying = [.. week.Hand.Visits.Where(v => !IsOwn(v) || week.Hand.Stays(v.Id) || week.WhyItStays(week.Visit(v.Id)!).Length > 0)];
        var taken = staying.SelectMany(v => v.Tasks).ToHashSet(StringComparer.Ordinal);
        var days = staying.Select(v => (v.Patient, Day: week.Calendar.Day(week.Calendar.Local(v.Start).Date))).ToHashSet();
        // Where she begins: what was promised of her week, else what stands in the draft.
        ImmutableArray<PlannedVisit> promised = [.. problem.Published!.Visits.Where(IsOwn)];
        ImmutableArray<PlannedVisit> begins =
        [
            .. (promised.IsEmpty ? week.Hand.Visits.Where(IsOwn) : promised)
                .Where(v => !v.Tasks.Any(taken.Contains) && !days.Contains((v.Patient, week.Calendar.Day(week.Calendar.Local(v.Start).Date))) && staying.All(s => s.Id != v.Id)),
        ];
        ImmutableHashSet<string> patients = PatientsOf(week, nurse);
        ImmutableArray<CareTask> free = [.. problem.Tasks.Where(t => !taken.Contains(t.Id) && patients.Contains(t.Patient)).Select(t => t with { Skills = [.. t.Skills, Hers] })];
        return new OwnWeekDemand(
            problem with
            {
                Nurses = [.. problem.Nurses.Select(n => n.Id == nurse ? n with { Skills = [.. n.Skills, Hers] } : n)],
                Tasks = [.. problem.Tasks.Where(t => taken.Contains(t.Id)), .. free],
                Published = new WeekPlan([.. staying, .. begins], [], default),
                FrozenVisits = [.. problem.FrozenVisits, .. staying.Select(v => v.Id)],
            },
            staying,
            patients);
    }

    /// <summary>All of them where she is the agency's only nurse; otherwise those she visits this week or who know her. One who needs two people is planned by the office.</summary>
    public static ImmutableHashSet<string> PatientsOf(WorkingWeek week, string nurse)
    {
        AgencyRoster roster = week.Agency.Roster;
        if (roster.Nurses.Length == 1) return [.. roster.Patients.Select(p => p.Id.Value)];
        HashSet<PatientId> visited = [.. week.Week.Visits.Where(v => v.Nurse == nurse && v.Second is null).Select(v => v.Patient)];
        return [.. roster.Patients.Where(p => p.CrewSize == 1 && (visited.Contains(p.Id) || p.KnownNurses.Contains(nurse))).Select(p => p.Id.Value)];
    }
}
