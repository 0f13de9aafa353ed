using HomeLine.Planning.Plans;
using HomeLine.Planning.Problem;
using HomeLine.Planning.Search;

namespace HomeLine.Planning.Cost;

/// <summary>The exact score of a plan under construction, by patient and by nurse-day: the only place where the search counts its tiers.</summary>
internal sealed class SearchScore(CompiledWeek week, SlotCare care)
{
    private readonly PlanningRules _rules = week.Problem.Rules;
    private readonly int[] _faces = new int[week.Days + week.FixedVisits.Length + 1];

    /// <summary>Everything counted from scratch.</summary>
    public PlanScore Of(WeekState state)
    {
        var sum = default(ScoreSum);
        for (int patient = 0; patient < week.PatientCount; patient++) sum.Add(OfPatient(state, patient));
        for (int route = 0; route < week.Routes.Count; route++) sum.Add(OfRoute(state, route));
        return sum.Score;
    }

    public RoutePart OfRoute(WeekState state, int route)
    {
        int visits = state.Visits[route];
        if (visits == 0) return default;
        ref readonly RouteFigures figures = ref state.Figures[route];
        long work = ((long)visits * _rules.VisitPriceMinutes) + figures.Driving + figures.Wait + ((long)_rules.OvertimeFactor * figures.Overtime);
        return new RoutePart(work, Load(figures.Stay + figures.Driving + (visits * _rules.DocumentationMinutes)) + week.Routes.Turn[route]);
    }

    public PatientPart OfPatient(WeekState state, int patient)
    {
        long critical = 0, risk = 0, duties = 0, unused = 0;
        foreach (int unit in week.Units.OfPatient[patient])
        {
            int slot = state.UnitSlot[unit], day = slot < 0 ? 0 : state.DayOf(slot);
            foreach (int task in week.Units.Tasks[unit])
            {
                if (slot < 0 && week.Tasks.Wished[task])
                {
                    duties += week.Tasks.UnmetPoints[task];
                    continue;
                }

                long late = slot < 0 ? week.Tasks.UnmetPoints[task] : LateOf(state, task, state.Start[slot]);
                if (week.Tasks.Critical[task]) critical += late;
                else risk += late;
                if (slot < 0) continue;
                if (state.Start[slot] > week.Tasks.TargetBy[task]) duties += week.Tasks.Weight[task];
                unused += UnusedLife(task, day);
            }
        }

        duties += (long)BeyondOrders(state, patient) * _rules.AllowanceExceededPoints;
        return new PatientPart(critical, risk, duties, People(state, patient), unused);
    }

    /// <summary>Visits of a patient beyond the orders, over all allowances.</summary>
    public int BeyondOrders(WeekState state, int patient)
    {
        int beyond = 0;
        foreach (WeekAllowance allowance in week.Problem.Patients[patient].Allowances)
        {
            int counted = 0;
            int last = Math.Min(allowance.LastDay - week.FirstDay, week.Days - 1);
            for (int day = Math.Max(0, allowance.FirstDay - week.FirstDay); day <= last; day++)
            {
                if (Counts(state, week.Slot(patient, day))) counted++;
            }

            counted += ExtraVisits(state, patient, allowance);
            beyond += Math.Max(0, counted - allowance.Visits);
        }

        return beyond;
    }

    /// <summary>Days of life a task gives away when done on a day, and one for a broken habit.</summary>
    public int UnusedLife(int task, int day)
    {
        int life = Math.Max(0, week.Tasks.LastDayOnTime[task] == int.MinValue ? 0 : week.Tasks.LastDayOnTime[task] - day);
        int usual = week.Tasks.UsualDay[task];
        return usual != int.MinValue && usual != day ? life + 1 : life;
    }

    public long Load(int busy) => (long)busy * busy / _rules.Soft.LoadDivisor;

    private long LateOf(WeekState state, int task, int start)
    {
        long late = (long)start - care.LateFromByChain(state, task);
        return late < 0 ? 0 : LateCost.Late(_rules, week.Tasks.Critical[task], week.Tasks.Weight[task], late);
    }

    private int ExtraVisits(WeekState state, int patient, WeekAllowance allowance)
    {
        int counted = 0, first = week.PatientCount * week.Days;
        for (int slot = first; slot < first + state.ExtraUsed; slot++)
        {
            if (state.RouteA[slot] < 0 || state.Patient[slot] != patient || !Counts(state, slot)) continue;
            int day = state.DayOf(slot) + week.FirstDay;
            if (day >= allowance.FirstDay && day <= allowance.LastDay) counted++;
        }

        return counted;
    }

    /// <summary>Whether a visit counts against the orders: anything but pure safety visits.</summary>
    private bool Counts(WeekState state, int slot)
    {
        for (int u = state.FirstUnit[slot]; u >= 0; u = state.UnitNext[u])
        {
            foreach (int task in week.Units.Tasks[u])
            {
                if (!week.Tasks.Safety[task]) return true;
            }
        }

        return false;
    }

    private long People(WeekState state, int patient)
    {
        long points = 0;
        int faces = 0, first = week.PatientCount * week.Days;
        for (int day = 0; day < week.Days; day++) points += Visit(state, patient, week.Slot(patient, day), ref faces);
        for (int slot = first; slot < first + state.ExtraUsed; slot++)
        {
            if (state.Patient[slot] == patient) points += Visit(state, patient, slot, ref faces);
        }

        return points + (Math.Max(0, faces - 1) * (long)_rules.Soft.ExtraFace);
    }

    private int Visit(WeekState state, int patient, int slot, ref int faces)
    {
        int route = state.RouteA[slot];
        if (route < 0) return 0;
        int nurse = week.Routes.Nurse[route];
        if (!_faces.AsSpan(0, faces).Contains(nurse)) _faces[faces++] = nurse;
        return week.People.VisitPoints[(patient * week.NurseCount) + nurse];
    }
}
