using System.Collections.Immutable;
using HomeLine.LineCare.Policy;
using NodaTime;

namespace HomeLine.Agency.PolicyLibrary;

/// <summary>A version of the agency's policy, or a draft of one.</summary>
/// <param name="Draft">As it was drafted.</param>
/// <param name="Verdict">What became of it; empty while it waits.</param>
public sealed record PolicyVersion(PolicyDraft Draft, PolicyVerdict? Verdict)
{
    public int Number => Draft.Number;

    public bool IsApproved => Verdict is { Fate: PolicyFate.Approved };

    public bool IsWaiting => Verdict is null;

    /// <summary>Whether it is in force on a day.</summary>
    public bool IsInForceOn(LocalDate day) => IsApproved && Draft.EffectiveFrom <= day;
}

/// <summary>A rule with its value in force and who set it.</summary>
/// <param name="Rule">The version in force today.</param>
/// <param name="Next">The version that will take its place, when one is approved.</param>
/// <param name="SetBy">Who set it: the program, the agency as it was opened, or an approver.</param>
public sealed record RuleOnShelf(PolicyRule Rule, PolicyRule? Next, string SetBy);

/// <summary>The whole policy library: rules in force, versions and drafts, and what differs between any two.</summary>
/// <param name="Book">Every rule that counts: shipped, brought along, approved.</param>
/// <param name="Versions">Versions and drafts by number.</param>
/// <param name="Today">Today at the branch.</param>
public sealed record PolicyShelf(PolicyBook Book, ImmutableArray<PolicyVersion> Versions, LocalDate Today)
{
    /// <summary>Version 0 stands for the shipped rules with those the agency brought along when it was opened.</summary>
    public const int AsOpened = 0;

    /// <summary>Every rule, in the order the program ships them.</summary>
    public ImmutableArray<RuleOnShelf> Rules =>
    [
        .. Book.Rules.Select(r => r.Id).Distinct(StringComparer.Ordinal)
            .Select(id => (InForce: Book.InForce(id, Today), Last: Book.InForce(id, LocalDate.MaxIsoValue)))
            .Where(x => x.InForce is not null)
            .Select(x => new RuleOnShelf(x.InForce!, x.Last == x.InForce ? null : x.Last, SetBy(x.InForce!))),
    ];

    /// <summary>The policy as of a version: everything up to it that was approved. A waiting draft is read as if it were approved.</summary>
    public PolicyBook AsOf(int version) => new()
    {
        Rules =
        [
            .. Book.Rules.Where(r => VersionOf(r) is not { } of || of.Number <= version),
            .. Versions.Where(v => v.IsWaiting && v.Number == version).SelectMany(v => v.Draft.Rules("")),
        ],
    };

    /// <summary>Rule by rule, what differs between two versions.</summary>
    public ImmutableArray<RuleDifference> Difference(int from, int to) => PolicyDifference.Between(AsOf(from), AsOf(to));

    private PolicyVersion? VersionOf(PolicyRule rule) => rule.Level == PolicyLevel.Default
        ? null
        : Versions.FirstOrDefault(v => v.IsApproved && v.Draft.EffectiveFrom == rule.EffectiveFrom && v.Draft.Changes.Any(c => c.RuleId == rule.Id));

    private string SetBy(PolicyRule rule) => (rule.Level, VersionOf(rule)) switch
    {
        (PolicyLevel.Default, _) => "shipped with the program",
        (_, { } version) => $"version {version.Number}, approved by {version.Verdict!.By}",
        _ => "brought along when the agency was opened",
    };
}
