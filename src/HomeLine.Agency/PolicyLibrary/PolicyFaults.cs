using System.Globalization;
using HomeLine.LineCare.Policy;
using NodaTime;

namespace HomeLine.Agency.PolicyLibrary;

/// <summary>What stands against a drafted policy, whoever wrote it. Pure.</summary>
internal static class PolicyFaults
{
    /// <summary>Units whose values may have a fraction; the clocks and the planner count the others in whole numbers.</summary>
    private static readonly string[] Fractional = ["hours", "cm", "kg", "°C", "micron", "percent"];

    public static Refusal? Of(PolicyDraft draft, PolicyBook book, LocalDate today)
    {
        if (draft.EffectiveFrom < today)
            return new Refusal("policy-in-past", "A policy cannot take effect in the past: last month's care is judged by the policy of last month.", "Choose today or a later day.");
        if (string.IsNullOrWhiteSpace(draft.Note))
            return new Refusal("policy-note-missing", "It is not said why the policy changes.", "Say why in a few words.");
        if (draft.Changes.IsEmpty)
            return new Refusal("policy-empty", "The draft changes no rule.", "Choose at least one rule and give its new value.");
        foreach (RuleChange change in draft.Changes)
            if (Of(change, book, draft.EffectiveFrom) is { } fault) return fault;
        return OfBook(draft, book);
    }

    private static Refusal? Of(RuleChange change, PolicyBook book, LocalDate from)
    {
        if (book.InForce(change.RuleId, from) is not { } rule)
            return new Refusal("policy-rule-unknown", $"There is no rule {change.RuleId}.", "Choose a rule from the list.");
        if (string.IsNullOrWhiteSpace(change.Source))
            return new Refusal("policy-source-missing", $"{change.RuleId} has no source.", "Say where the value comes from: a paper, a signed policy, a person.");
        if (change.Unit != rule.Unit && !(IsTime(change.Unit) && IsTime(rule.Unit)))
            return new Refusal("policy-unit", $"{change.RuleId} is in {rule.Unit}.", $"Give the value in {rule.Unit}.");
        if (change.Value == rule.Value && change.Unit == rule.Unit)
            return new Refusal("policy-unchanged", $"{change.RuleId} is {PolicyDifference.Amount(rule)} already.", "Give another value, or leave the rule out.");
        return IsAllowed(change, book)
            ? null
            : NotAllowed($"{change.RuleId}: {change.Value.ToString("0.##", CultureInfo.InvariantCulture)} {change.Unit} is no allowed value.");
    }

    /// <summary>Zero stands only where the shipped rule is zero; switches are yes or no; days and points are whole.</summary>
    private static bool IsAllowed(RuleChange change, PolicyBook book)
    {
        bool shippedZero = book.Rules.Any(r => r.Id == change.RuleId && r.Level == PolicyLevel.Default && r.Value == 0);
        return change.Unit switch
        {
            "switch" => change.Value is 0 or 1,
            "weekday" => change.Value is 1 or 2 or 3 or 4 or 5 or 6 or 7,
            _ => (change.Value > 0 || (change.Value == 0 && (shippedZero || change.Unit == "points")))
                && (Fractional.Contains(change.Unit) || decimal.IsInteger(change.Value)),
        };
    }

    /// <summary>Only problems the draft brings: a book that already has one may still be mended.</summary>
    private static Refusal? OfBook(PolicyDraft draft, PolicyBook book)
    {
        var known = PolicyCheck.Problems(book).ToHashSet(StringComparer.Ordinal);
        return PolicyCheck.Problems(book.With(draft.Rules(""))).FirstOrDefault(p => !known.Contains(p)) is { } problem
            ? NotAllowed(problem)
            : null;
    }

    private static Refusal NotAllowed(string sentence) => new(
        "policy-not-allowed", sentence, "Choose a value inside the limits; the earliest may not be above the latest.");

    private static bool IsTime(string unit) => unit is "days" or "hours";
}
