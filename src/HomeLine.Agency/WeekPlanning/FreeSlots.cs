namespace HomeLine.Agency.WeekPlanning;

/// <summary>How often a slot of some minutes fits into what a nurse's day leaves free in one piece: before she leaves home, between visits, after the last.</summary>
/// <param name="SlotMinutes">Length of a slot.</param>
/// <param name="ChartingMinutes">Writing after each visit.</param>
internal sealed record FreeSlots(int SlotMinutes, int ChartingMinutes)
{
    /// <summary>Slots of one day.</summary>
    /// <param name="from">Minute of the day from which she is free to go.</param>
    /// <param name="to">Minute of the day at which her shift ends.</param>
    /// <param name="breakMinutes">Length of her break; it is taken from the longest stretch.</param>
    /// <param name="visits">Her visits, by start.</param>
    /// <param name="roads">The map, at its usual times.</param>
    /// <param name="home">Where she begins and ends.</param>
    public int Of(int from, int to, int breakMinutes, IReadOnlyList<WeekVisit> visits, RoadTravel roads, int home)
    {
        var stretches = new List<int>();
        int free = from, here = home;
        foreach (WeekVisit visit in visits)
        {
            int start = (visit.Start.Hour * 60) + visit.Start.Minute, there = roads.PlaceOfPatient(visit.Patient.Value);
            stretches.Add(Math.Min(start - roads.Times.Minutes(here, there), to) - free);
            free = Math.Max(free, start + visit.Minutes + ChartingMinutes);
            here = there;
        }

        stretches.Add(to - free - (visits.Count == 0 ? 0 : roads.Times.Minutes(here, home)));
        int longest = stretches.IndexOf(stretches.Max());
        stretches[longest] -= breakMinutes;
        return stretches.Sum(s => Math.Max(0, s) / Math.Max(1, SlotMinutes));
    }
}
