using HomeLine.Planning.Plans;
using HomeLine.Planning.Problem;

namespace HomeLine.Planning.Checking.Rules;

/// <summary>H2: care that repeats keeps its least separation from the time before.</summary>
internal static class Chains
{
    public static IEnumerable<Finding> Findings(PlanFacts facts)
    {
        foreach (CareTask task in facts.Problem.Tasks)
        {
            if (facts.VisitBefore(task) is not { } before || facts.VisitOf(task.Id) is not { } visit) continue;
            if ((visit.Fixed && before.Fixed) || Gap(task, before, visit) >= task.MinGap) continue;
            yield return Found.At("H2", visit, ReasonCode.ChainTooSoon,
                $"{task.Label} of {Found.Who(visit)} follows the one before on {Found.When(facts, before.Visit.Start)} too soon.",
                "Start it later, or the one before earlier.");
        }
    }

    /// <summary>Minutes between two starts, or days at 1,440 minutes each.</summary>
    public static long Gap(CareTask task, VisitFact before, VisitFact visit) => task.GapInDays
        ? (visit.Day - (long)before.Day) * 1440
        : (long)visit.Visit.Start - before.Visit.Start;
}
