using HomeLine.Planning.Plans;
using HomeLine.Planning.Problem;

namespace HomeLine.Planning.Checking.Rules;

/// <summary>H5: shift, overtime cap, break, visit cap and rest. H7: every visit can be reached from the one before.</summary>
internal static class NurseDays
{
    public static IEnumerable<Finding> Findings(PlanFacts facts) =>
        facts.NurseDays.Where(d => !d.Visits.All(v => v.Fixed)).SelectMany(d => OfDay(facts, d)).Concat(Rest(facts));

    private static IEnumerable<Finding> OfDay(PlanFacts facts, NurseDayFact day)
    {
        string name = day.Nurse.Name;
        if (day.Shift is not { } shift)
        {
            yield return Found.OnDay(day, day.Visits[0], "H5", ReasonCode.NotWorking,
                $"{name} does not work on {PlanClock.DayName(facts.Problem.FirstDay, day.Day)}.", "Choose a nurse who works that day.");
            yield break;
        }

        foreach ((VisitFact fact, long minutes) in day.TooFar)
        {
            bool first = ReferenceEquals(fact, day.Visits[0]);
            yield return Found.OnDay(day, fact, first ? "H5" : "H7", first ? ReasonCode.BeforeShift : ReasonCode.CannotArrive,
                first
                    ? $"{name} would have to leave home {minutes} minutes before her shift to reach {Found.Who(fact)}."
                    : $"{name} reaches {Found.Who(fact)} {minutes} minutes after the planned start.",
                "Start the visit later or change the order.");
        }

        if (day.Return > shift.OvertimeTo)
        {
            yield return Found.OnDay(day, day.Visits[^1], "H5", ReasonCode.OverrunsShift,
                $"{name} is home {day.Return - shift.OvertimeTo} minutes after {PlanClock.Time(shift.OvertimeTo)}.", "Take a visit out of the day.");
        }

        if (!day.BreakFits)
            yield return Found.OnDay(day, null, "H5", ReasonCode.BreakMissing, $"{name} has no room for her break.", "Leave a gap for it.");
        if (day.Visits.Length > day.Nurse.MaxVisitsADay)
        {
            yield return Found.OnDay(day, day.Visits[^1], "H5", ReasonCode.TooManyVisits,
                $"{name} has {day.Visits.Length} visits; she takes {day.Nurse.MaxVisitsADay} a day.", "Take a visit out of the day.");
        }
    }

    private static IEnumerable<Finding> Rest(PlanFacts facts)
    {
        foreach (var days in facts.NurseDays.GroupBy(d => d.Nurse.Id))
        {
            NurseDayFact[] inOrder = [.. days.OrderBy(d => d.Day)];
            for (int i = 1; i < inOrder.Length; i++)
            {
                long rest = inOrder[i].Departure - inOrder[i - 1].Return;
                if (rest >= facts.Problem.Rules.RestBetweenShiftsMinutes || inOrder[i].Visits.All(v => v.Fixed)) continue;
                yield return Found.OnDay(inOrder[i], inOrder[i].Visits[0], "H5", ReasonCode.RestShort,
                    $"{inOrder[i].Nurse.Name} rests only {rest} minutes before {Found.When(facts, inOrder[i].Departure)}.",
                    "Start the day later or end the one before earlier.");
            }
        }
    }
}
