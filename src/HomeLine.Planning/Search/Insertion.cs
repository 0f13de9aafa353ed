using HomeLine.Planning.Cost;

namespace HomeLine.Planning.Search;

/// <summary>
/// Finds the cheapest place for a unit: joining the patient's visit of a day, a new visit at any position of any able nurse-day, or two positions
/// for a two-person visit. With chance given, a place is now and then overlooked ("blinks", Christiaens and Vanden Berghe 2020).
/// </summary>
internal sealed class Insertion(CompiledWeek week, SlotCare care, RouteTiming timing, SearchScore score)
{
    private const double BlinkRate = 0.01, DayBlinkRate = 0.05;

    private SeededChance? _chance;
    private Proposal _best;

    /// <summary>The second cheapest nurse-day, for regret.</summary>
    public double SecondCost { get; private set; }

    public Proposal Best(WeekState state, int unit, SeededChance? chance = null)
    {
        _chance = chance;
        _best = Proposal.Nowhere;
        SecondCost = double.PositiveInfinity;
        int patient = week.Units.Patient[unit];
        for (int day = 0; day < week.Days; day++)
        {
            if (week.Units.StartSpans[(unit * week.Days) + day].Length == 0 || Blinks(DayBlinkRate) || FixedOn(state, patient, day)) continue;
            int slot = week.Slot(patient, day);
            bool joins = state.FirstUnit[slot] >= 0;
            if (!care.SetTrial(state, unit, day, joins ? slot : WeekState.None)) continue;
            if (joins) Join(state, unit, slot);
            else if (week.People.Crew[patient] > 1) TwoPeople(state, unit, slot, day);
            else New(state, unit, slot, day);
        }

        care.ClearTrial(state, unit);
        return _best;
    }

    /// <summary>The place at a given position of a given nurse-day (or two), as a new visit or joining the one that stands there.</summary>
    public Proposal At(WeekState state, int unit, int a, int b, int positionA, int positionB)
    {
        _chance = null;
        _best = Proposal.Nowhere;
        int day = week.Routes.Day[a], slot = week.Slot(week.Units.Patient[unit], day);
        bool joins = state.FirstUnit[slot] >= 0;
        if (!week.Units.Able[(unit * week.Routes.Count) + a] || FixedOn(state, week.Units.Patient[unit], day)) return _best;
        if (care.SetTrial(state, unit, day, joins ? slot : WeekState.None))
        {
            if (joins && state.RouteA[slot] == a) Join(state, unit, slot);
            else if (!joins) Offer(AsNew(state, slot, a, b, positionA, positionB));
        }

        care.ClearTrial(state, unit);
        return _best;
    }

    private Proposal AsNew(WeekState state, int slot, int a, int b, int positionA, int positionB)
    {
        int trial = state.Trial;
        Trial(state, slot, a);
        (state.RouteA[trial], state.RouteB[trial]) = (a, b);
        int arrival = Math.Max(Arrival(state, a, positionA), b < 0 ? 0 : Arrival(state, b, positionB));
        state.Start[trial] = care.StartAfter(state, trial, arrival, a);
        if (state.Start[trial] < 0) return Proposal.Nowhere;
        state.Pinned[trial] = b >= 0;
        double cost = At(state, a, positionA) + (b < 0 ? 0 : At(state, b, positionB));
        state.Pinned[trial] = false;
        return double.IsInfinity(cost) ? Proposal.Nowhere : new Proposal(cost, slot, a, positionA, b, positionB, state.Start[trial]);
    }

    private bool Blinks(double rate) => _chance is not null && _chance.NextFraction() < rate;

    private bool FixedOn(WeekState state, int patient, int day)
    {
        int slot = week.Slot(patient, day);
        return state.FirstUnit[slot] >= 0 && state.Fixed[slot];
    }

    private void Join(WeekState state, int unit, int slot)
    {
        int a = state.RouteA[slot], b = state.RouteB[slot];
        if (!week.Units.Able[(unit * week.Routes.Count) + a]) return;
        double cost = Stand(state, slot, a);
        if (b >= 0 && !double.IsInfinity(cost)) cost += Stand(state, slot, b);
        if (!double.IsInfinity(cost)) Offer(new Proposal(cost + Soft(state, unit, slot, a, false), slot, a, 0));
    }

    /// <summary>Cost of a route when the trial slot stands where a slot stood.</summary>
    private double Stand(WeekState state, int slot, int route)
    {
        int trial = state.Trial, position = state.PositionOf(route, slot);
        timing.Load(state, route);
        timing.Order[position] = trial;
        Trial(state, slot, state.RouteA[slot]);
        (state.RouteA[trial], state.RouteB[trial]) = (state.RouteA[slot], state.RouteB[slot]);

        // A two-person start is kept when care joins; it must still be allowed.
        if (state.Pinned[trial] && care.StartAfter(state, trial, state.Start[slot], state.RouteA[slot]) != state.Start[slot])
            return double.PositiveInfinity;
        return timing.Walk(state, route) ? timing.Cost - RouteCost(state, route) : double.PositiveInfinity;
    }

    private void Trial(WeekState state, int slot, int route)
    {
        int trial = state.Trial;
        state.Start[trial] = state.Start[slot];
        state.Minutes[trial] = state.Setup[trial] + state.Work[trial]
            + week.People.Interpreter[(state.Patient[trial] * week.NurseCount) + week.Routes.Nurse[route]];
    }

    private void New(WeekState state, int unit, int slot, int day)
    {
        foreach (int route in week.Routes.OfDay[day])
        {
            if (!week.Units.Able[(unit * week.Routes.Count) + route] || state.Visits[route] >= state.Width - 1) continue;
            Proposal found = InRoute(state, unit, slot, route);
            if (!double.IsInfinity(found.Cost)) Offer(found);
        }
    }

    private Proposal InRoute(WeekState state, int unit, int slot, int route)
    {
        int trial = state.Trial;
        Proposal best = Proposal.Nowhere;
        Trial(state, slot, route);
        (state.RouteA[trial], state.RouteB[trial]) = (route, WeekState.None);
        double soft = Soft(state, unit, slot, route, true), before = RouteCost(state, route);
        timing.Load(state, route);
        int count = timing.Count;
        timing.Count = count + 1;
        for (int i = count; i > 0; i--) timing.Order[i] = timing.Order[i - 1];
        for (int position = 0; position <= count; position++)
        {
            if (position > 0)
            {
                timing.Order[position - 1] = timing.Order[position];
                timing.Starts[position - 1] = state.Start[timing.Order[position - 1]];
            }

            timing.Order[position] = trial;
            if (Blinks(BlinkRate) || !timing.Walk(state, route, position)) continue;
            double cost = timing.Cost - before + soft;
            if (cost < best.Cost) best = new Proposal(cost, slot, route, position);
        }

        return best;
    }

    private void TwoPeople(WeekState state, int unit, int slot, int day)
    {
        foreach (int a in week.Routes.OfDay[day])
        {
            if (!week.Units.Able[(unit * week.Routes.Count) + a] || state.Visits[a] >= state.Width - 1) continue;
            double soft = Soft(state, unit, slot, a, true);
            foreach (int b in week.Routes.OfDay[day])
            {
                if (b == a || state.Visits[b] >= state.Width - 1) continue;
                if (!week.People.SecondAble[(week.Units.Patient[unit] * week.Routes.Count) + b] || Blinks(BlinkRate)) continue;
                Pair(state, slot, a, b, soft);
            }
        }
    }

    private void Pair(WeekState state, int slot, int a, int b, double soft)
    {
        int trial = state.Trial;
        Trial(state, slot, a);
        (state.RouteA[trial], state.RouteB[trial]) = (a, b);
        double before = RouteCost(state, a) + RouteCost(state, b);
        for (int i = 0; i <= state.Visits[a]; i++)
        {
            for (int j = 0; j <= state.Visits[b]; j++)
            {
                int start = care.StartAfter(state, trial, Math.Max(Arrival(state, a, i), Arrival(state, b, j)), a);
                if (start < 0) continue;
                state.Start[trial] = start;
                state.Pinned[trial] = true;
                double cost = At(state, a, i);
                if (!double.IsInfinity(cost)) cost += At(state, b, j);
                if (!double.IsInfinity(cost)) Offer(new Proposal(cost - before + soft, slot, a, i, b, j, start));
            }
        }

        state.Pinned[trial] = false;
    }

    private int Arrival(WeekState state, int route, int position)
    {
        Roads roads = week.Roads;
        int here = roads.OfPatient(state.Patient[state.Trial]);
        if (position == 0) return week.Routes.From[route] + roads.Minutes(Roads.OfNurse(week.Routes.Nurse[route]), here);
        int last = state.OrderOf(route)[position - 1];
        return state.Start[last] + state.Minutes[last] + week.Problem.Rules.DocumentationMinutes
            + roads.Minutes(roads.OfPatient(state.Patient[last]), here);
    }

    private double At(WeekState state, int route, int position)
    {
        timing.Load(state, route);
        for (int i = timing.Count++; i > position; i--) timing.Order[i] = timing.Order[i - 1];
        timing.Order[position] = state.Trial;
        return timing.Walk(state, route) ? timing.Cost : double.PositiveInfinity;
    }

    private double RouteCost(WeekState state, int route) =>
        RouteTiming.CostOf(week, state.Driving[route], state.Wait[route], state.Overtime[route], state.Late[route],
            state.Stay[route] + state.Driving[route] + (state.Visits[route] * week.Problem.Rules.DocumentationMinutes));

    /// <summary>What the place costs besides the road: visit price, orders, continuity, faces, wishes, unused life, less what being unmet costs.</summary>
    private double Soft(WeekState state, int unit, int slot, int route, bool isNew)
    {
        int patient = week.Units.Patient[unit], day = week.Routes.Day[route];
        double cost = 0;
        foreach (int task in week.Units.Tasks[unit])
        {
            cost -= week.Tasks.UnmetPoints[task] * week.Tasks.PointPrice[task];
            cost += score.UnusedLife(task, day) * Blend.UnusedLife;
        }

        if (!isNew) return cost;
        int nurse = week.Routes.Nurse[route], crew = week.People.Crew[patient] > 1 ? 2 : 1;
        cost += crew * week.Problem.Rules.VisitPriceMinutes;
        cost += week.People.VisitPoints[(patient * week.NurseCount) + nurse] * Blend.People;
        if (NewFace(state, patient, nurse)) cost += week.Problem.Rules.Soft.ExtraFace * Blend.People;
        return cost + (Blend.Duty * week.Problem.Rules.AllowanceExceededPoints * BeyondOrders(state, unit, slot));
    }

    private bool NewFace(WeekState state, int patient, int nurse)
    {
        bool others = false;
        for (int day = 0; day < week.Days; day++)
        {
            int slot = week.Slot(patient, day);
            if (state.RouteA[slot] < 0) continue;
            if (week.Routes.Nurse[state.RouteA[slot]] == nurse) return false;
            others = true;
        }

        return others;
    }

    /// <summary>Visits beyond the orders that the trial visit would add.</summary>
    private int BeyondOrders(WeekState state, int unit, int slot)
    {
        int patient = week.Units.Patient[unit];
        if (week.Problem.Patients[patient].Allowances.IsEmpty) return 0;
        int before = score.BeyondOrders(state, patient);
        state.FirstUnit[slot] = unit;
        int after = score.BeyondOrders(state, patient);
        state.FirstUnit[slot] = WeekState.None;
        return after - before;
    }

    private void Offer(in Proposal proposal)
    {
        if (proposal.Cost < _best.Cost)
        {
            if (proposal.RouteA != _best.RouteA) SecondCost = _best.Cost;
            _best = proposal;
        }
        else if (proposal.RouteA != _best.RouteA && proposal.Cost < SecondCost) SecondCost = proposal.Cost;
    }
}
