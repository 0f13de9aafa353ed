using System.Collections.Immutable;
using HomeLine.Planning.Checking;
using HomeLine.Planning.Plans;

namespace HomeLine.Agency.WeekEditing;

/// <summary>Why a working draft may not become the week people are told.</summary>
internal static class BrokenRules
{
    /// <summary>How many rules are said in full: our own default.</summary>
    private const int MostSaid = 3;

    /// <summary>Empty when the checker holds nothing against what the coordinators can still change.</summary>
    public static Refusal? Of(WorkingWeek week)
    {
        ImmutableArray<PlanningReason> broken = [.. week.Hand.Check.Findings.Where(f => !IsUnderWay(week, f)).Select(f => f.Reason).DistinctBy(r => r.Sentence)];
        if (broken.IsEmpty) return null;
        string more = broken.Length > MostSaid ? $" And {broken.Length - MostSaid} more." : "";
        return new Refusal(
            "draft-breaks-rule",
            $"This draft breaks {(broken.Length == 1 ? "a rule" : $"{broken.Length} rules")}: {string.Join(" ", broken.Take(MostSaid).Select(r => r.Sentence))}{more}",
            $"{broken[0].Action} Nothing was published, and the draft is kept as it is.");
    }

    /// <summary>A visit that starts within the hour stands as it was told: nobody could mend it here, and holding the rest back for it would help no one.</summary>
    private static bool IsUnderWay(WorkingWeek week, Finding finding) =>
        finding.Visit is { } id && week.Visit(id) is { } visit && week.Promised(id) is { } told
        && week.Hand.Stays(id) && !week.Log.Pinned.Contains(id) && VisitWords.Place(told) == VisitWords.Place(visit);
}
