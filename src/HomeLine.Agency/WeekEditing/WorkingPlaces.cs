using System.Collections.Immutable;
using HomeLine.Planning.Editing;
using HomeLine.Planning.Plans;

namespace HomeLine.Agency.WeekEditing;

/// <summary>The planner's workable places in names, ranked by the score.</summary>
internal static class WorkingPlaces
{
    public static ImmutableArray<WorkingPlace> Of(WorkingWeek week, ImmutableArray<WorkablePlace> places, string inHand)
    {
        var names = week.Hand.Problem.Nurses.ToDictionary(n => n.Id, n => n.Name);
        int[] order = [.. Enumerable.Range(0, places.Length).OrderBy(i => places[i].Change.Score).ThenBy(i => i)];
        var rank = new int[places.Length];
        for (int i = 0; i < order.Length; i++) rank[order[i]] = i + 1;
        var days = week.Hand.Visits.Where(v => v.Id != inHand).GroupBy(v => (v.Nurse, v.Start / 1440))
            .ToDictionary(g => g.Key, g => g.OrderBy(v => v.Start).ToArray());
        return [.. places.Select((place, i) =>
        {
            PlannedVisit[] there = days.GetValueOrDefault((place.Place.Nurse, place.Place.Day)) ?? [];
            PlannedVisit stands = place.Change.Moved!;
            return new WorkingPlace(
                place.Place.Nurse,
                names[place.Place.Nurse],
                week.Calendar.Date(place.Place.Day),
                place.Place.Position,
                place.Place.Position > 0 && place.Place.Position <= there.Length ? there[place.Place.Position - 1].Patient : "",
                week.Calendar.Local(stands.Start).TimeOfDay,
                stands.Minutes,
                place.Change.DrivingMinutes,
                place.Change.OvertimeMinutes,
                place.Change.LateTasks,
                place.Change.After.Count(v => WasTold(week, v)),
                rank[i]);
        })];
    }

    private static bool WasTold(WorkingWeek week, PlannedVisit visit) =>
        week.Promised(visit.Id) is { Promise: PromiseState.Told } told && !Promises.Hold(told, week.Kept(visit), week.Hand.Problem.Rules.ToldRangeMinutes);
}
