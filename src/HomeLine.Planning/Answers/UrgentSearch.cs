using HomeLine.Planning.Plans;
using HomeLine.Planning.Search;
using HomeLine.Planning.Standing;

namespace HomeLine.Planning.Answers;

/// <summary>
/// Tries the urgent visit in every nurse's day, gentlest first; goes deeper (more moves, another visit elsewhere, overtime, the nurse on call, a later day)
/// only when nothing gentle meets the deadline. Places are judged from the tables; what is offered is written out and checked.
/// </summary>
internal sealed class UrgentSearch
{
    private const int GentleMoves = 1, DeeperMoves = 3;

    private readonly UrgentCase _urgent;
    private readonly RulingOut _ruledOut;
    private readonly UrgentScan _scan;
    private readonly WritingOut _writing;
    private readonly int _beaten;

    public UrgentSearch(UrgentCase urgent, PlanScore published, int beaten)
    {
        _urgent = urgent;
        _beaten = beaten;
        var trial = new PushTrial(urgent.Table, urgent.Visit);
        var price = new StandingPrice(urgent, trial);
        _ruledOut = new RulingOut(urgent, trial);
        _scan = new UrgentScan(urgent, trial, price, _ruledOut);
        _writing = new WritingOut(urgent, trial, published);
    }

    public UrgentAnswers Answers()
    {
        int firstDay = CompiledWeek.DayOf(Math.Max(_urgent.Problem.Now, _urgent.Care.Max(t => t.Opens)));
        int lastDay = Math.Clamp(CompiledWeek.DayOf(_urgent.LateFrom - 1), firstDay, _urgent.Problem.DayCount - 1);
        for (int day = firstDay; day <= lastDay; day++) _scan.OnDay(day, GentleMoves, deeper: false);
        var offers = new Offers(_urgent, _writing, _ruledOut, _beaten);
        offers.Take(_scan.Found);
        if (!offers.InTime)
        {
            for (int day = firstDay; day <= lastDay; day++) _scan.OnDay(day, DeeperMoves, deeper: true);
            offers.Take(_scan.Found);
        }

        for (int day = lastDay + 1; day < _urgent.Problem.DayCount && offers.None; day++)
        {
            _scan.OnDay(day, DeeperMoves, deeper: true);
            offers.Take(_scan.Found);
        }

        return new UrgentAnswers(offers.Kept, offers.Beaten, _ruledOut.Except(offers.Able()));
    }
}
