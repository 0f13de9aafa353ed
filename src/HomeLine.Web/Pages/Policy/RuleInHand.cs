using HomeLine.LineCare.Policy;

namespace HomeLine.Web.Pages.Policy;

/// <summary>A rule being drafted, as typed.</summary>
public sealed class RuleInHand(PolicyRule rule)
{
    public PolicyRule Rule { get; } = rule;

    /// <summary>Empty until a number is typed.</summary>
    public decimal? Value { get; set; } = rule.Value;

    public string Unit { get; set; } = rule.Unit;

    public string Source { get; set; } = "";

    /// <summary>Days and hours may take each other's place; every other unit is the rule's own.</summary>
    public bool MayChangeUnit => Rule.Unit is "days" or "hours";
}
