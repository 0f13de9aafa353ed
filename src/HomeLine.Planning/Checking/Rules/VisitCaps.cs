using HomeLine.Planning.Plans;
using HomeLine.Planning.Problem;

namespace HomeLine.Planning.Checking.Rules;

/// <summary>H5: no more visits of one kind than the nurse makes in a day or in a week. The second person of a visit does not do its care.</summary>
internal static class VisitCaps
{
    public static IEnumerable<Finding> Findings(PlanFacts facts) =>
        from visits in facts.Visits.Where(v => v.Nurse is { Caps.IsDefaultOrEmpty: false }).GroupBy(v => v.Nurse!.Id)
        let nurse = visits.First().Nurse!
        from cap in nurse.Caps
        from stretch in visits.Where(v => IsOf(cap.Kind, v)).GroupBy(v => cap.Stretch(v.Day)).OrderBy(g => g.Key)
        where stretch.Count() > cap.Most && !stretch.All(v => v.Fixed)
        let last = stretch.Where(v => !v.Fixed).OrderBy(v => v.Visit.Start).ThenBy(v => v.Visit.Id, StringComparer.Ordinal).Last()
        select Found.At("H5", last, ReasonCode.TooManyOfKind,
            $"{nurse.Name} has {stretch.Count()} {(stretch.Count() == 1 ? "visit" : "visits")} of the kind {cap.Kind} {When(facts, cap, last.Day)}; she takes {cap.Most} {(cap.AWeek ? "a week" : "a day")}.",
            $"Give one of them to another nurse{(cap.AWeek ? "." : ", or put it on another day.")}");

    private static bool IsOf(string kind, VisitFact visit) => visit.Tasks.Any(t => !t.Kinds.IsDefault && t.Kinds.Contains(kind));

    private static string When(PlanFacts facts, VisitCap cap, int day) => cap.AWeek ? "in a week" : $"on {PlanClock.DayName(facts.Problem.FirstDay, day)}";
}
