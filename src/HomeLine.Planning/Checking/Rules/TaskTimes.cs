using HomeLine.Planning.Plans;
using HomeLine.Planning.Problem;

namespace HomeLine.Planning.Checking.Rules;

/// <summary>H2: care starts between its opening and its latest start, inside the planning days, one visit a patient a day. H10: starts tied to a dose.</summary>
internal static class TaskTimes
{
    public static IEnumerable<Finding> Findings(PlanFacts facts) =>
        facts.Visits.Where(v => !v.Fixed).SelectMany(v => OfVisit(facts, v)).Concat(OneADay(facts));

    private static IEnumerable<Finding> OfVisit(PlanFacts facts, VisitFact fact)
    {
        long start = fact.Visit.Start;
        if (start < facts.Problem.Now || fact.Day < 0 || fact.Day >= facts.Problem.DayCount)
        {
            yield return Found.At("H2", fact, ReasonCode.OutsideHorizon,
                $"The visit to {Found.Who(fact)} on {Found.When(facts, start)} lies in the past or outside the planning days.",
                "Choose a time after now within the planning days.");
        }

        foreach (CareTask task in fact.Tasks)
        {
            if (start < task.Opens)
            {
                yield return Found.At("H2", fact, ReasonCode.TooEarly,
                    $"{task.Label} of {Found.Who(fact)} opens {Found.When(facts, task.Opens)}.", "Start it later.");
            }

            if (start > task.HardLatest)
            {
                yield return Found.At("H2", fact, ReasonCode.PastLatest,
                    $"{task.Label} of {Found.Who(fact)} must start by {Found.When(facts, task.HardLatest)}.", "Start it earlier or leave it unmet.");
            }

            if (!task.StartSpans.IsDefaultOrEmpty && !task.StartSpans.Any(s => start >= s.From && start <= s.To))
            {
                yield return Found.At("H10", fact, ReasonCode.OutsideStartTimes,
                    $"{task.Label} of {Found.Who(fact)} may not start at {Found.When(facts, start)}.", "Start it inside its times.");
            }
        }
    }

    /// <summary>A visit for safety alone may come on top of the day's visit.</summary>
    private static IEnumerable<Finding> OneADay(PlanFacts facts) =>
        from pair in facts.Visits.Where(v => v.Tasks.IsEmpty || !v.Tasks.All(t => t.Safety)).GroupBy(v => (v.Visit.Patient, v.Day))
        where pair.Count() > 1 && !pair.All(v => v.Fixed)
        let fact = pair.First(v => !v.Fixed)
        select Found.At("H2", fact, ReasonCode.TwoVisitsADay,
            $"{Found.Who(fact)} has {pair.Count()} visits on one day.", "Join them into one.");
}
