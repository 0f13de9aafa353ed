using System.Collections.Immutable;
using HomeLine.LineCare.Policy;
using NodaTime;

namespace HomeLine.LineCare.Orders;

/// <summary>How the visits of one week stand against the order.</summary>
public enum FrequencyStanding
{
    /// <summary>Fewer visits than ordered: the prescriber is told.</summary>
    Under,

    /// <summary>As ordered.</summary>
    Met,

    /// <summary>More than ordered: each visit beyond needs an as-needed visit of the order, or a new order.</summary>
    Exceeded,
}

/// <summary>One week of the frequency ledger.</summary>
/// <param name="FirstDay">First day of the week.</param>
/// <param name="Visits">Visits made or planned in it.</param>
/// <param name="Ordered">Visits the order allows.</param>
public sealed record FrequencyWeek(LocalDate FirstDay, int Visits, int Ordered)
{
    /// <summary>Visits beyond the order; 0 when none.</summary>
    public int Beyond => Math.Max(0, Visits - Ordered);

    /// <summary>How the week stands.</summary>
    public FrequencyStanding Standing => Visits < Ordered ? FrequencyStanding.Under
        : Visits == Ordered ? FrequencyStanding.Met : FrequencyStanding.Exceeded;
}

/// <summary>
/// The order's "so many visits a week" counts calendar weeks; it knows nothing of intervals, and the clocks know nothing of it. Both are shown side by side.
/// When an order gives a range, its upper limit is the frequency (42 CFR 409.43(b)).
/// </summary>
public static class VisitFrequency
{
    /// <summary>Every week that holds a visit, earliest first. Weeks run from the policy's week start.</summary>
    /// <param name="order">An order with visits a week; without, no week is judged.</param>
    /// <param name="visits">Civil days of visits, in any order, two on one day counting twice.</param>
    /// <param name="policy">The policy book; <c>frequency.weekstart</c> is an ISO weekday, 7 for Sunday (common practice, no source).</param>
    public static ImmutableArray<FrequencyWeek> Weeks(CareOrder order, IEnumerable<LocalDate> visits, PolicyBook policy)
    {
        ArgumentNullException.ThrowIfNull(order);
        ArgumentNullException.ThrowIfNull(visits);
        ArgumentNullException.ThrowIfNull(policy);
        if (order.VisitsPerWeek is not { } ordered) return [];
        var counts = new SortedDictionary<LocalDate, int>();
        foreach (var day in visits)
        {
            var first = FirstDayOfWeek(day, policy);
            counts[first] = counts.GetValueOrDefault(first) + 1;
        }

        return [.. counts.Select(week => new FrequencyWeek(week.Key, week.Value, ordered))];
    }

    /// <summary>As-needed visits left; empty when the order has none. A safety visit is never blocked by zero: an order request goes with it.</summary>
    /// <param name="order">The order.</param>
    public static int? AsNeededLeft(CareOrder order)
    {
        ArgumentNullException.ThrowIfNull(order);
        return order.AsNeededVisits is { } visits ? Math.Max(0, visits - order.AsNeededUsed) : null;
    }

    /// <summary>
    /// First day of the week that holds <paramref name="day"/>. A change of the week's definition within a week counts from the first full week after it:
    /// the week under way ends as it began, and days between its end and the first new week are a short week of their own.
    /// </summary>
    /// <param name="day">Any civil day.</param>
    /// <param name="policy">The policy book.</param>
    public static LocalDate FirstDayOfWeek(LocalDate day, PolicyBook policy)
    {
        ArgumentNullException.ThrowIfNull(policy);
        var first = OnOrBefore(day, StartOn(day));
        var before = StartOn(first);
        return before == first.DayOfWeek ? first : OnOrBefore(day, before);

        IsoDayOfWeek StartOn(LocalDate on) => (IsoDayOfWeek)(int)policy.ValueOf(RuleIds.WeekStart, on);
    }

    /// <summary>Last day of the week that holds <paramref name="day"/>; six days after the first, or fewer when the definition of the week changes.</summary>
    /// <param name="day">Any civil day.</param>
    /// <param name="policy">The policy book.</param>
    public static LocalDate LastDayOfWeek(LocalDate day, PolicyBook policy)
    {
        var first = FirstDayOfWeek(day, policy);
        var last = day;
        while (FirstDayOfWeek(last.PlusDays(1), policy) == first) last = last.PlusDays(1);
        return last;
    }

    private static LocalDate OnOrBefore(LocalDate day, IsoDayOfWeek start) => day.DayOfWeek == start ? day : day.Previous(start);
}
