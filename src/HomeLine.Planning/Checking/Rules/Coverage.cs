using HomeLine.Planning.Plans;
using HomeLine.Planning.Problem;

namespace HomeLine.Planning.Checking.Rules;

/// <summary>H1: every task once or unmet, what belongs together stays together. H12 and H14: nobody and nothing that was not asked for.</summary>
internal static class Coverage
{
    public static IEnumerable<Finding> Findings(PlanFacts facts) =>
        Strangers(facts).Concat(Visits(facts)).Concat(Tasks(facts)).Concat(Together(facts));

    private static IEnumerable<Finding> Strangers(PlanFacts facts)
    {
        foreach (VisitFact fact in facts.Visits)
        {
            if (fact.Patient is null)
            {
                yield return Found.At("H12", fact, ReasonCode.PatientUnknown,
                    $"{fact.Visit.Patient} is not on the list of patients to visit.", "Check holds and area before planning a visit.");
            }

            foreach (string task in PlanFacts.TasksOf(fact.Visit).Where(t => !facts.Knows(t)))
            {
                yield return Found.At("H14", fact, ReasonCode.TaskUnknown,
                    $"The visit to {Found.Who(fact)} does {task}, which nobody asked for.", "Take it out, or add it to the needs first.");
            }
        }
    }

    private static IEnumerable<Finding> Visits(PlanFacts facts)
    {
        var seen = new HashSet<string>(StringComparer.Ordinal);
        foreach (VisitFact fact in facts.Visits)
        {
            if (!seen.Add(fact.Visit.Id))
                yield return Found.At("H1", fact, ReasonCode.VisitIdTwice, $"Two visits are called {fact.Visit.Id}.", "Give one a new name.");
            if (PlanFacts.TasksOf(fact.Visit).IsEmpty)
                yield return Found.At("H1", fact, ReasonCode.VisitEmpty, $"The visit to {Found.Who(fact)} does nothing.", "Cancel it.");
            if (!fact.Fixed && fact.Visit.Minutes != fact.DerivedMinutes)
            {
                yield return Found.At("H1", fact, ReasonCode.MinutesWrong,
                    $"The visit to {Found.Who(fact)} is planned with {fact.Visit.Minutes} minutes; its care takes {fact.DerivedMinutes}.",
                    "Plan it with the minutes of its care.");
            }

            foreach (CareTask task in fact.Tasks.Where(t => t.Patient != fact.Visit.Patient))
            {
                yield return Found.At("H1", fact, ReasonCode.OtherPatientsTask,
                    $"The visit to {Found.Who(fact)} holds {task.Label} of another patient.", "Move it to that patient's visit.");
            }
        }
    }

    private static IEnumerable<Finding> Tasks(PlanFacts facts)
    {
        var done = facts.Visits.SelectMany(v => PlanFacts.TasksOf(v.Visit)).CountBy(t => t).ToDictionary();
        var unmet = (facts.Plan.Unmet.IsDefault ? [] : facts.Plan.Unmet).CountBy(u => u.Task).ToDictionary();
        foreach (CareTask task in facts.Problem.Tasks)
        {
            int times = done.GetValueOrDefault(task.Id), left = unmet.GetValueOrDefault(task.Id);
            if (times + left == 1) continue;
            string care = $"{task.Label} of {task.Patient}";
            if (times > 1)
                yield return Found.Overall("H1", ReasonCode.TaskTwice, $"{care} is done {times} times.", "Keep one of them.");
            if (times == 0 && left == 0)
                yield return Found.Overall("H1", ReasonCode.TaskForgotten, $"{care} is neither done nor named as unmet.", "Plan it or name it.");
            if (left > 1 || (left == 1 && times > 0))
                yield return Found.Overall("H1", ReasonCode.UnmetWrong, $"{care} is wrongly named as unmet.", "Take it off the unmet list.");
        }

        foreach (string stranger in unmet.Keys.Where(t => !facts.Knows(t)))
            yield return Found.Overall("H14", ReasonCode.TaskUnknown, $"{stranger} is named as unmet but was not asked for.", "Take it off the list.");
    }

    private static IEnumerable<Finding> Together(PlanFacts facts)
    {
        foreach (var group in facts.Problem.Tasks.Where(t => t.Together is not null).GroupBy(t => (t.Patient, t.Together)))
        {
            VisitFact?[] visits = [.. group.Select(t => facts.VisitOf(t.Id)).Distinct()];
            if (visits.Length == 1 || visits.OfType<VisitFact>().All(v => v.Fixed)) continue;
            yield return Found.Overall("H1", ReasonCode.TogetherSplit,
                $"{string.Join(", ", group.Select(t => t.Label))} of {group.Key.Patient} belong in one visit.", "Do them in one visit.");
        }
    }
}
