using HomeLine.LineCare.Ledger;
using HomeLine.LineCare.Lines;
using HomeLine.LineCare.Orders;
using HomeLine.LineCare.Policy;
using HomeLine.LineCare.Windows;
using NodaTime;

namespace HomeLine.LineCare.Clocks;

/// <summary>A window that an order's own date makes. Times of day stay with the order.</summary>
internal static class OrderedWindow
{
    public static DueWindow On(Reckoning reckoning, CareItem item, CareOrder order, LocalDate day, string what) =>
        Frame.Days(
            reckoning,
            Why.Of(null, (order, day, what, reckoning.Days), static (_, f) =>
                Reason(f.order, null, null, f.Days.Short(f.day), $"{f.what} on {f.Days.Short(f.day)} by order {f.order.Id}.")),
            item, order.Line, day, day, order: order.Id, standing: WindowStanding.Ordered);

    public static WindowReason Reason(CareOrder order, LineEvent? anchor, LocalDate? anchorDate, string value, string sentence) => new(
        anchor?.Id, anchorDate, order.Id, value, PolicyLevel.Order,
        order.Practitioner.Length > 0 ? $"Order {order.Id}, {order.Practitioner}" : $"Order {order.Id}", sentence, []);
}
