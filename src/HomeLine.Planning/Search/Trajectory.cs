using HomeLine.Planning.Cost;
using HomeLine.Planning.Plans;
using HomeLine.Planning.Search.Polishing;
using HomeLine.Planning.Search.Ruins;

namespace HomeLine.Planning.Search;

/// <summary>
/// One line of search: ruin and recreate and a few local moves, accepted by the blended cost at a temperature that falls with the rounds done, the best
/// plan kept by the exact score. A round that is refused is taken back at the cost of what it touched.
/// </summary>
internal sealed class Trajectory
{
    private const double FirstTemperature = 20, LastTemperature = 0.2, RoundsPerUnit = 100, ColdestStart = 0.25;
    private const int LargestRuin = 24;

    /// <summary>Large weeks never get rounds enough to settle that coldly, and gain by more and smaller rounds.</summary>
    private const int LargeWeek = 1_000, LargestRuinThere = 16;

    /// <summary>Units for which the last temperature is meant; it rises with their number, to five times as much.</summary>
    private const double UnitsOfLastTemperature = 400;

    private const double LargestShareRuined = 0.4;

    /// <summary>Smaller weeks, and shorter searches, are not worth an exact solver.</summary>
    private const int SmallestPolished = 10, FewestRoundsPolished = 5_000;

    /// <summary>Nurse-days are remembered in the later part of the search, when they are good.</summary>
    private const double RememberFrom = 0.2;

    private readonly CompiledWeek _week;
    private readonly WeekSearch _search;
    private readonly WeekState _current;
    private readonly Journal _journal;
    private readonly Tally _tally;
    private readonly OpenUnits _open;
    private readonly Recreate _recreate;
    private readonly RuinPick _pick;
    private readonly LocalMoves _moves;
    private readonly SeededChance _chance;
    private readonly int _rounds;
    private readonly int _mostRuined;
    private readonly double _firstTemperature, _lastTemperature;
    private readonly RoutePool _pool;
    private readonly Polish _polish;
    private double _currentCost;

    public Trajectory(CompiledWeek week, WeekState first, ulong seed, int rounds)
    {
        _week = week;
        _search = new WeekSearch(week);
        _chance = new SeededChance(seed);
        _rounds = rounds;
        _firstTemperature = FirstTemperatureFor(rounds, week.Units.Count);
        _lastTemperature = LastTemperature * Math.Clamp(week.Units.Count / UnitsOfLastTemperature, 1, 5);
        _mostRuined = Math.Min(week.Units.Count >= LargeWeek ? LargestRuinThere : LargestRuin, Math.Max(4, (int)(LargestShareRuined * week.Units.Count)));
        _current = new WeekState(week);
        Best = new WeekState(week);
        _journal = new Journal(week, _current);
        _tally = new Tally(week, _search.Score);
        _open = new OpenUnits(week, _search);
        _recreate = new Recreate(week, _search.Insertion, _search.Editor);
        _pick = new RuinPick(week);
        _moves = new LocalMoves(week, _search.Care, _search.Insertion, _search.Editor, _pick);
        _pool = new RoutePool(week);
        _polish = new Polish(week, _search.Editor);
        Restart(first);
    }

    /// <summary>The best plan so far.</summary>
    public WeekState Best { get; }

    /// <summary>Its score.</summary>
    public PlanScore BestScore { get; private set; }

    /// <summary>Rounds done.</summary>
    public int Round { get; private set; }

    /// <summary>Goes on from another plan, which is the best known from now on.</summary>
    public void Restart(WeekState from)
    {
        _current.Journal = null;
        _current.CopyFrom(from);
        Best.CopyFrom(from);
        _current.Journal = _journal;
        _tally.Recount(_current);
        _open.Recount(_current);
        BestScore = _tally.Score;
        _currentCost = Blend.Of(BestScore, _week.Tasks.CriticalPrice);
    }

    /// <summary>Runs on to a round; false when stopped before.</summary>
    public bool RunTo(int round, CancellationToken cancel)
    {
        bool idle = _week.Units.Count == _week.FixedVisits.Length || _week.Routes.Count == 0;
        for (; Round < round; Round++)
        {
            if (cancel.IsCancellationRequested) return false;
            if (!idle) OneRound();
        }

        return true;
    }

    /// <summary>Combines nurse-days seen at different times into a better plan, if there is one, and goes on from the best plan.</summary>
    public void PolishBest(CancellationToken cancel)
    {
        if (cancel.IsCancellationRequested || _week.Units.Count < SmallestPolished || _rounds < FewestRoundsPolished) return;
        Restart(Best);
        bool made = _polish.Apply(_current, _pool, cancel) && !cancel.IsCancellationRequested;
        PlanScore score = made ? _tally.After(_current, _journal) : default;
        if (!made || score >= BestScore)
        {
            _journal.TakeBack();
            return;
        }

        Accept(Blend.Of(score, _week.Tasks.CriticalPrice));
        Keep(score);
        SecondOpinion.Compare(_week, _current, _tally.Score, 0);
    }

    private void OneRound()
    {
        bool made = Change();
        if (made) _search.Editor.Settle(_current);
        PlanScore score = made ? _tally.After(_current, _journal) : default;
        double cost = Blend.Of(score, _week.Tasks.CriticalPrice);
        double threshold = _currentCost - (Temperature() * Math.Log(1 - _chance.NextFraction()));
        bool better = made && score < BestScore;
        if (!better && (!made || cost >= threshold))
        {
            _journal.TakeBack();
            return;
        }

        Accept(cost);
        if (better) Keep(score);
        SecondOpinion.Compare(_week, _current, _tally.Score, Round);
    }

    private double Temperature() =>
        _firstTemperature * Math.Pow(_lastTemperature / _firstTemperature, Round / (double)Math.Max(1, _rounds));

    /// <summary>With few rounds for each unit there is no time to come down from where everything is accepted.</summary>
    private static double FirstTemperatureFor(int rounds, int units) =>
        FirstTemperature * Math.Clamp(rounds / (RoundsPerUnit * Math.Max(1, units)), ColdestStart, 1);

    private void Accept(double cost)
    {
        foreach (int unit in _journal.Units.Items) _open.Update(_current, unit);
        if (Round >= _rounds * RememberFrom)
        {
            foreach (int route in _journal.Routes.Items) _pool.Note(_current, route);
        }

        _tally.Accept(_journal);
        _journal.Accept();
        _currentCost = cost;
    }

    private void Keep(PlanScore score)
    {
        BestScore = score;
        _journal.Keep(Best);
    }

    private bool Change()
    {
        int kind = _chance.Next(100);
        if (kind < 15)
        {
            if (!_moves.Apply(_current, _chance)) return false;
        }
        else
        {
            _pick.Begin(1 + _chance.Next(_mostRuined));
            Ruin(kind);
            _search.Editor.Remove(_current, _pick.Units);
        }

        _recreate.Apply(_current, _pick.Units, _open, _chance);
        return _journal.Routes.Count > 0;
    }

    private void Ruin(int kind)
    {
        switch (kind)
        {
            case < 50: NearbyStrings.Pick(_week, _current, _chance, _pick); break;
            case < 58: SameNurseDay.Pick(_week, _current, _chance, _pick); break;
            case < 70: SamePatientWeek.Pick(_week, _current, _chance, _pick); break;
            case < 78: SameHours.Pick(_week, _current, _chance, _pick); break;
            case < 84: SameDue.Pick(_week, _current, _chance, _pick); break;
            case < 95: RandomUnits.Pick(_week, _current, _chance, _pick); break;
            default: RivalsOfTheUnmet.Pick(_week, _current, _open, _chance, _pick); break;
        }
    }
}
