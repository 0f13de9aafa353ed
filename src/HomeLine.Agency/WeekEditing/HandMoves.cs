using System.Collections.Immutable;
using HomeLine.LineCare.Lines;
using HomeLine.Planning.Editing;
using HomeLine.Planning.Plans;
using HomeLine.Planning.Problem;
using NodaTime;

namespace HomeLine.Agency.WeekEditing;

/// <summary>What a coordinator asks, as the planner's move.</summary>
internal static class HandMoves
{
    /// <summary>Empty when what is in hand is no longer there, or the edit moves nothing.</summary>
    public static HandMove? Of(WorkingWeek week, HandEdit edit)
    {
        return edit switch
        {
            HandEdit.Move(var visit, var nurse, var day, int position) when Knows(visit) && Works(nurse) => new HandMove.Move(visit, new DayPlace(nurse, week.Calendar.Day(day), position)),
            HandEdit.Place(var need, var nurse, var day, int position) when UnmetCareNeed.TasksOf(week, need) is { IsEmpty: false } tasks && Works(nurse) =>
                new HandMove.PlaceCare(tasks, new DayPlace(nurse, week.Calendar.Day(day), position)),
            HandEdit.TakeOut(var visit) when Knows(visit) => new HandMove.TakeOut(visit),
            HandEdit.ChangeSecond(var visit, var second) when Works(second) && week.Hand.Visits.Any(v => v.Id == visit && v.Second is { } now && now != second && v.Nurse != second) =>
                new HandMove.ChangeSecond(visit, second),
            HandEdit.GoAlong(var visit, var supervisor) when Knows(visit) && Works(supervisor) => new HandMove.ChangeSecond(visit, supervisor),
            HandEdit.GoAlone(var visit) when week.Hand.Visits.Any(v => v.Id == visit && v.Second is not null) => new HandMove.ChangeSecond(visit, null),
            HandEdit.Swap(var visit, var with) when Knows(visit) && Knows(with) && visit != with => new HandMove.Swap(visit, with),
            HandEdit.SwapDays(var nurse, var with, var day) when Works(nurse) && Works(with) && nurse != with => new HandMove.SwapDays(nurse, with, week.Calendar.Day(day)),
            _ => null,
        };

        bool Knows(string visit) => week.Hand.Visits.Any(v => v.Id == visit);

        bool Works(string nurse) => week.Hand.Problem.Nurses.Any(n => n.Id == nurse);
    }
}

/// <summary>Care nobody covers that has to be done together.</summary>
/// <param name="Key">Names it on the list: the first of its tasks.</param>
/// <param name="Patient">Whose.</param>
/// <param name="PatientName">Name as shown.</param>
/// <param name="Label">What, in words.</param>
/// <param name="LastDay">The last day on time, in words.</param>
/// <param name="IsCritical">Whether it is critical care.</param>
/// <param name="Reasons">Why nobody covers it.</param>
/// <param name="Relaxations">What would place it.</param>
public sealed record UnmetCareNeed(
    string Key, PatientId Patient, string PatientName, string Label, string LastDay, bool IsCritical,
    ImmutableArray<PlanningReason> Reasons, ImmutableArray<Relaxation> Relaxations)
{
    /// <summary>The last day on time.</summary>
    public LocalDate? LastDate { get; init; }

    /// <summary>The unmet needs of a week, critical first, with the planner's reasons against the week as it stands.</summary>
    /// <param name="week">The week.</param>
    /// <param name="why">Reasons by task; empty while they are not known.</param>
    public static ImmutableArray<UnmetCareNeed> Of(WorkingWeek week, IReadOnlyDictionary<string, UnmetTask> why) =>
    [
        .. Groups(week).Select(group =>
        {
            CareTask first = group.First();
            var patient = new PatientId(first.Patient);
            UnmetTask? known = why.GetValueOrDefault(first.Id);
            return new UnmetCareNeed(
                first.Id,
                patient,
                week.Agency.Roster.Patients.First(p => p.Id == patient).Name,
                string.Join(", ", group.Select(t => t.Label)),
                VisitWords.LongDay(week.Calendar.Local(group.Min(t => t.LateFrom) - 1).Date),
                group.Any(t => t.Critical),
                known?.Reasons ?? [],
                known?.Relaxations ?? [])
            {
                LastDate = week.Calendar.Local(group.Min(t => t.LateFrom) - 1).Date,
            };
        }).OrderByDescending(n => n.IsCritical).ThenBy(n => n.Patient.Value, StringComparer.Ordinal),
    ];

    /// <summary>The tasks of a need on the list.</summary>
    internal static ImmutableArray<string> TasksOf(WorkingWeek week, string key) =>
        Groups(week).FirstOrDefault(g => g.First().Id == key) is { } group ? [.. group.Select(t => t.Id)] : [];

    private static IEnumerable<IGrouping<(string, string), CareTask>> Groups(WorkingWeek week) =>
        week.Hand.Unmet.GroupBy(t => (t.Patient, t.Together ?? t.Id));
}
