using HomeLine.LineCare.Ledger;
using HomeLine.LineCare.Lines;
using HomeLine.LineCare.Orders;
using HomeLine.LineCare.Policy;
using NodaTime;

namespace HomeLine.LineCare.Clocks;

/// <summary>What a limit is asked for: which rule, for which item on which line, running from when.</summary>
internal readonly record struct LimitQuestion(ClockRule Rule, CareItem Item, LineId? Line, CareMoment Anchor);

/// <summary>
/// Which rule ends a window: order, then exception, then the agency's policy, then the default. A stricter order always wins; a looser one
/// only once it was confirmed. A policy made shorter bites on the day it takes effect, one made longer only after the next reset.
/// </summary>
internal sealed class Limits(Reckoning reckoning)
{
    public Limit For(in LimitQuestion question)
    {
        var limit = FromPolicy(question);
        if (!reckoning.Care.Exceptions.IsEmpty) limit = WithException(limit, question);
        return reckoning.Care.Orders.IsEmpty ? limit : WithOrders(limit, question);
    }

    /// <summary>Earliest useful moment by the floor rule in force today.</summary>
    public Instant Opens(ClockRule rule, CareMoment anchor)
    {
        if (reckoning.Care.Exceptions.IsEmpty && reckoning.Policy.Clock(rule).FloorOn(reckoning.Today) is { } floor)
            return floor.IsHours
                ? reckoning.LatestOf(anchor) + floor.Elapsed
                : reckoning.StartOf(anchor.Date, floor.Days - reckoning.FirstDay);
        var (value, unit) = Floor(rule);
        return unit == "hours"
            ? reckoning.LatestOf(anchor) + CompiledRule.HoursOf(value)
            : reckoning.StartOf(anchor.Date, (int)value - reckoning.FirstDay);
    }

    /// <summary>The floor in force today; of several exceptions the one that holds back longest.</summary>
    public (decimal Value, string Unit) Floor(ClockRule rule)
    {
        var floor = reckoning.Policy.Clock(rule).FloorOn(reckoning.Today)
            ?? throw new KeyNotFoundException($"No policy value '{rule.Floor}' is in force on {reckoning.Today}.");
        decimal? held = null;
        foreach (var exception in reckoning.Care.Exceptions)
            if (exception.RuleId == rule.Floor && exception.Through >= reckoning.Today && !(exception.Value <= held)) held = exception.Value;
        return (held ?? floor.Rule.Value, floor.Rule.Unit);
    }

    private Limit FromPolicy(in LimitQuestion question)
    {
        var clock = reckoning.Policy.Clock(question.Rule);
        var anchor = question.Anchor;
        var first = clock.CeilingOn(anchor.Date) ?? clock.Ceilings.FirstOrDefault()
            ?? throw new KeyNotFoundException($"No policy value '{question.Rule.Ceiling}' exists.");
        var limit = Limit.By(first, EndBy(first, anchor));
        if (clock.Ceilings.Length == 1) return limit;
        foreach (var version in clock.Ceilings)
        {
            if (version.EffectiveFrom <= anchor.Date) continue;
            if (reckoning.StartOf(version.EffectiveFrom) >= limit.LateFrom) break;
            if (clock.CeilingOn(version.EffectiveFrom) != version) continue;
            var end = Instant.Max(EndBy(version, anchor), reckoning.EndOf(version.EffectiveFrom));
            limit = end < limit.LateFrom ? limit.CutBy(version, end) : limit.Beside(version);
        }

        return limit;
    }

    private Instant EndBy(CompiledRule rule, CareMoment anchor) =>
        rule.IsHours ? reckoning.EarliestOf(anchor) + rule.Elapsed : EndByDays(rule.Days, anchor);

    private Instant EndByDays(int days, CareMoment anchor) => reckoning.EndOf(anchor.Date, days - reckoning.FirstDay);

    private Limit WithException(in Limit limit, in LimitQuestion question)
    {
        CareException? strictest = null;
        foreach (var exception in reckoning.Care.Exceptions)
            if (exception.RuleId == question.Rule.Ceiling && exception.Through >= reckoning.Today
                && (strictest is null || exception.Value < strictest.Value))
                strictest = exception;
        if (strictest is null) return limit;

        var end = limit.Unit == "hours"
            ? reckoning.EarliestOf(question.Anchor) + CompiledRule.HoursOf(strictest.Value)
            : EndByDays((int)strictest.Value, question.Anchor);
        var expires = reckoning.EndOf(strictest.Through);
        if (end > expires) end = Instant.Max(Instant.Min(limit.LateFrom, end), expires);
        return limit.By(strictest, end);
    }

    /// <summary>A confirmed longer order takes the place of policy, the shortest of several; then any order stricter than what stands wins.
    /// The order in which they were written plays no part.</summary>
    private Limit WithOrders(in Limit policy, in LimitQuestion question)
    {
        var limit = policy;
        foreach (var order in reckoning.Care.Orders)
            if (Days(order, question) is { } days) limit = WithLooser(limit, policy, order, days, question);
        foreach (var order in reckoning.Care.Orders)
            if (Days(order, question) is { } days) limit = WithStricter(limit, order, days, question);
        return limit;
    }

    /// <summary>The days an order asks for, if it speaks of this item on this line today. An interval no order can mean is asked about and left out.</summary>
    private int? Days(CareOrder order, in LimitQuestion question)
    {
        if (order.Kind != OrderKind.Interval || order.Item != question.Item || order.EveryDays is not { } days) return null;
        if (order.Line is { } line && line != question.Line) return null;
        if (!order.IsActiveOn(reckoning.Today)) return null;
        if (days is >= 1 and <= 365) return days;
        reckoning.Ask(question.Line, DecisionCodes.OrderIntervalOutOfRange, order.Id, order.StartsOn,
            $"Order {order.Id} asks for every {days} days; an interval is 1 to 365 days. Policy applies until it is corrected.");
        return null;
    }

    private Instant EndByOrder(in Limit limit, int days, CareMoment anchor) => limit.Basis == Windows.ClockBasis.Hour
        ? reckoning.EarliestOf(anchor) + Duration.FromDays(days)
        : EndByDays(days, anchor);

    /// <summary>An order looser than policy lends time only once it was confirmed, and none beyond its own last day.</summary>
    private Limit WithLooser(in Limit limit, in Limit policy, CareOrder order, int days, in LimitQuestion question)
    {
        var end = EndByOrder(policy, days, question.Anchor);
        if (end <= policy.LateFrom) return limit;
        if (!order.Confirmed)
        {
            reckoning.Ask(question.Line, DecisionCodes.LooserOrder, $"{order.Id} {question.Item}", order.StartsOn,
                $"Order {order.Id} asks for every {days} days where {policy.ValueText} applies. The stricter stands until the order is confirmed.");
            return limit.Beside(order, days, ", looser and not confirmed");
        }

        if (order.EndsOn is { } last) end = Instant.Min(end, reckoning.EndOf(last));
        return end > policy.LateFrom && (limit.Order is null || end < limit.LateFrom)
            ? limit.By(order, days, end)
            : limit.Beside(order, days, "");
    }

    /// <summary>A stricter order needs no confirmation; one that starts mid-interval makes nothing late before its own first day is over.</summary>
    private Limit WithStricter(in Limit limit, CareOrder order, int days, in LimitQuestion question)
    {
        var end = EndByOrder(limit, days, question.Anchor);
        if (order.StartsOn > question.Anchor.Date) end = Instant.Max(end, reckoning.EndOf(order.StartsOn));
        return end < limit.LateFrom ? limit.By(order, days, end) : limit;
    }
}
