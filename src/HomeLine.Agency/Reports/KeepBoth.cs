using HomeLine.Agency.Mending;
using HomeLine.Agency.Roster;
using HomeLine.Agency.WeekPlanning;
using HomeLine.Planning.Checking;

namespace HomeLine.Agency.Reports;

/// <summary>The later visit with the same care stays beside the new one, because a person says so and why. Ours replaces it: a dressing that comes off twice within days harms skin.</summary>
public static class KeepBoth
{
    /// <summary>What is shown before somebody keeps both; common practice, no source.</summary>
    public const string Warning =
        "A dressing changed again within days can strip the skin, and the clocks begin anew with today's visit. Keep the later visit only for care that is still needed then; orders and clinical judgement come first.";

    internal static Refusal WithoutReason => new("keep-both-without-reason", "Both visits would stay and no reason is given.", "Write why the later visit is still needed.");

    /// <summary>The refusal when the week breaks a rule with both that it does not break as published, or nothing.</summary>
    internal static Refusal? Refuse(PlannedWeek both, PlannedWeek published, AgencyAtHand agency)
    {
        var known = Findings(published).Select(f => f.Reason.Sentence).ToHashSet(StringComparer.Ordinal);
        return Findings(both).FirstOrDefault(f => !known.Contains(f.Reason.Sentence)) is { } broken
            ? new Refusal("keep-both-no-room", $"Both visits do not fit: {broken.Reason.Sentence}", "Let the later visit go, or choose another answer.")
            : null;

        IEnumerable<Finding> Findings(PlannedWeek week)
        {
            StandingWeek standing = StandingWeek.Of(agency.Roster, agency.Files, week, agency.Now).WithClosures(agency.Closures, agency.Roster);
            return Checker.Check(standing.Problem, standing.Plan).Findings;
        }
    }
}
