using System.Collections.Immutable;
using HomeLine.LineCare.Lines;
using HomeLine.LineCare.Orders;
using HomeLine.LineCare.Policy;
using HomeLine.LineCare.Windows;
using NodaTime;

namespace HomeLine.LineCare.Clocks;

/// <summary>Routine care whose last day falls on or after the day before an ordered removal is not done: the line comes out anyway.
/// A broken seal is not routine.</summary>
internal static class RemovalWaiver
{
    public static ImmutableArray<WaivedCare> Apply(Reckoning reckoning)
    {
        ImmutableArray<WaivedCare> waived = [];
        foreach (var order in reckoning.Care.Orders)
        {
            if (order.Kind != OrderKind.Removal || !order.IsActiveOn(reckoning.Today) || NextDate(order, reckoning.Today) is not { } removal) continue;
            var from = removal.PlusDays(-(int)reckoning.Value(RuleIds.RemovalWaiver));
            for (var i = reckoning.Windows.Count - 1; i >= 0; i--)
            {
                var window = reckoning.Windows[i];
                if (!IsRoutineOf(window, order.Line) || window.LastDay < from) continue;
                reckoning.Windows.RemoveAt(i);
                waived = waived.Add(new WaivedCare(window, $"The line comes out {Says.Short(removal)} by order {order.Id}."));
            }
        }

        return waived;
    }

    private static LocalDate? NextDate(CareOrder order, LocalDate today)
    {
        foreach (var day in order.Dates.Order())
            if (day >= today) return day;
        return null;
    }

    private static bool IsRoutineOf(DueWindow window, LineId? line) =>
        window.Standing != WindowStanding.CutShort
        && window.Line is { } on && (line is null || on == line)
        && window.Item is CareItem.Dressing or CareItem.Securement or CareItem.OutsideLength or CareItem.Connector
            or CareItem.LumenFlush or CareItem.PortFlush or CareItem.PortNeedle or CareItem.SiteCheck;
}
