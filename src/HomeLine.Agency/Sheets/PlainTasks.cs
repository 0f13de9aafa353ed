using HomeLine.LineCare.Lines;
using HomeLine.LineCare.Orders;

namespace HomeLine.Agency.Sheets;

/// <summary>Care in the words a family uses.</summary>
internal static class PlainTasks
{
    /// <summary>The task in plain words; empty for what is no task of its own on a family's sheet.</summary>
    public static string? Of(CareItem item, CareOrder? order) => item switch
    {
        CareItem.Dressing => "Change the dressing",
        CareItem.Connector => "Change the cap",
        CareItem.Set => "Change the tubing",
        CareItem.PortNeedle => "Change the port needle and dressing",
        CareItem.LumenFlush => "Flush the part not in use",
        CareItem.PortFlush => "Flush the port",
        CareItem.SiteCheck => "Check the skin at the line",
        CareItem.Labs => "Draw blood for tests",
        CareItem.Recertification => "Go over the care plan",
        CareItem.OrderedService => order is null ? null : Of(order.Kind),
        CareItem.Securement or CareItem.OutsideLength or CareItem.CaregiverValidation or CareItem.NurseCheck or CareItem.RemovalSiteCheck => null,
        _ => throw new ArgumentOutOfRangeException(nameof(item), item, "Unknown item"),
    };

    public static string Of(LineKind kind) => kind switch
    {
        LineKind.Picc => "PICC line",
        LineKind.Midline => "midline",
        LineKind.Tunneled => "chest line",
        LineKind.Port => "port",
        LineKind.DialysisCatheter => "dialysis line",
        _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, "Unknown kind of line"),
    };

    private static string? Of(OrderKind kind) => kind switch
    {
        OrderKind.NurseDose => "Give the dose",
        OrderKind.LongInfusion => "Give the long infusion",
        OrderKind.Hydration => "Give the fluids",
        OrderKind.Teaching => "Lesson with the nurse",
        OrderKind.Removal => "Take the line out",
        OrderKind.Labs or OrderKind.DrugLevel => "Draw blood for tests",
        OrderKind.VisitFrequency or OrderKind.Interval => null,
        _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, "Unknown kind of order"),
    };
}
