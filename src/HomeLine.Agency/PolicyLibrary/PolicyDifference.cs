using System.Collections.Immutable;
using System.Globalization;
using HomeLine.LineCare.Policy;
using NodaTime;

namespace HomeLine.Agency.PolicyLibrary;

/// <summary>One rule that two versions hold differently.</summary>
/// <param name="RuleId">The rule.</param>
/// <param name="Before">Its value in the one, with the unit.</param>
/// <param name="After">Its value in the other.</param>
/// <param name="From">The day the other takes effect.</param>
/// <param name="Source">Where the other comes from.</param>
public sealed record RuleDifference(string RuleId, string Before, string After, LocalDate From, string Source)
{
    public string InWords => $"{RuleId}: {Before} becomes {After} from {From.ToString("d MMM uuuu", CultureInfo.InvariantCulture)}. {Source}";
}

/// <summary>What differs between two policy books once every version in them has taken effect. Pure.</summary>
public static class PolicyDifference
{
    public static ImmutableArray<RuleDifference> Between(PolicyBook before, PolicyBook after)
    {
        LocalDate settled = before.Rules.Concat(after.Rules).Max(r => r.EffectiveFrom);
        return
        [
            .. after.Rules.Concat(before.Rules).Select(r => r.Id).Distinct(StringComparer.Ordinal)
                .Select(id => (Id: id, Old: before.InForce(id, settled), New: after.InForce(id, settled)))
                .Where(x => x.New is not null && (x.Old?.Value != x.New.Value || x.Old.Unit != x.New.Unit || x.Old.Source != x.New.Source))
                .OrderBy(x => x.Id, StringComparer.Ordinal)
                .Select(x => new RuleDifference(x.Id, x.Old is null ? "nothing" : Amount(x.Old), Amount(x.New!), x.New!.EffectiveFrom, x.New.Source)),
        ];
    }

    /// <summary>A value with its unit, as the page prints it.</summary>
    public static string Amount(PolicyRule rule) => Amount(rule.Value, rule.Unit);

    public static string Amount(decimal value, string unit) => unit switch
    {
        "switch" => value == 1 ? "yes" : "no",
        "weekday" => ((IsoDayOfWeek)(int)value).ToString(),
        _ => string.Create(CultureInfo.InvariantCulture, $"{value:0.##} {(value == 1 && unit.EndsWith('s') ? unit[..^1] : unit)}"),
    };
}
