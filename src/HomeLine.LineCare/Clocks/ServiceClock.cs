using HomeLine.LineCare.Lines;
using HomeLine.LineCare.Orders;
using NodaTime;

namespace HomeLine.LineCare.Clocks;

/// <summary>Ordered services: doses by the nurse, long infusions, hydration, lessons, removal. Each falls on the order's own dates.</summary>
internal static class ServiceClock
{
    public static void Add(Reckoning reckoning, CareOrder order, LocalDate? lastDone)
    {
        foreach (var day in Occurrences.Open(order, lastDone, reckoning.Today, reckoning.Horizon))
            reckoning.Windows.Add(OrderedWindow.On(reckoning, CareItem.OrderedService, order, day, What(order)));
        if (order.Kind == OrderKind.NurseDose && order.EveryDays == 1 && lastDone is { } done && done < reckoning.Today.PlusDays(-1))
            reckoning.Ask(order.Line, DecisionCodes.DoseNotRecorded, $"{order.Id} {Says.Iso(done)}", done.PlusDays(1),
                $"No dose under order {order.Id} is recorded after {Says.Short(done)}: given and not written down, or missed. The prescriber decides about a missed dose.");
    }

    private static string What(CareOrder order) => order.Text.Length > 0 ? order.Text : order.Kind switch
    {
        OrderKind.NurseDose => "Dose given by the nurse",
        OrderKind.LongInfusion => "Long infusion",
        OrderKind.Hydration => "Hydration",
        OrderKind.Teaching => "Lesson",
        OrderKind.Removal => "Line removal",
        _ => "Ordered service",
    };
}
