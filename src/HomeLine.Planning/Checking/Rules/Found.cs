using HomeLine.Planning.Plans;
using HomeLine.Planning.Problem;

namespace HomeLine.Planning.Checking.Rules;

/// <summary>Findings in words.</summary>
internal static class Found
{
    public static Finding At(string rule, VisitFact fact, string code, string sentence, string action) =>
        new(rule, fact.Visit.Id, fact.Visit.Nurse, new PlanningReason(code, sentence, action));

    public static Finding Overall(string rule, string code, string sentence, string action) =>
        new(rule, null, null, new PlanningReason(code, sentence, action));

    public static Finding OnDay(NurseDayFact day, VisitFact? fact, string rule, string code, string sentence, string action) =>
        new(rule, fact?.Visit.Id, day.Nurse.Id, new PlanningReason(code, sentence, action));

    public static string When(PlanFacts facts, long minute) => PlanClock.Say(facts.Problem.FirstDay, minute);

    public static string Who(VisitFact fact) => fact.Patient?.Name ?? fact.Visit.Patient;
}
