using HomeLine.Planning.Problem;

namespace HomeLine.Planning.Bounding;

/// <summary>What a nurse-day of given visits adds to each tier, with its break where it costs least.</summary>
internal sealed class DayCost(WeekProblem problem)
{
    /// <summary>The nurse-day; empty when it cannot be kept.</summary>
    public DayColumn? Of(NurseDay day, VisitNode[] nodes)
    {
        Shift shift = day.Shift;
        long? least = null;
        for (int pause = shift.LunchMinutes > 0 ? 0 : nodes.Length; pause <= nodes.Length; pause++)
        {
            if (Work(day, nodes, pause) is { } work && (least is null || work < least)) least = work;
        }

        if (least is null) return null;
        long[] adds = new long[6];
        foreach (VisitNode node in nodes)
        {
            for (int t = 0; t < adds.Length; t++) adds[t] += node.Adds[t];
        }

        long busy = nodes.Sum(n => (long)n.Stay) + Driving(day, nodes);
        adds[(int)Tier.Work] += least.Value;
        adds[(int)Tier.People] += busy * busy / problem.Rules.Soft.LoadDivisor;
        return new DayColumn(day, nodes, adds);
    }

    private int Home(NurseDay day) => problem.Nurses[day.Nurse].Home;

    private int Place(VisitNode node) => problem.Patients[node.Patient].Place;

    private long Driving(NurseDay day, VisitNode[] nodes)
    {
        long driving = problem.Travel.Minutes(Home(day), Place(nodes[0])) + problem.Travel.Minutes(Place(nodes[^1]), Home(day));
        for (int i = 1; i < nodes.Length; i++) driving += problem.Travel.Minutes(Place(nodes[i - 1]), Place(nodes[i]));
        return driving;
    }

    /// <summary>Driving, waiting and overtime with the break before leaving (0), before visit number pause, or after the last (their number).</summary>
    private long? Work(NurseDay day, VisitNode[] nodes, int pause)
    {
        Shift shift = day.Shift;
        int place = Home(day), leave = pause == 0 ? Math.Max(shift.From, shift.LunchFrom + shift.LunchMinutes) : shift.From, calm = int.MaxValue / 2, waited = 0;
        for (int i = 0; i < nodes.Length; i++)
        {
            int from = nodes[i].From;
            if (pause == i && i > 0)
            {
                if (leave > shift.LunchTo) return null;
                (leave, calm, from) = (leave + shift.LunchMinutes, Math.Min(calm, shift.LunchTo) + shift.LunchMinutes, Math.Max(from, shift.LunchFrom + shift.LunchMinutes));
            }

            int road = problem.Travel.Minutes(place, Place(nodes[i])), start = Math.Max(leave + road, from);
            if (start > nodes[i].To) return null;
            calm = Math.Min(calm + road, nodes[i].To);
            waited += Math.Max(0, start - calm);
            (leave, calm, place) = (start + nodes[i].Stay, Math.Max(calm, start) + nodes[i].Stay, Place(nodes[i]));
        }

        int back = leave + problem.Travel.Minutes(place, Home(day));
        if (pause == nodes.Length && shift.LunchMinutes > 0 && back > shift.LunchTo)
        {
            if (leave > shift.LunchTo) return null;
            back += shift.LunchMinutes;
        }

        if (back > shift.OvertimeTo) return null;
        return Driving(day, nodes) + waited + (problem.Rules.OvertimeFactor * Math.Max(0L, back - shift.To));
    }
}
