namespace HomeLine.Planning.Answers;

/// <summary>When one answer makes another not worth showing.</summary>
internal static class Ranking
{
    /// <summary>Most answers shown.</summary>
    public const int Shown = 3;

    /// <summary>At least as good in class (0 meets the target, 1 inside the last acceptable, 2 late), disruption and driving.</summary>
    public static bool AtLeastAsGood(int classOfOne, Candidate one, int classOfOther, Candidate other) =>
        classOfOne <= classOfOther && one.Disruption <= other.Disruption && one.Driving <= other.Driving;
}
