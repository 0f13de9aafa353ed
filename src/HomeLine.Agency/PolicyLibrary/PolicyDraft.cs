using System.Collections.Immutable;
using HomeLine.LineCare.Policy;
using NodaTime;

namespace HomeLine.Agency.PolicyLibrary;

/// <summary>One rule as a draft would have it.</summary>
/// <param name="RuleId">The dotted id of an existing rule.</param>
/// <param name="Value">The new value in <paramref name="Unit"/>.</param>
/// <param name="Unit">The rule's own unit; days and hours may take each other's place.</param>
/// <param name="Source">Where it comes from, as the agency puts it.</param>
public sealed record RuleChange(string RuleId, decimal Value, string Unit, string Source);

/// <summary>A drafted policy version. It is never changed: a better draft is a new one.</summary>
public sealed record PolicyDraft
{
    /// <summary>1 for the agency's first draft; the version keeps the number of its draft.</summary>
    public required int Number { get; init; }
    public required LocalDate EffectiveFrom { get; init; }
    public required ImmutableArray<RuleChange> Changes { get; init; }

    /// <summary>Why.</summary>
    public required string Note { get; init; }

    /// <summary>The account that drafted it.</summary>
    public required string DraftedById { get; init; }
    public required string DraftedBy { get; init; }
    public required Instant DraftedAt { get; init; }

    /// <summary>The rules it would add to the agency's policy.</summary>
    public ImmutableArray<PolicyRule> Rules(string approver) =>
    [
        .. Changes.Select(c => new PolicyRule(
            c.RuleId, c.Value, c.Unit, EffectiveFrom, PolicyLevel.Agency, RuleStanding.OwnDefault,
            $"Agency policy version {Number}, {(approver.Length > 0 ? $"approved by {approver}" : "not approved yet")}: {c.Source}", Note)),
    ];
}

/// <summary>What became of a draft.</summary>
public enum PolicyFate
{
    /// <summary>Its rules are the agency's policy from their day on.</summary>
    Approved,

    /// <summary>It was taken back and counts for nothing.</summary>
    Withdrawn,
}

/// <summary>The end of a draft, written once.</summary>
/// <param name="Draft">Number of the draft; it has one end.</param>
/// <param name="Fate">What became of it.</param>
/// <param name="ById">The account.</param>
/// <param name="By">The person, by name.</param>
/// <param name="At">When.</param>
/// <param name="Reason">Why it was taken back; empty for an approval.</param>
public sealed record PolicyVerdict(int Draft, PolicyFate Fate, string ById, string By, Instant At, string Reason);
