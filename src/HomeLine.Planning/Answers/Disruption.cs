using System.Collections.Immutable;
using HomeLine.Planning.Plans;
using HomeLine.Planning.Problem;
using HomeLine.Planning.Search;

namespace HomeLine.Planning.Answers;

/// <summary>What a changed plan costs in disruption, visit by visit, by what was promised.</summary>
internal static class Disruption
{
    public static int Of(UrgentCase urgent, ImmutableArray<PlannedVisit> after, PlannedVisit added)
    {
        DisruptionPoints points = urgent.Problem.Rules.Disruption;
        var now = after.ToDictionary(v => v.Id, StringComparer.Ordinal);
        var nurses = new HashSet<string?>(StringComparer.Ordinal) { added.Nurse, added.Second };
        int total = points.NewVisit;
        foreach (PlannedVisit was in urgent.Replaced)
        {
            total += was.Promise switch { PromiseState.Draft => 0, PromiseState.Published => points.MergedPublished, _ => points.MergedTold };
            nurses.UnionWith([was.Nurse, was.Second]);
        }

        foreach (PlannedVisit was in urgent.Staying)
        {
            PlannedVisit? then = now.GetValueOrDefault(was.Id);
            if (then is null || !Changes(urgent.Problem.Rules, was, then)) continue;
            total += OfVisit(points, was, then) + (was.Promise >= PromiseState.Told ? points.PhoneCall : 0);
            nurses.UnionWith([was.Nurse, then.Nurse]);
        }

        return total + ((nurses.Count(n => n is not null) - 1) * points.ExtraNurse);
    }

    /// <summary>Visits whose family was told a range that the new start leaves, or another day or nurse.</summary>
    public static ImmutableArray<MovedVisit> Moved(UrgentCase urgent, ImmutableArray<PlannedVisit> after)
    {
        var now = after.ToDictionary(v => v.Id, StringComparer.Ordinal);
        return
        [
            .. from was in urgent.Staying
               where was.Promise >= PromiseState.Told && now.ContainsKey(was.Id)
               let then = now[was.Id]
               where Changes(urgent.Problem.Rules, was, then)
               select new MovedVisit(was, then, then.Start - was.Start),
        ];
    }

    /// <summary>Whether a change is felt: another nurse, another day, or a start outside the range.</summary>
    public static bool Changes(PlanningRules rules, PlannedVisit was, PlannedVisit then)
    {
        int from = was.ToldFrom ?? was.Start;
        return was.Nurse != then.Nurse || was.Second != then.Second
            || (then.Start != was.Start && (then.Start < from || then.Start > from + rules.ToldRangeMinutes));
    }

    private static int OfVisit(DisruptionPoints points, PlannedVisit was, PlannedVisit then)
    {
        bool otherDay = CompiledWeek.DayOf(was.Start) != CompiledWeek.DayOf(then.Start);
        bool otherNurse = was.Nurse != then.Nurse || was.Second != then.Second;
        return (was.Promise, otherDay) switch
        {
            (PromiseState.Draft, true) => points.OtherDayDraft,
            (PromiseState.Draft, false) => 0,
            (PromiseState.Published, true) => points.OtherDayPublished + (otherNurse ? points.OtherNursePublished : 0),
            (PromiseState.Published, false) => otherNurse ? points.OtherNursePublished : points.MovedPublished,
            (_, true) => points.OtherDayTold + (otherNurse ? points.OtherNurseTold : 0),
            (_, false) => (otherNurse ? points.OtherNurseTold : 0) + (then.Start == was.Start ? 0 : points.MovedTold),
        };
    }
}
