using HomeLine.Planning.Problem;

namespace HomeLine.Planning.Checking.Scoring;

/// <summary>The people tier: continuity, faces, wishes and the spread of work.</summary>
internal static class PeoplePoints
{
    public static long Of(PlanFacts facts)
    {
        SoftPoints soft = facts.Problem.Rules.Soft;
        long points = facts.Visits.Where(v => v.Patient is not null).Sum(v => Continuity(soft, v) + Wishes(soft, v));
        points += facts.Visits
            .GroupBy(v => v.Visit.Patient)
            .Sum(p => (p.Select(v => v.Visit.Nurse).Distinct().Count() - 1L) * soft.ExtraFace);
        return points + facts.NurseDays.Sum(d => Load(facts, d));
    }

    private static long Continuity(SoftPoints soft, VisitFact fact)
    {
        if (fact.Patient!.KnownNurses.IsEmpty) return 0;
        int place = fact.Patient.KnownNurses.IndexOf(fact.Visit.Nurse);
        return place == 0 ? 0 : place > 0 ? soft.BackupNurse : soft.UnknownNurse;
    }

    private static long Wishes(SoftPoints soft, VisitFact fact) =>
        fact.Nurse is null ? 0 : fact.Patient!.PreferredTraits.Count(t => !fact.Nurse.Traits.Contains(t)) * (long)soft.MissingWish;

    private static long Load(PlanFacts facts, NurseDayFact day)
    {
        long busy = day.HomeMinutes + (day.Visits.Length * (long)facts.Problem.Rules.DocumentationMinutes) + day.Driving;
        return (busy * busy / facts.Problem.Rules.Soft.LoadDivisor) + (day.Shift?.TurnPoints ?? 0);
    }
}
