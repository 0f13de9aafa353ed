using HomeLine.LineCare.Policy;
using NodaTime;

namespace HomeLine.LineCare.Orders;

/// <summary>An order that ends soon, or has ended while its care goes on.</summary>
/// <param name="Order">The order.</param>
/// <param name="DaysLeft">Civil days from today to its last day; 0 on the last day, negative once it has ended.</param>
/// <param name="Notice">The notice it stands under: the shortest number of days of policy that covers <paramref name="DaysLeft"/>.</param>
public sealed record EndingOrder(CareOrder Order, int DaysLeft, int Notice);

/// <summary>Orders on their way out, so that a renewal is asked for in time and nothing is planned past the end.</summary>
public static class EndingOrders
{
    /// <summary>Orders that end within the longest notice of policy, the soonest first. An order renewed by another one of its kind that runs on is left out.</summary>
    /// <param name="orders">Orders of one patient or of many.</param>
    /// <param name="today">Today.</param>
    /// <param name="policy">The policy book; the notices are <c>order.notice.first</c> to <c>order.notice.last</c>, in days.</param>
    public static IReadOnlyList<EndingOrder> List(IEnumerable<CareOrder> orders, LocalDate today, PolicyBook policy)
    {
        ArgumentNullException.ThrowIfNull(orders);
        ArgumentNullException.ThrowIfNull(policy);
        int[] notices = [.. RuleIds.OrderNotices.Select(id => (int)policy.ValueOf(id, today)).Order()];
        var all = orders.ToList();
        return
        [
            .. all.Where(order => order.EndsOn is { } last && order.StartsOn <= today && last >= today && !IsRenewed(order, all))
                .Select(order => (Order: order, Left: Period.DaysBetween(today, order.EndsOn!.Value)))
                .Where(pair => pair.Left <= notices[^1])
                .OrderBy(pair => pair.Left).ThenBy(pair => pair.Order.Id, StringComparer.Ordinal)
                .Select(pair => new EndingOrder(pair.Order, pair.Left, notices.First(notice => pair.Left <= notice))),
        ];
    }

    /// <summary>Why something cannot be planned on a day under an order; empty when it can.</summary>
    /// <param name="order">The order.</param>
    /// <param name="on">The day it would be planned on.</param>
    public static string? WhyNotOn(CareOrder order, LocalDate on)
    {
        ArgumentNullException.ThrowIfNull(order);
        return order.EndsOn is { } last && on > last ? OrderCodes.PastTheEnd
            : on < order.StartsOn ? OrderCodes.NoOrder
            : null;
    }

    private static bool IsRenewed(CareOrder order, List<CareOrder> all) => all.Any(other =>
        other.Id != order.Id && other.Patient == order.Patient && other.Kind == order.Kind && other.Line == order.Line && other.Item == order.Item
        && other.StartsOn <= order.EndsOn!.Value.PlusDays(1) && (other.EndsOn is not { } ends || ends > order.EndsOn));
}
