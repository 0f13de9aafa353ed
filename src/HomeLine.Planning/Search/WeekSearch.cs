using HomeLine.Planning.Cost;
using HomeLine.Planning.Plans;

namespace HomeLine.Planning.Search;

/// <summary>The search's tools for one problem, and its two steps: a first plan, and improving it.</summary>
internal sealed class WeekSearch
{
    private readonly CompiledWeek _week;

    public WeekSearch(CompiledWeek week)
    {
        _week = week;
        Care = new SlotCare(week);
        var timing = new RouteTiming(week, Care, new WeekState(week).Width);
        Score = new SearchScore(week, Care);
        Editor = new PlanEditor(week, Care, timing);
        Insertion = new Insertion(week, Care, timing, Score);
        Reading = new PlanReading(week, Care, Editor, Insertion);
    }

    public SlotCare Care { get; }

    public SearchScore Score { get; }

    public PlanEditor Editor { get; }

    public Insertion Insertion { get; }

    public PlanReading Reading { get; }

    /// <summary>Where a unit could still go in a plan, near or far; nowhere, which one that stands in a visit already is told too, has an infinite cost.</summary>
    public Proposal PlaceFor(WeekState state, int unit) => state.UnitSlot[unit] >= 0 ? Proposal.Nowhere : Insertion.Best(state, unit, everybody: true);

    /// <summary>Puts a unit where it could go.</summary>
    public void Put(WeekState state, int unit, in Proposal place) => Editor.Insert(state, unit, place);

    /// <summary>The exact score of a state.</summary>
    public PlanScore ScoreOf(WeekState state) => Score.Of(state);

    /// <summary>The better of a plan built from nothing and the published plan with its gaps filled.</summary>
    public WeekState First(CancellationToken cancel = default)
    {
        WeekState built = Filled(null, cancel);
        if (_week.Problem.Published is not { Visits.IsDefault: false } published) return built;
        WeekState adopted = Filled(published, cancel);
        return Score.Of(built) < Score.Of(adopted) ? built : adopted;
    }

    /// <summary>The plan with what is still open placed with anybody who has room, near or far, where that makes it better.</summary>
    public WeekState WithGapsFilled(WeekState state, CancellationToken cancel)
    {
        var filled = new WeekState(_week);
        filled.CopyFrom(state);
        new Construction(_week, Insertion, Editor).Fill(filled, cancel);
        Editor.Settle(filled);
        return Score.Of(filled) < Score.Of(state) ? filled : state;
    }

    /// <summary>A plan's visits, as far as they still can be made, with the gaps filled; built from nothing without one.</summary>
    public WeekState Filled(WeekPlan? published, CancellationToken cancel)
    {
        WeekState state = Reading.Fresh();
        if (published is not null) Reading.Adopt(state, published);
        new Construction(_week, Insertion, Editor).Fill(state, cancel);
        Editor.Settle(state);
        return state;
    }
}
