using System.Collections.Immutable;

namespace HomeLine.Planning.Answers;

/// <summary>Orders workable answers and sets aside those another one beats on every count.</summary>
internal static class Ranking
{
    /// <summary>Most answers shown.</summary>
    public const int Shown = 3;

    /// <summary>0 meets the target, 1 inside the last acceptable, 2 late.</summary>
    public static int Class(UrgentCase urgent, UrgentAnswer answer) =>
        answer.MeetsTarget ? 0 : answer.Visit.Start < urgent.LateFrom ? 1 : 2;

    public static (ImmutableArray<UrgentAnswer> Answers, ImmutableArray<UrgentAnswer> Others) Split(
        UrgentCase urgent,
        IEnumerable<UrgentAnswer> workable)
    {
        UrgentAnswer[] ranked =
        [
            .. workable.OrderBy(a => Class(urgent, a)).ThenBy(a => a.Disruption).ThenBy(a => a.DrivingDelta)
                .ThenBy(a => a.Visit.Start).ThenBy(a => a.Visit.Nurse, StringComparer.Ordinal),
        ];
        var kept = new List<UrgentAnswer>();
        foreach (UrgentAnswer answer in ranked)
        {
            // Ranked first and driving no more means at least as good on every count.
            if (kept.Count < Shown && kept.All(k => !AtLeastAsGood(urgent, k, answer))) kept.Add(answer);
        }

        return ([.. kept], [.. ranked.Except(kept)]);
    }

    private static bool AtLeastAsGood(UrgentCase urgent, UrgentAnswer one, UrgentAnswer other) =>
        Class(urgent, one) <= Class(urgent, other) && one.Disruption <= other.Disruption && one.DrivingDelta <= other.DrivingDelta;
}
