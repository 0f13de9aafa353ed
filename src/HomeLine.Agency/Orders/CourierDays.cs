using HomeLine.Agency.Roster;
using HomeLine.LineCare.Orders;
using HomeLine.LineCare.Recording;
using NodaTime;

namespace HomeLine.Agency.Orders;

/// <summary>A draw for the courier is ordered on days on which none collects: asked before the order is kept.</summary>
internal static class CourierDays
{
    public const string Code = "no-courier-that-day";

    /// <summary>The question, or nothing when every ordered day has a collection, or the order names no days.</summary>
    public static RecordingReply? Ask(CareOrder order, AgencyMap map)
    {
        if (!order.NeedsCourier) return null;
        var collected = map.Drops.SelectMany(d => d.Courier).Select(c => c.Weekday).ToHashSet();
        IsoDayOfWeek[] without = [.. order.Weekdays.Concat(order.Dates.Select(d => d.DayOfWeek)).Distinct().Order().Where(d => !collected.Contains(d))];
        return without.Length == 0
            ? null
            : new RecordingReply(Code, ReplyWeight.Ask, order.Line, null, null, $"No courier collects on {string.Join(" and ", without)}: who takes the specimen to the laboratory?");
    }
}
