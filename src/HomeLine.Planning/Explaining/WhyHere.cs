using System.Collections.Immutable;
using HomeLine.Planning.Cost;
using HomeLine.Planning.Plans;
using HomeLine.Planning.Problem;
using HomeLine.Planning.Search;

namespace HomeLine.Planning.Explaining;

/// <summary>
/// Takes one visit at a time out of a finished plan, puts it in the best place on another day, then with another nurse, and names the first tier of the score
/// that differs. The same evaluator as the search; the plan itself is not changed.
/// </summary>
internal sealed class WhyHere
{
    private readonly CompiledWeek _week;
    private readonly WeekSearch _search;
    private readonly WeekState _state;
    private readonly Journal _journal;
    private readonly Tally _tally;

    public WhyHere(WeekProblem problem, WeekPlan plan)
    {
        _week = new CompiledWeek(problem);
        _search = new WeekSearch(_week);
        _state = _search.Reading.Fresh();
        _search.Reading.Adopt(_state, plan);
        _journal = new Journal(_week, _state);
        _tally = new Tally(_week, _search.Score);
        _tally.Recount(_state);
        _state.Journal = _journal;
    }

    /// <summary>Reasons of the visits that could be elsewhere at all, in the plan's order; fixed visits have none. Those found so far when it is stopped.</summary>
    public ImmutableArray<VisitReason> Of(IEnumerable<PlannedVisit> visits, CancellationToken cancel) =>
        [.. visits.TakeWhile(_ => !cancel.IsCancellationRequested).Select(Of).OfType<VisitReason>()];

    private VisitReason? Of(PlannedVisit visit)
    {
        int slot = SlotOf(visit);
        if (slot < 0 || _state.RouteA[slot] < 0 || _state.Fixed[slot]) return null;
        int day = _state.DayOf(slot), nurse = _week.Routes.Nurse[_state.RouteA[slot]];
        int[] units = UnitsIn(slot);
        (PlanScore? otherDay, string dayPlace) = Elsewhere(slot, units, PlaceFilter.Any with { NotDay = day });
        (PlanScore? otherNurse, string nursePlace) = Elsewhere(slot, units, PlaceFilter.Any with { OnlyDay = day, NotNurse = nurse });
        string here = PlanClock.DayName(_week.Problem.FirstDay, day + _week.FirstDay), who = _week.Problem.Nurses[nurse].Name;
        return new VisitReason(
            visit.Id,
            WhyWords.Say(_tally.Score, otherDay, $"{here}", dayPlace, "day"),
            WhyWords.Say(_tally.Score, otherNurse, who, nursePlace, "nurse"),
            otherDay,
            otherNurse);
    }

    private int SlotOf(PlannedVisit visit)
    {
        string? task = (visit.Tasks.IsDefault ? [] : visit.Tasks).FirstOrDefault(_week.TaskIndex.ContainsKey);
        return task is null ? -1 : _state.UnitSlot[_week.Units.OfTask[_week.TaskIndex[task]]];
    }

    private int[] UnitsIn(int slot)
    {
        var units = new List<int>();
        for (int u = _state.FirstUnit[slot]; u >= 0; u = _state.UnitNext[u]) units.Add(u);
        return [.. units];
    }

    /// <summary>The score with the visit's care at its best place under a filter, and where that is; empty when some of it finds none.</summary>
    private (PlanScore? Score, string Place) Elsewhere(int slot, int[] units, PlaceFilter filter)
    {
        _search.Editor.Remove(_state, units);
        _search.Insertion.Filter = filter;
        bool placed = true;
        string where = string.Empty;
        foreach (int unit in units)
        {
            Proposal place = _search.Insertion.Best(_state, unit, everybody: true);
            placed &= !double.IsInfinity(place.Cost);
            if (double.IsInfinity(place.Cost)) continue;
            _search.Editor.Insert(_state, unit, place);
            where = Where(place.RouteA);
        }

        _search.Insertion.Filter = PlaceFilter.Any;
        _search.Editor.Settle(_state);
        PlanScore score = _tally.After(_state, _journal);
        _journal.TakeBack();
        return placed ? (score, where) : (null, string.Empty);
    }

    private string Where(int route) =>
        $"{PlanClock.DayName(_week.Problem.FirstDay, _week.Routes.Day[route] + _week.FirstDay)} with {_week.Problem.Nurses[_week.Routes.Nurse[route]].Name}";
}
