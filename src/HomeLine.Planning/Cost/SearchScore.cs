using HomeLine.Planning.Plans;
using HomeLine.Planning.Problem;
using HomeLine.Planning.Search;

namespace HomeLine.Planning.Cost;

/// <summary>The exact score of a plan under construction: the only place where the search counts its tiers.</summary>
internal sealed class SearchScore(CompiledWeek week, SlotCare care)
{
    private readonly PlanningRules _rules = week.Problem.Rules;
    private readonly int[] _seen = new int[week.PatientCount * Math.Max(1, week.NurseCount)];
    private readonly int[] _met = new int[week.PatientCount];
    private int _round;

    public PlanScore Of(WeekState state)
    {
        long critical = 0, risk = 0, duties = 0, unused = 0;
        for (int task = 0; task < week.Tasks.Count; task++)
        {
            int slot = state.UnitSlot[week.Units.OfTask[task]];
            long late = slot < 0 ? week.Tasks.UnmetPoints[task] : LateOf(state, task, state.Start[slot]);
            if (week.Tasks.Critical[task]) critical += late;
            else risk += late;
            if (slot < 0) continue;
            if (state.Start[slot] > week.Tasks.TargetBy[task]) duties += week.Tasks.Weight[task];
            unused += UnusedLife(task, state.DayOf(slot));
        }

        duties += (long)BeyondOrders(state) * _rules.AllowanceExceededPoints;
        (long work, long load) = Routes(state);
        return new PlanScore(critical, risk, duties, work, load + People(state), unused);
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

    private long LateOf(WeekState state, int task, int start)
    {
        long late = (long)start - care.LateFromByChain(state, task);
        return late < 0 ? 0 : LateCost.Late(_rules, week.Tasks.Critical[task], week.Tasks.Weight[task], late);
    }

    private (long Work, long Load) Routes(WeekState state)
    {
        long work = 0, load = 0;
        for (int r = 0; r < week.Routes.Count; r++)
        {
            int visits = state.Visits[r];
            if (visits == 0) continue;
            work += ((long)visits * _rules.VisitPriceMinutes) + state.Driving[r] + state.Wait[r] + ((long)_rules.OvertimeFactor * state.Overtime[r]);
            load += Load(state.Stay[r] + state.Driving[r] + (visits * _rules.DocumentationMinutes));
        }

        return (work, load);
    }

    public long Load(int busy) => (long)busy * busy / _rules.Soft.LoadDivisor;

    private int BeyondOrders(WeekState state)
    {
        int beyond = 0;
        for (int patient = 0; patient < week.PatientCount; patient++) beyond += BeyondOrders(state, patient);
        return beyond;
    }

    private int ExtraVisits(WeekState state, int patient, WeekAllowance allowance)
    {
        int counted = 0;
        for (int slot = week.PatientCount * week.Days; slot < state.Trial; slot++)
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

    private long People(WeekState state)
    {
        _round++;
        long points = 0;
        for (int slot = 0; slot < state.Trial; slot++)
        {
            if (state.RouteA[slot] < 0) continue;
            int patient = state.Patient[slot], seat = (patient * week.NurseCount) + week.Routes.Nurse[state.RouteA[slot]];
            points += week.People.VisitPoints[seat];
            if (_seen[seat] == _round) continue;
            _seen[seat] = _round;
            if (_met[patient] == _round) points += _rules.Soft.ExtraFace;
            _met[patient] = _round;
        }

        return points;
    }
}
