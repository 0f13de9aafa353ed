using System.Collections.Immutable;
using HomeLine.Agency.WeekPlanning;
using HomeLine.Planning.Editing;
using HomeLine.Planning.Plans;

namespace HomeLine.Agency.WeekEditing;

/// <summary>The draft beside the published week: what moved, who must be told, and both scores.</summary>
/// <param name="Moves">Each visit that changed, in words.</param>
/// <param name="Families">Families who were told something else, or nothing yet.</param>
/// <param name="Nurses">Nurses whose days change.</param>
/// <param name="Tiers">Both scores, tier by tier; empty when nothing is published.</param>
/// <param name="BrokenRules">What the checker holds against the draft that it does not hold against the published week.</param>
public sealed record DraftDifference(
    ImmutableArray<string> Moves, ImmutableArray<WhoToTell> Families, ImmutableArray<WhoToTell> Nurses, ImmutableArray<TierChange> Tiers,
    ImmutableArray<PlanningReason> BrokenRules)
{
    public bool IsNone => Moves.IsEmpty;

    public static DraftDifference Of(WorkingWeek week)
    {
        ImmutableArray<WeekVisit> told = week.Published?.Visits ?? [];
        var was = told.ToDictionary(v => v.Id);
        var now = week.Week.Visits.ToDictionary(v => v.Id);
        ImmutableArray<WhoToTell> people = PeopleToTell.Of(
            told, week.Week.Visits, week.Calendar.Local(week.Hand.Problem.Now), week.Agency.Roster, week.Hand.Problem.Rules.ToldRangeMinutes);
        HandWeek? published = week.Published is { } stands ? HandPlan.Of(week.Needs, stands, stands, week.Agency.Roster, week.Log.Pinned) : null;
        var known = published?.Check.Findings.Select(f => f.Reason.Sentence).ToHashSet() ?? [];
        return new DraftDifference(
            [.. was.Keys.Union(now.Keys)
                .Select(id => (Was: was.GetValueOrDefault(id), Now: now.GetValueOrDefault(id)))
                .Where(p => p.Was is null || p.Now is null || VisitWords.Place(p.Was) != VisitWords.Place(p.Now))
                .OrderBy(p => (p.Was ?? p.Now)!.Day).ThenBy(p => (p.Was ?? p.Now)!.Start)
                .Select(p => VisitWords.Change(p.Was, p.Now) + ".")],
            [.. people.Where(p => p.IsFamily)],
            [.. people.Where(p => !p.IsFamily)],
            published is null ? [] : TierWords.Compare(published.Check.Score, week.Hand.Check.Score),
            [.. week.Hand.Check.Findings.Select(f => f.Reason).Where(r => !known.Contains(r.Sentence)).DistinctBy(r => r.Sentence)]);
    }
}
