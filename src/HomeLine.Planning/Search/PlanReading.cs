using HomeLine.Planning.Plans;

namespace HomeLine.Planning.Search;

/// <summary>Brings fixed visits, and as much of a published plan as still holds, into a fresh state.</summary>
internal sealed class PlanReading(CompiledWeek week, SlotCare care, PlanEditor editor, Insertion insertion)
{
    /// <summary>A state with the fixed visits and nothing else.</summary>
    public WeekState Fresh()
    {
        var state = new WeekState(week);
        int extra = week.PatientCount * week.Days;
        for (int u = 0; u < week.FixedVisits.Length; u++)
        {
            PlannedVisit visit = week.FixedVisits[u];
            int patient = week.Units.Patient[u], day = CompiledWeek.DayOf(visit.Start) - week.FirstDay;
            int slot = state.FirstUnit[week.Slot(patient, day)] < 0 ? week.Slot(patient, day) : extra++;
            Place(state, u, visit, slot, day);
        }

        state.ExtraUsed = extra - (week.PatientCount * week.Days);
        for (int r = 0; r < week.Routes.Count; r++)
        {
            state.OrderOf(r).Sort((a, b) => (state.Start[a], a).CompareTo((state.Start[b], b)));
            editor.Retime(state, r);
        }

        return state;
    }

    /// <summary>Adds the visits of a plan, in order of start, that still can be made; what cannot is left out for the search to place.</summary>
    public void Adopt(WeekState state, WeekPlan plan)
    {
        var isFixed = week.FixedVisits.Select(v => v.Id).ToHashSet(StringComparer.Ordinal);
        foreach (PlannedVisit visit in plan.Visits.OrderBy(v => v.Start).ThenBy(v => v.Id, StringComparer.Ordinal))
        {
            if (!isFixed.Contains(visit.Id)) Adopt(state, visit);
        }
    }

    private void Place(WeekState state, int unit, PlannedVisit visit, int slot, int day)
    {
        state.Patient[slot] = week.Units.Patient[unit];
        state.FirstUnit[slot] = unit;
        state.UnitSlot[unit] = slot;
        state.RouteA[slot] = week.Routes.Find(week.NurseIndex[visit.Nurse], day);
        state.RouteB[slot] = visit.Second is { } second ? week.Routes.Find(week.NurseIndex[second], day) : WeekState.None;
        care.Gather(state, slot, day);
        state.Minutes[slot] = visit.Minutes;
        state.Start[slot] = visit.Start;
        state.Pinned[slot] = state.Fixed[slot] = true;
        state.PutAt(state.RouteA[slot], state.Visits[state.RouteA[slot]], slot);
        if (state.RouteB[slot] >= 0) state.PutAt(state.RouteB[slot], state.Visits[state.RouteB[slot]], slot);
    }

    private void Adopt(WeekState state, PlannedVisit visit)
    {
        int day = CompiledWeek.DayOf(visit.Start) - week.FirstDay;
        int a = RouteOf(visit.Nurse, day), b = visit.Second is null ? WeekState.None : RouteOf(visit.Second, day);
        if (a < 0 || (visit.Second is not null && b < 0)) return;
        var tasks = (visit.Tasks.IsDefault ? [] : visit.Tasks).Where(week.TaskIndex.ContainsKey).Select(t => week.TaskIndex[t]).ToHashSet();
        foreach (int unit in tasks.Select(t => week.Units.OfTask[t]).Distinct().Order())
        {
            bool two = week.People.Crew[week.Units.Patient[unit]] > 1;
            if (state.UnitSlot[unit] >= 0 || two != (b >= 0) || !week.Units.Tasks[unit].All(tasks.Contains)) continue;
            Proposal place = insertion.At(state, unit, a, b, Position(state, a, visit.Start), b < 0 ? 0 : Position(state, b, visit.Start));
            if (!double.IsInfinity(place.Cost)) editor.Insert(state, unit, place);
        }
    }

    private int RouteOf(string nurse, int day)
    {
        if (!week.NurseIndex.TryGetValue(nurse, out int n)) return WeekState.None;
        int route = week.Routes.Find(n, day);
        return route >= 0 && week.Routes.Open[route] ? route : WeekState.None;
    }

    private static int Position(WeekState state, int route, int start)
    {
        int position = 0;
        foreach (int slot in state.OrderOf(route))
        {
            if (state.Start[slot] <= start) position++;
        }

        return position;
    }
}
