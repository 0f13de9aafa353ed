using HomeLine.Planning.Cost;

namespace HomeLine.Planning.Search;

/// <summary>
/// Finds the cheapest place for a unit: joining the patient's visit of a day, a new visit at any position of the nurse-days near her, or two positions
/// for a two-person visit. With chance given, a place is now and then overlooked ("blinks", Christiaens and Vanden Berghe 2020).
/// </summary>
internal sealed class Insertion
{
    private const double DayBlinkRate = 0.05;

    private readonly CompiledWeek _week;
    private readonly SlotCare _care;
    private readonly RouteTiming _timing;
    private readonly PlacePrice _price;
    private readonly NewVisitScan _scan;
    private readonly PairScan _pairs;
    private readonly NearRoutes _near;

    private SeededChance? _chance;
    private Proposal _best;

    public Insertion(CompiledWeek week, SlotCare care, RouteTiming timing, SearchScore score)
    {
        (_week, _care, _timing) = (week, care, timing);
        _price = new PlacePrice(week, score);
        _near = new NearRoutes(week);
        _scan = new NewVisitScan(week, care, timing);
        _pairs = new PairScan(week, care, timing);
    }

    /// <summary>The second cheapest nurse-day, for regret.</summary>
    public double SecondCost { get; private set; }

    /// <summary>Whether <see cref="SecondCost"/> is asked for; places that cannot be the best are passed over faster when not.</summary>
    public bool WantsSecond { get; set; }

    /// <summary>Which places are allowed at all; anything by default.</summary>
    public PlaceFilter Filter { get; set; } = PlaceFilter.Any;

    public Proposal Best(WeekState state, int unit, SeededChance? chance = null, bool everybody = false)
    {
        _chance = chance;
        _best = Proposal.Nowhere;
        SecondCost = double.PositiveInfinity;
        _near.Everybody = everybody;
        int patient = _week.Units.Patient[unit];
        _price.Begin(state, unit);
        foreach (int day in _week.Units.DaysOf[unit])
        {
            if (!Filter.AllowsDay(day) || Blinks() || FixedOn(state, patient, day)) continue;
            int slot = _week.Slot(patient, day);
            bool joins = state.FirstUnit[slot] >= 0;
            if (!_care.SetTrial(state, unit, day, joins ? slot : WeekState.None)) continue;
            if (joins) Join(state, unit, slot, day);
            else if (!Filter.JoinOnly) New(state, unit, slot, day);
        }

        _care.ClearTrial(state, unit);
        return _best;
    }

    /// <summary>The place at a given position of a given nurse-day (or two), as a new visit or joining the one that stands there.</summary>
    public Proposal At(WeekState state, int unit, int a, int b, int positionA, int positionB)
    {
        _chance = null;
        _best = Proposal.Nowhere;
        int day = _week.Routes.Day[a], slot = _week.Slot(_week.Units.Patient[unit], day);
        bool joins = state.FirstUnit[slot] >= 0;
        if (!_week.Units.Able(unit, a) || !_week.Caps.Allows(state, unit, joins ? slot : WeekState.None, a) || FixedOn(state, _week.Units.Patient[unit], day)) return _best;
        _price.Begin(state, unit);
        if (_care.SetTrial(state, unit, day, joins ? slot : WeekState.None))
        {
            if (joins && state.RouteA[slot] == a) Join(state, unit, slot, day);
            else if (!joins) Offer(_pairs.Fixed(state, slot, a, b, positionA, positionB));
        }

        _care.ClearTrial(state, unit);
        return _best;
    }

    private bool Blinks() => _chance is not null && _chance.NextFraction() < DayBlinkRate;

    private bool FixedOn(WeekState state, int patient, int day)
    {
        int slot = _week.Slot(patient, day);
        return state.FirstUnit[slot] >= 0 && state.Fixed[slot];
    }

    private void Join(WeekState state, int unit, int slot, int day)
    {
        int a = state.RouteA[slot], b = state.RouteB[slot];
        if (!_week.Units.Able(unit, a) || !Filter.AllowsNurse(_week.Routes.Nurse[a]) || !_week.Caps.Allows(state, unit, slot, a)) return;
        double ofDay = _price.OfDay(state, day);
        if (b >= 0)
        {
            Proposal both = _pairs.InPlace(state, slot);
            Offer(both with { Cost = ofDay + both.Cost - state.Figures[a].Cost - state.Figures[b].Cost });
            return;
        }

        double cost = ofDay + Stand(state, slot, a);
        if (!double.IsInfinity(cost)) Offer(new Proposal(cost, slot, a, 0));
    }

    /// <summary>Cost of a route when the trial slot stands where a slot stood.</summary>
    private double Stand(WeekState state, int slot, int route)
    {
        int trial = state.Trial;
        _timing.Load(state, route);
        _timing.Order[state.PositionOf(route, slot)] = trial;
        TrialVisit.Set(_week, _care, state, slot, route);
        (state.RouteA[trial], state.RouteB[trial]) = (route, WeekState.None);
        return _timing.Walk(state, route) ? _timing.Cost - state.Figures[route].Cost : double.PositiveInfinity;
    }

    private void New(WeekState state, int unit, int slot, int day)
    {
        double ofDay = _price.OfDay(state, day) + _price.OfNewVisit(state, day);
        ReadOnlySpan<int> near = _near.On(state, _week.Units.Patient[unit], day);
        if (_week.People.Crew[_week.Units.Patient[unit]] > 1)
        {
            Offer(_pairs.Best(state, unit, slot, near, ofDay, _price, Filter));
            return;
        }

        _scan.Chance = _chance;
        _scan.Begin();
        foreach (int route in near)
        {
            if (!_week.Units.Able(unit, route) || !Filter.AllowsNurse(_week.Routes.Nurse[route]) || !_week.Caps.Allows(state, unit, WeekState.None, route)) continue;
            Offer(_scan.Scan(state, slot, route, ofDay + _price.OfNurse(_week.Routes.Nurse[route]) + _price.OfTurn(state, route), Beat));
        }

        while (_scan.HasWaiting) Offer(_scan.WalkNext(state, slot, Beat));
    }

    private double Beat => WantsSecond ? SecondCost : _best.Cost;

    private void Offer(in Proposal proposal)
    {
        if (double.IsInfinity(proposal.Cost)) return;
        if (proposal.Cost < _best.Cost)
        {
            if (proposal.RouteA != _best.RouteA) SecondCost = _best.Cost;
            _best = proposal;
        }
        else if (proposal.RouteA != _best.RouteA && proposal.Cost < SecondCost) SecondCost = proposal.Cost;
    }
}
