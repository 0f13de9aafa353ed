namespace HomeLine.Benchmarks.Classic.Unified;

/// <summary>The components of the cost as they come together, not yet weighted.</summary>
internal sealed class UnifiedSums(UnifiedDay day)
{
    public List<string> Faults { get; } = [];
    public double[] Work { get; } = new double[day.People.Count];
    public double[] Idle { get; } = new double[day.People.Count];
    public double Travel { get; set; }
    public double Lateness { get; set; }
    public double LargestLateness { get; set; }
    public double Waiting { get; set; }
    public double Overtime { get; set; }
    public int NotPreferred { get; set; }
    public int LeftOut { get; set; }
    public int MissedLunches { get; set; }

    public double Total()
    {
        double mean = Work.Length == 0 ? 0 : Work.Average();
        return Part("travel_time", Travel)
            + Part("total_tardiness", Lateness)
            + Part("highest_tardiness", LargestLateness)
            + Part("total_waiting_time", Waiting)
            + Part("total_extra_time", Overtime)
            + Part("max_idle_time", Idle.Length == 0 ? 0 : Idle.Max())
            + Part("workload_balance", Work.Sum(work => Math.Ceiling(Math.Abs(work - mean) - 1e-9)))
            + Part("caregiver_preferences", NotPreferred)
            + Part("optional_patients", LeftOut)
            + Part("missed_lunch_break", MissedLunches);
    }

    private double Part(string component, double amount)
    {
        UnifiedWeight weight = day.Weight(component);
        if (weight.Hard && amount > 1e-6) Faults.Add($"{component} is {amount:0.###} and must be 0");
        return weight.Price * amount;
    }
}
