using HomeLine.Planning.Routing.Crews;

namespace HomeLine.Benchmarks.Classic;

/// <summary>
/// Judges a home-care plan from the file's own numbers, in double precision: the starts are taken from the plan and tested against travel, windows, gaps and
/// skills, not computed anew.
/// </summary>
internal static class CrewCheck
{
    private const double Tolerance = 1e-4, PerOne = 1000;

    public static Verdict Judge(CrewInstance instance, CrewPlan plan)
    {
        var faults = new List<string>();
        double travel = 0, late = 0, largest = 0;
        foreach (IGrouping<int, CrewStop> again in plan.Stops.GroupBy(stop => stop.Visit).Where(group => group.Count() > 1)) faults.Add($"patient {again.Key + 1} is visited twice");
        if (plan.Stops.Select(stop => stop.Visit).Distinct().Count() != instance.Patients.Count) faults.Add("not every patient is visited");
        foreach (CrewStop stop in plan.Stops)
        {
            CrewPatient patient = instance.Patients[stop.Visit];
            double first = stop.FirstStart / PerOne, gap = (stop.SecondStart / PerOne) - first;
            Start(instance, patient, 0, stop.First, first, ref late, ref largest, faults);
            if (patient.Parts.Length == 1) continue;
            Start(instance, patient, 1, stop.Second, stop.SecondStart / PerOne, ref late, ref largest, faults);
            if (gap < patient.LeastGap - Tolerance || gap > patient.MostGap + Tolerance) faults.Add($"{patient.Id}: {gap:0.###} between the two starts, {patient.LeastGap} to {patient.MostGap} allowed");
            if (stop.First == stop.Second) faults.Add($"{patient.Id}: one caregiver in both parts");
        }

        for (int c = 0; c < instance.Caregivers.Count; c++) travel += Drive(instance, plan, c, faults);
        return new Verdict((travel + late + largest) / 3, faults, "(travel + total lateness + largest lateness) / 3; travel and times from the file's matrix; start of service may be late at that price");
    }

    private static void Start(CrewInstance instance, CrewPatient patient, int part, int caregiver, double start, ref double late, ref double largest, List<string> faults)
    {
        if (start < patient.Opens - Tolerance) faults.Add($"{patient.Id}: begun at {start:0.###}, before it opens");
        if (caregiver < 0 || !instance.Caregivers[caregiver].Abilities.Contains(patient.Parts[part].Service)) faults.Add($"{patient.Id}: part {part + 1} by somebody not able");
        double lateness = Math.Max(0, start - patient.Closes);
        late += lateness;
        largest = Math.Max(largest, lateness);
    }

    private static double Drive(CrewInstance instance, CrewPlan plan, int caregiver, List<string> faults)
    {
        int at = 0;
        double free = 0, travel = 0;
        foreach (CrewStop stop in plan.Stops.Where(stop => stop.First == caregiver || stop.Second == caregiver))
        {
            int part = stop.First == caregiver ? 0 : 1, place = stop.Visit + 1;
            double start = (part == 0 ? stop.FirstStart : stop.SecondStart) / PerOne, leg = instance.Distances[at][place];
            if (free + leg > start + Tolerance) faults.Add($"{instance.Caregivers[caregiver].Id} cannot be at {instance.Patients[stop.Visit].Id} at {start:0.###}");
            travel += leg;
            free = start + instance.Patients[stop.Visit].Parts[part].Duration;
            at = place;
        }

        return travel + instance.Distances[at][0];
    }
}
