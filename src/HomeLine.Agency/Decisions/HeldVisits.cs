using System.Collections.Immutable;
using HomeLine.Agency.WeekPlanning;

namespace HomeLine.Agency.Decisions;

/// <summary>The visits a decision is about, and the published weeks as they are after it. Pure.</summary>
/// <param name="Decided">The visits released or taken out.</param>
/// <param name="WeeksAfter">Only the weeks that change.</param>
internal sealed record HeldVisits(ImmutableArray<WeekVisit> Decided, ImmutableArray<PlannedWeek> WeeksAfter)
{
    public static HeldVisits Of(DecisionFacts facts, OpenDecision question, DecisionChoice choice)
    {
        var now = facts.Agency.Now.InZone(facts.Agency.Roster.Profile.Zone).LocalDateTime;
        bool IsMeant(WeekVisit visit) => visit.Patient == question.Patient
            && visit.Day.At(visit.Start).PlusMinutes(visit.Minutes) >= now
            && (choice == DecisionChoice.ToHospital
                || (visit.Held is not null && (question.Code != AppDecisionCodes.VisitHeld || visit.Id == question.About)));
        ImmutableArray<PlannedWeek> changed = [.. facts.Weeks.Where(w => w.Visits.Any(IsMeant))];
        return new HeldVisits(
            [.. changed.SelectMany(w => w.Visits).Where(IsMeant).OrderBy(v => v.Day).ThenBy(v => v.Start)],
            [.. changed.Select(w => choice == DecisionChoice.ReleaseVisits
                ? w with { Visits = [.. w.Visits.Select(v => IsMeant(v) ? v with { Held = null } : v)] }
                : w with { Visits = [.. w.Visits.Where(v => !IsMeant(v))] })]);
    }
}
