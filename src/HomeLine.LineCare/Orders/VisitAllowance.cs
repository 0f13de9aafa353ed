using HomeLine.LineCare.Policy;
using NodaTime;

namespace HomeLine.LineCare.Orders;

/// <summary>Whether one more visit fits the order.</summary>
/// <param name="Allowed">The visit may be made.</param>
/// <param name="UsesAsNeeded">It would use one of the as-needed visits.</param>
/// <param name="RequestOrder">An order request has to go with it, or has to be answered before it.</param>
/// <param name="Code">Why, by code; empty when it is simply within the order.</param>
/// <param name="Sentence">Why, in one plain sentence.</param>
public sealed record VisitAllowance(bool Allowed, bool UsesAsNeeded, bool RequestOrder, string Code, string Sentence)
{
    /// <summary>One more visit on a day. A visit for safety (a broken seal, a locked line, a red flag that a clinician answered with a visit)
    /// is never blocked by a missing order: it goes ahead and an order request goes with it. A routine visit waits for the order.</summary>
    /// <param name="order">The order with visits a week; empty when there is none.</param>
    /// <param name="others">Civil days of the other visits made or planned.</param>
    /// <param name="on">The day of the visit.</param>
    /// <param name="forSafety">Whether it is made for safety.</param>
    /// <param name="policy">The policy book.</param>
    public static VisitAllowance For(CareOrder? order, IEnumerable<LocalDate> others, LocalDate on, bool forSafety, PolicyBook policy)
    {
        ArgumentNullException.ThrowIfNull(others);
        ArgumentNullException.ThrowIfNull(policy);
        if (order is null || !order.IsActiveOn(on))
            return Beyond(forSafety, OrderCodes.NoOrder, "No active order covers a visit on this day.");
        if (order.VisitsPerWeek is not { } ordered) return Within("The order names no number of visits.");
        var week = VisitFrequency.FirstDayOfWeek(on, policy);
        var inWeek = others.Count(day => VisitFrequency.FirstDayOfWeek(day, policy) == week);
        if (inWeek < ordered) return Within($"Visit {inWeek + 1} of {ordered} this week.");
        return VisitFrequency.AsNeededLeft(order) is > 0 and var left
            ? new VisitAllowance(true, true, false, OrderCodes.FrequencyUsed, $"The {ordered} ordered visits of this week are used; this one is as needed, {left} left.")
            : Beyond(forSafety, order.AsNeededVisits is null ? OrderCodes.FrequencyUsed : OrderCodes.AsNeededUsedUp,
                "The ordered visits of this week are used and no as-needed visit is left.");
    }

    private static VisitAllowance Within(string sentence) => new(true, false, false, "", sentence);

    private static VisitAllowance Beyond(bool forSafety, string code, string why) => new(
        forSafety, false, true, code,
        forSafety ? $"{why} The visit is for safety and goes ahead; an order request goes with it." : $"{why} Request an order first.");
}
