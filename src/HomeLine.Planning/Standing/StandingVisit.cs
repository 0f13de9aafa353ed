using HomeLine.Planning.Plans;
using HomeLine.Planning.Problem;
using HomeLine.Planning.Search;

namespace HomeLine.Planning.Standing;

/// <summary>What is known about one visit of a published plan whatever happens to it.</summary>
internal sealed class StandingVisit
{
    public StandingVisit(StandingTable table, PlannedVisit was, IEnumerable<CareTask> care, bool isFixed)
    {
        Was = was;
        Patient = table.PatientIndex[was.Patient];
        Home = table.Problem.Patients[Patient];
        Care = [.. care];
        Fixed = isFixed;
        Told = was.Promise >= PromiseState.Told;
        RangeFrom = was.ToldFrom ?? was.Start;
        RangeTo = RangeFrom + table.Problem.Rules.ToldRangeMinutes;
        BaseMinutes = Care.Length == 0 ? was.Minutes : Care.Max(t => t.SetupMinutes) + Care.Sum(t => t.WorkMinutes);
        LateFrom = Care.Length == 0 ? int.MaxValue : Care.Min(t => t.LateFrom);
        SafetyOnly = Care.Length > 0 && Care.All(t => t.Safety);
        WasNurse = table.NurseIndex[was.Nurse];
        WasSecond = was.Second is null ? -1 : table.NurseIndex[was.Second];
        Spans = Allowed(table.Problem);
        DrawToDrop = Care.Length == 0 ? int.MaxValue : Care.Min(t => t.DrawToDropMinutes ?? int.MaxValue);
    }

    public PlannedVisit Was { get; }

    public int WasNurse { get; }

    public int WasSecond { get; }

    public int Patient { get; }

    public PatientHome Home { get; }

    public CareTask[] Care { get; }

    /// <summary>Under way, done, or about to start: keeps nurse, time and care.</summary>
    public bool Fixed { get; }

    public bool Told { get; }

    /// <summary>First and last start that disturb nobody.</summary>
    public int RangeFrom { get; }

    public int RangeTo { get; }

    /// <summary>Minutes without an interpreter.</summary>
    public int BaseMinutes { get; }

    public int LateFrom { get; }

    public bool SafetyOnly { get; }

    public int DrawToDrop { get; }

    /// <summary>Allowed starts over all days, ascending and disjoint.</summary>
    public Span[] Spans { get; }

    /// <summary>Chain ties to other visits.</summary>
    public ChainTie[] Ties { get; set; } = [];

    /// <summary>The first allowed start at or after an arrival on the same day; -1 when there is none.</summary>
    public int StartAfter(int arrival)
    {
        int start = SpanSet.NextAllowed(Spans, arrival);
        return start < 0 || CompiledWeek.DayOf(start) != CompiledWeek.DayOf(arrival) ? -1 : start;
    }

    private Span[] Allowed(WeekProblem problem)
    {
        int from = problem.Now, to = (problem.DayCount * 1440) - 1;
        foreach (CareTask task in Care) (from, to) = (Math.Max(from, task.Opens), Math.Min(to, task.HardLatest));
        if (from > to) return [];
        Span[] spans = SpanSet.Both([new Span(from, to)], Home.StartSpans.AsSpan());
        foreach (CareTask task in Care) spans = SpanSet.Both(spans, task.StartSpans.AsSpan());
        return spans;
    }
}

/// <summary>A least separation from another visit.</summary>
/// <param name="Other">The other visit.</param>
/// <param name="Gap">Least minutes, or days at 1,440 each.</param>
/// <param name="InDays">Whether the gap counts days.</param>
/// <param name="OtherBefore">Whether the other comes before.</param>
internal readonly record struct ChainTie(int Other, int Gap, bool InDays, bool OtherBefore);
