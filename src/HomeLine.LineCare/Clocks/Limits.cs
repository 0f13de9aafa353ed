using HomeLine.LineCare.Ledger;
using HomeLine.LineCare.Lines;
using HomeLine.LineCare.Orders;
using HomeLine.LineCare.Policy;
using HomeLine.LineCare.Windows;
using NodaTime;

namespace HomeLine.LineCare.Clocks;

/// <summary>The end of a window and what set it.</summary>
internal sealed record Limit(
    Instant LateFrom, ClockBasis Basis, string RuleId, decimal Value, string Unit, PolicyLevel Level, string Source, string SetBy)
{
    public List<string>? Overrode { get; init; }

    public string ValueText => Says.Amount(Value, Unit);
}

/// <summary>What a limit is asked for: which rule, for which item on which line, running from when.</summary>
internal readonly record struct LimitQuestion(string RuleId, CareItem Item, LineId? Line, CareMoment Anchor);

/// <summary>
/// Which rule ends a window: order, then exception, then the agency's policy, then the default. A stricter order always wins; a looser one
/// only once it was confirmed. A policy made shorter bites on the day it takes effect, one made longer only after the next reset.
/// </summary>
internal sealed class Limits(Reckoning reckoning)
{
    public Limit For(LimitQuestion question)
    {
        var limit = FromPolicy(question);
        limit = WithException(limit, question);
        return WithOrders(limit, question);
    }

    /// <summary>Earliest useful moment by the floor rule in force today.</summary>
    public Instant Opens(string ruleId, CareMoment anchor)
    {
        var (value, unit) = Floor(ruleId);
        return unit == "hours"
            ? reckoning.LatestOf(anchor) + Duration.FromMinutes((double)(value * 60))
            : reckoning.StartOf(anchor.Date.PlusDays((int)value - FirstDay));
    }

    /// <summary>The floor in force today; of several exceptions the one that holds back longest.</summary>
    public (decimal Value, string Unit) Floor(string ruleId)
    {
        var rule = reckoning.Policy.InForce(ruleId, reckoning.Today)
            ?? throw new KeyNotFoundException($"No policy value '{ruleId}' is in force on {reckoning.Today}.");
        decimal? held = null;
        foreach (var exception in reckoning.Care.Exceptions)
            if (exception.RuleId == ruleId && exception.Through >= reckoning.Today && !(exception.Value <= held)) held = exception.Value;
        return (held ?? rule.Value, rule.Unit);
    }

    /// <summary>1 when the agency counts the day of change as day 1.</summary>
    private int FirstDay => reckoning.Policy.InForce(RuleIds.DayOfChangeIsDayOne, reckoning.Today)?.Value == 1 ? 1 : 0;

    private Limit FromPolicy(LimitQuestion question)
    {
        var versions = reckoning.Policy.VersionsOf(question.RuleId);
        var first = reckoning.Policy.InForce(question.RuleId, question.Anchor.Date) ?? versions.FirstOrDefault()
            ?? throw new KeyNotFoundException($"No policy value '{question.RuleId}' exists.");
        var limit = Of(first, EndBy(first, question.Anchor));
        foreach (var version in versions)
        {
            if (version.EffectiveFrom <= question.Anchor.Date) continue;
            var bites = reckoning.StartOf(version.EffectiveFrom);
            if (bites >= limit.LateFrom) break;
            var inForce = reckoning.Policy.InForce(question.RuleId, version.EffectiveFrom)!;
            if (inForce != version) continue;
            var end = Instant.Max(EndBy(version, question.Anchor), reckoning.EndOf(version.EffectiveFrom));
            limit = end < limit.LateFrom
                ? Of(version, end) with { Overrode = Noting(limit.Overrode, $"{limit.ValueText} before {Says.Day(version.EffectiveFrom)}") }
                : limit with { Overrode = Noting(limit.Overrode, $"{Says.Amount(version.Value, version.Unit)} counts from the next change on") };
        }

        return limit;
    }

    private Instant EndBy(PolicyRule rule, CareMoment anchor) => rule.Unit == "hours"
        ? reckoning.EarliestOf(anchor) + Duration.FromMinutes((double)(rule.Value * 60))
        : EndByDays((int)rule.Value, anchor);

    private Instant EndByDays(int days, CareMoment anchor) => reckoning.EndOf(anchor.Date.PlusDays(days - FirstDay));

    private static Limit Of(PolicyRule rule, Instant end) => new(
        end, rule.Unit == "hours" ? ClockBasis.Hour : ClockBasis.Date, rule.Id, rule.Value, rule.Unit, rule.Level, rule.Source,
        Says.SetBy(rule));

    private Limit WithException(Limit limit, LimitQuestion question)
    {
        CareException? strictest = null;
        foreach (var exception in reckoning.Care.Exceptions)
            if (exception.RuleId == question.RuleId && exception.Through >= reckoning.Today
                && (strictest is null || exception.Value < strictest.Value))
                strictest = exception;
        if (strictest is null) return limit;

        var end = limit.Unit == "hours"
            ? reckoning.EarliestOf(question.Anchor) + Duration.FromMinutes((double)(strictest.Value * 60))
            : EndByDays((int)strictest.Value, question.Anchor);
        var expires = reckoning.EndOf(strictest.Through);
        if (end > expires) end = Instant.Max(Instant.Min(limit.LateFrom, end), expires);
        return limit with
        {
            LateFrom = end,
            Value = strictest.Value,
            Level = PolicyLevel.PatientException,
            Source = $"Exception by {strictest.Owner}: {strictest.Reason}",
            SetBy = $"exception for this patient by {strictest.Owner}, to {Says.Day(strictest.Through)}",
            Overrode = Noting(limit.Overrode, $"{limit.ValueText}, {limit.SetBy}"),
        };
    }

    /// <summary>A confirmed longer order takes the place of policy, the shortest of several; then any order stricter than what stands wins.
    /// The order in which they were written plays no part.</summary>
    private Limit WithOrders(Limit policy, LimitQuestion question)
    {
        var limit = policy;
        foreach (var (order, days) in Intervals(question)) limit = WithLooser(limit, policy, order, days, question);
        foreach (var (order, days) in Intervals(question)) limit = WithStricter(limit, order, days, question);
        return limit;
    }

    private IEnumerable<(CareOrder Order, int Days)> Intervals(LimitQuestion question)
    {
        foreach (var order in reckoning.Care.Orders)
        {
            if (order.Kind != OrderKind.Interval || order.Item != question.Item || order.EveryDays is not { } days) continue;
            if (order.Line is { } line && line != question.Line) continue;
            if (!order.IsActiveOn(reckoning.Today)) continue;
            if (days is < 1 or > 365)
            {
                reckoning.Ask(question.Line, DecisionCodes.OrderIntervalOutOfRange, order.Id, order.StartsOn,
                    $"Order {order.Id} asks for every {days} days; an interval is 1 to 365 days. Policy applies until it is corrected.");
                continue;
            }

            yield return (order, days);
        }
    }

    private Instant EndByOrder(Limit limit, int days, CareMoment anchor) => limit.Basis == ClockBasis.Hour
        ? reckoning.EarliestOf(anchor) + Duration.FromDays(days)
        : EndByDays(days, anchor);

    /// <summary>An order looser than policy lends time only once it was confirmed, and none beyond its own last day.</summary>
    private Limit WithLooser(Limit limit, Limit policy, CareOrder order, int days, LimitQuestion question)
    {
        var end = EndByOrder(policy, days, question.Anchor);
        if (end <= policy.LateFrom) return limit;
        if (!order.Confirmed)
        {
            reckoning.Ask(question.Line, DecisionCodes.LooserOrder, $"{order.Id} {question.Item}", order.StartsOn,
                $"Order {order.Id} asks for every {days} days where {policy.ValueText} applies. The stricter stands until the order is confirmed.");
            return limit with { Overrode = Noting(limit.Overrode, $"order {order.Id}: every {days} days, looser and not confirmed") };
        }

        if (order.EndsOn is { } last) end = Instant.Min(end, reckoning.EndOf(last));
        var isFirst = limit.Level != PolicyLevel.Order;
        return end > policy.LateFrom && (isFirst || end < limit.LateFrom)
            ? ByOrder(limit, order, days, end)
            : limit with { Overrode = Noting(limit.Overrode, $"order {order.Id}: every {days} days") };
    }

    /// <summary>A stricter order needs no confirmation; one that starts mid-interval makes nothing late before its own first day is over.</summary>
    private Limit WithStricter(Limit limit, CareOrder order, int days, LimitQuestion question)
    {
        var end = EndByOrder(limit, days, question.Anchor);
        if (order.StartsOn > question.Anchor.Date) end = Instant.Max(end, reckoning.EndOf(order.StartsOn));
        return end < limit.LateFrom ? ByOrder(limit, order, days, end) : limit;
    }

    private static Limit ByOrder(Limit limit, CareOrder order, int days, Instant end) => limit with
    {
        LateFrom = end,
        RuleId = order.Id,
        Value = days,
        Unit = "days",
        Level = PolicyLevel.Order,
        Source = $"Order {order.Id}, {order.Practitioner}",
        SetBy = $"order {order.Id}",
        Overrode = Noting(limit.Overrode, $"{limit.ValueText}, {limit.SetBy}"),
    };

    private static List<string> Noting(List<string>? notes, string note) => notes is null ? [note] : [.. notes, note];
}
