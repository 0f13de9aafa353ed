using System.Collections.Immutable;
using HomeLine.Planning.Plans;
using HomeLine.Planning.Standing;

namespace HomeLine.Planning.Answers;

/// <summary>Ranks candidates, writes out the best that no other beats on every count, and a few of those beaten.</summary>
internal sealed class Offers(UrgentCase urgent, WritingOut writing, RulingOut ruledOut, int beatenWanted)
{
    private readonly Dictionary<Candidate, UrgentAnswer?> _written = [];
    private Candidate[] _ranked = [];

    /// <summary>At most three, best first.</summary>
    public ImmutableArray<UrgentAnswer> Kept { get; private set; } = [];

    /// <summary>Workable, but another one is at least as good on every count.</summary>
    public ImmutableArray<UrgentAnswer> Beaten { get; private set; } = [];

    public bool None => Kept.IsEmpty;

    public bool InTime => Kept.Any(a => a.Visit.Start < urgent.LateFrom);

    /// <summary>Nurses who could do it.</summary>
    public HashSet<int> Able()
    {
        var able = new HashSet<int>();
        foreach (Candidate candidate in _ranked.Where(c => !_written.TryGetValue(c, out UrgentAnswer? a) || a is not null))
        {
            able.Add(urgent.Table.NurseOf(candidate.Line));
            if (candidate.SecondLine >= 0) able.Add(urgent.Table.NurseOf(candidate.SecondLine));
        }

        return able;
    }

    public void Take(List<Candidate> candidates)
    {
        StandingTable table = urgent.Table;
        _ranked =
        [
            .. candidates.DistinctBy(c => (c.Line, c.SecondLine, c.Start, c.Disruption, c.Driving))
                .OrderBy(Class).ThenBy(c => c.Disruption).ThenBy(c => c.Driving)
                .ThenBy(c => c.Start).ThenBy(c => table.Problem.Nurses[table.NurseOf(c.Line)].Id, StringComparer.Ordinal),
        ];
        var kept = new List<Candidate>();
        var beaten = new List<Candidate>();
        foreach (Candidate candidate in _ranked)
        {
            bool shown = kept.Count < Ranking.Shown && kept.All(k => !Ranking.AtLeastAsGood(Class(k), k, Class(candidate), candidate));
            if (!shown && beaten.Count >= beatenWanted)
            {
                if (kept.Count >= Ranking.Shown) break;
                continue;
            }

            if (Written(candidate) is not null) (shown ? kept : beaten).Add(candidate);
        }

        Kept = [.. kept.Select(c => _written[c]!)];
        Beaten = [.. beaten.Select(c => _written[c]!)];
    }

    private int Class(Candidate candidate) => candidate.Start <= urgent.Target ? 0 : candidate.Start < urgent.LateFrom ? 1 : 2;

    private UrgentAnswer? Written(Candidate candidate)
    {
        if (_written.TryGetValue(candidate, out UrgentAnswer? known)) return known;
        (UrgentAnswer? answer, PlanningReason? refused) = writing.Of(candidate);
        if (refused is not null) ruledOut.Note(candidate.Line, refused);
        return _written[candidate] = answer;
    }
}
