using HomeLine.LineCare.Policy;
using NodaTime;

namespace HomeLine.LineCare.Orders;

/// <summary>How an order was taken by word of mouth, and whether the prescriber has signed it.</summary>
/// <param name="Order">The order.</param>
/// <param name="TakenAt">When it was taken.</param>
/// <param name="TakenBy">The licensed person who took it, by name.</param>
/// <param name="ReadBack">It was read back and confirmed.</param>
/// <param name="SignedOn">Civil day the prescriber signed it; empty while it waits.</param>
public sealed record VerbalOrder(string Order, Instant TakenAt, string TakenBy, bool ReadBack, LocalDate? SignedOn = null)
{
    /// <summary>Last day for the signature, included.</summary>
    /// <param name="policy">The policy book.</param>
    /// <param name="zone">Zone of the patient's home.</param>
    public LocalDate SignatureDue(PolicyBook policy, DateTimeZone zone)
    {
        ArgumentNullException.ThrowIfNull(policy);
        var taken = TakenAt.InZone(zone).Date;
        return taken.PlusDays((int)policy.ValueOf(RuleIds.VerbalOrderSignature, taken));
    }
}

/// <summary>A spoken order that waits for its signature.</summary>
/// <param name="Order">The order as taken.</param>
/// <param name="AgeInDays">Civil days since it was taken.</param>
/// <param name="DueBy">Last day for the signature, included.</param>
/// <param name="Overdue">True after that day.</param>
public sealed record UnsignedOrder(VerbalOrder Order, int AgeInDays, LocalDate DueBy, bool Overdue)
{
    /// <summary>Those that wait, the oldest first.</summary>
    /// <param name="orders">Spoken orders, signed ones among them.</param>
    /// <param name="policy">The policy book.</param>
    /// <param name="zone">Zone the days are counted in.</param>
    /// <param name="today">Today there.</param>
    public static IReadOnlyList<UnsignedOrder> Waiting(IEnumerable<VerbalOrder> orders, PolicyBook policy, DateTimeZone zone, LocalDate today)
    {
        ArgumentNullException.ThrowIfNull(orders);
        return
        [
            .. orders.Where(order => order.SignedOn is null)
                .OrderBy(order => order.TakenAt)
                .Select(order => new UnsignedOrder(
                    order, Period.DaysBetween(order.TakenAt.InZone(zone).Date, today), order.SignatureDue(policy, zone), today > order.SignatureDue(policy, zone))),
        ];
    }
}
