using HomeLine.Planning.Plans;
using HomeLine.Planning.Problem;
using HomeLine.Planning.Search;

namespace HomeLine.Planning.Standing;

/// <summary>What a change of one published visit costs in disruption, by what was promised, the call to the family included.</summary>
internal static class DisruptionPrice
{
    /// <summary>Whether a change is felt: another nurse, another day, or a start outside the range.</summary>
    public static bool Felt(StandingVisit visit, int nurse, int second, int start) =>
        nurse != visit.WasNurse || second != visit.WasSecond
        || (start != visit.Was.Start && (start < visit.RangeFrom || start > visit.RangeTo));

    public static int Of(DisruptionPoints points, StandingVisit visit, int nurse, int second, int start)
    {
        if (!Felt(visit, nurse, second, start)) return 0;
        bool otherDay = CompiledWeek.DayOf(start) != CompiledWeek.DayOf(visit.Was.Start);
        bool otherNurse = nurse != visit.WasNurse || second != visit.WasSecond;
        int call = visit.Told ? points.PhoneCall : 0;
        return call + ((visit.Was.Promise, otherDay) switch
        {
            (PromiseState.Draft, true) => points.OtherDayDraft,
            (PromiseState.Draft, false) => 0,
            (PromiseState.Published, true) => points.OtherDayPublished + (otherNurse ? points.OtherNursePublished : 0),
            (PromiseState.Published, false) => otherNurse ? points.OtherNursePublished : points.MovedPublished,
            (_, true) => points.OtherDayTold + (otherNurse ? points.OtherNurseTold : 0),
            (_, false) => (otherNurse ? points.OtherNurseTold : 0) + (Within(visit, start) ? 0 : points.MovedTold),
        });
    }

    /// <summary>A family merged into another visit, or left without one.</summary>
    public static int Replaced(DisruptionPoints points, PlannedVisit was) =>
        was.Promise switch { PromiseState.Draft => 0, PromiseState.Published => points.MergedPublished, _ => points.MergedTold };

    private static bool Within(StandingVisit visit, int start) =>
        start == visit.Was.Start || (start >= visit.RangeFrom && start <= visit.RangeTo);
}
