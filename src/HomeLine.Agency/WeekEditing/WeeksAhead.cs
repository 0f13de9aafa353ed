using System.Collections.Immutable;
using HomeLine.Agency.Roster;
using HomeLine.Agency.WeekPlanning;
using HomeLine.Planning.Problem;
using NodaTime;

namespace HomeLine.Agency.WeekEditing;

/// <summary>What falls due in a week, against the hours that are rostered: the cliff a plan leaves behind is seen here before it is reached.</summary>
/// <param name="FirstDay">The week.</param>
/// <param name="Items">Items of care whose last day lies in it.</param>
/// <param name="DueByDay">Items by last day, first day first.</param>
/// <param name="NurseDays">Nurses rostered by day.</param>
/// <param name="CareMinutes">Minutes in homes and of writing if what is due on one day at one home is done in one visit.</param>
/// <param name="RosteredMinutes">Rostered minutes.</param>
/// <param name="RoadMinutes">Minutes on the road to expect, at this week's share of the rostered time.</param>
public sealed record WeeksAhead(
    LocalDate FirstDay, int Items, ImmutableArray<int> DueByDay, ImmutableArray<int> NurseDays, int CareMinutes, int RosteredMinutes, int RoadMinutes)
{
    private const int Week = 7;

    /// <summary>Percent of the rostered time that care, writing and road would take.</summary>
    public int Percent => RosteredMinutes == 0 ? 0 : 100 * (CareMinutes + RoadMinutes) / RosteredMinutes;

    /// <summary>The week worked on and the two after it, if every visit of the draft is made.</summary>
    public static ImmutableArray<WeeksAhead> Of(WorkingWeek week)
    {
        AgencyRoster roster = week.Agency.Roster;
        Instant begins = Instant.Max(week.Agency.Now, week.Calendar.At(0));
        Instant ends = week.FirstDay.PlusDays(Week).AtStartOfDayInZone(roster.Profile.Zone).ToInstant();
        AgencyRoster now = Foreseen.At(roster, week.Published is { } p ? [p] : [], week.Agency.Now, begins);
        AgencyRoster then = Foreseen.At(roster, [week.Week], week.Agency.Now, ends);
        int shifts = week.Hand.Check.Figures.ShiftMinutes, road = week.Hand.Check.Figures.DrivingMinutes;
        WeekProblem ahead = WeekDemand.Of(then, CareFiles.Of(then), week.FirstDay.PlusDays(Week), 2 * Week, ends).Problem;
        return
        [
            Of(week.FirstDay, WeekDemand.Of(now, CareFiles.Of(now), week.FirstDay, Week, begins).Problem, 0, shifts, road),
            Of(week.FirstDay.PlusDays(Week), ahead, 0, shifts, road),
            Of(week.FirstDay.PlusDays(2 * Week), ahead, Week, shifts, road),
        ];
    }

    private static WeeksAhead Of(LocalDate firstDay, WeekProblem problem, int from, int shifts, int road)
    {
        var due = problem.Tasks.Select(t => (Task: t, Day: Math.Max(problem.Now, t.LateFrom - 1) / 1440)).Where(t => t.Day >= from && t.Day < from + Week).ToArray();
        int rostered = problem.Nurses.SelectMany(n => n.Shifts).Where(s => !s.OnCall && s.Day >= from && s.Day < from + Week).Sum(s => s.To - s.From);
        int care = due.GroupBy(t => (t.Task.Patient, t.Day))
            .Sum(g => g.Max(t => t.Task.SetupMinutes) + g.Sum(t => t.Task.WorkMinutes) + problem.Rules.DocumentationMinutes);
        return new WeeksAhead(
            firstDay,
            due.Length,
            [.. Enumerable.Range(from, Week).Select(d => due.Count(t => t.Day == d))],
            [.. Enumerable.Range(from, Week).Select(d => problem.Nurses.Count(n => n.Shifts.Any(s => s.Day == d && !s.OnCall)))],
            care,
            rostered,
            shifts == 0 ? 0 : (int)((long)rostered * road / shifts));
    }
}
