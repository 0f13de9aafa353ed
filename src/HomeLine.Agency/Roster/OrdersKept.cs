using System.Collections.Immutable;
using HomeLine.LineCare.Orders;

namespace HomeLine.Agency.Roster;

/// <summary>
/// What the agency itself has written on an order is not taken back by a file that does not know it: as-needed visits that were used, and a
/// licensed person's confirmation, as long as the order still says what was confirmed.
/// </summary>
internal static class OrdersKept
{
    public static ImmutableArray<CareOrder> Of(ImmutableArray<CareOrder> stored, ImmutableArray<CareOrder> incoming)
    {
        var known = stored.DistinctBy(o => o.Id).ToDictionary(o => o.Id, StringComparer.Ordinal);
        return [.. incoming.Select(o => known.TryGetValue(o.Id, out CareOrder? before) ? Keep(before, o) : o)];
    }

    private static CareOrder Keep(CareOrder before, CareOrder now) => now with
    {
        AsNeededUsed = Math.Max(before.AsNeededUsed, now.AsNeededUsed),
        Confirmed = now.Confirmed || (before.Confirmed && before.EveryDays == now.EveryDays && before.Item == now.Item && before.Line == now.Line),
    };
}
