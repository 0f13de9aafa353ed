using System.Globalization;
using HomeLine.Agency.Access;
using NodaTime;

namespace HomeLine.Agency.Decisions;

/// <summary>What stands against keeping a decision, before anything is written. Pure.</summary>
internal static class DecisionFaults
{
    public static Refusal? Of(DecisionMade made, OpenDecision? question, DecisionFacts facts, Actor actor)
    {
        DecisionRecord? last = facts.Records.Where(r => r.Key == made.Key).MaxBy(r => r.Round);
        if (question is null || question.Round != made.Round) return NotOpen(last, facts);
        if (!question.Right.Allows(actor))
            return new Refusal("decision-not-yours", $"{question.Right.Who} decides this.", "Ask a person with that licence; the question stays on the list.");
        if (!question.Choices.Contains(made.Choice))
            return new Refusal("choice-not-offered", "This cannot be decided that way.", "Choose one of the ways that are shown.");
        if (string.IsNullOrWhiteSpace(made.LicensedName))
            return new Refusal("licensed-name-missing", "The licensed person who decides is not named.", "Give the name and licence of the person whose decision it is.");
        if (string.IsNullOrWhiteSpace(made.Reason))
            return new Refusal("decision-reason-missing", "No reason is given.", "Say in a few words why.");
        return DecisionRights.NeedsEnd(made.Choice) ? EndFault(made.Until, facts) : null;
    }

    /// <summary>The longest an acceptance may last: policy, counted from today.</summary>
    public static LocalDate LongestEnd(DecisionFacts facts) =>
        facts.Agency.Today.PlusDays((int)facts.Agency.Files.Policy.ValueOf("exception.life.max", facts.Agency.Today));

    private static Refusal? EndFault(LocalDate? until, DecisionFacts facts)
    {
        if (until < facts.Agency.Today)
            return new Refusal("end-in-past", "The end lies in the past.", "Choose today or a later day.");
        LocalDate longest = LongestEnd(facts);
        return until > longest
            ? new Refusal("end-too-far", $"It may last at most to {Day(longest)}.", "Choose an earlier day; it can be decided again then.")
            : null;
    }

    private static Refusal NotOpen(DecisionRecord? last, DecisionFacts facts) => last is null
        ? new Refusal("decision-gone", "This question is no longer open: the record changed.", "Look at the list again.")
        : new Refusal(
            "already-decided",
            $"{last.LicensedName} decided this on {Day(last.DecidedAt.InZone(facts.Agency.Roster.Profile.Zone).Date)}: {last.Reason}",
            "Look at the list again; nothing was changed.");

    private static string Day(LocalDate day) => day.ToString("ddd d MMM uuuu", CultureInfo.InvariantCulture);
}
