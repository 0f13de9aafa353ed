using HomeLine.LineCare.Orders;
using NodaTime;

namespace HomeLine.LineCare.Clocks;

/// <summary>The days an order asks for and nobody has served yet: those ahead up to the horizon, and the latest one missed.</summary>
internal static class Occurrences
{
    /// <summary>Days after the last one served, inside the order's own validity. Of several missed days only the latest is
    /// offered: missed care is not given twice. A missed day of a daily order is not offered at all.</summary>
    public static List<LocalDate> Open(CareOrder order, LocalDate? lastDone, LocalDate today, LocalDate horizon)
    {
        var open = new List<LocalDate>();
        LocalDate? missed = null;
        foreach (var day in Days(order, lastDone, today, horizon))
        {
            if (lastDone is { } done && day <= done) continue;
            if (day < today) missed = missed is { } known && known > day ? known : day;
            else open.Add(day);
        }

        if (missed is { } late && order.EveryDays != 1) open.Insert(0, late);
        return open;
    }

    private static IEnumerable<LocalDate> Days(CareOrder order, LocalDate? lastDone, LocalDate today, LocalDate horizon)
    {
        var last = order.EndsOn is { } ends ? LocalDate.Min(ends, horizon) : horizon;
        if (!order.Dates.IsDefaultOrEmpty) return order.Dates.Where(day => day >= order.StartsOn && day <= last).Order();
        if (!order.Weekdays.IsDefaultOrEmpty) return ByWeekday(order, today, last);
        return order.EveryDays is >= 1 and <= 365 ? ByInterval(order, order.EveryDays.Value, lastDone, today, last) : [];
    }

    /// <summary>One week back is enough to find the latest missed weekday.</summary>
    private static IEnumerable<LocalDate> ByWeekday(CareOrder order, LocalDate today, LocalDate last)
    {
        for (var day = LocalDate.Max(order.StartsOn, today.PlusDays(-7)); day <= last; day = day.PlusDays(1))
            if (order.Weekdays.Contains(day.DayOfWeek)) yield return day;
    }

    /// <summary>Counted from the last one served, else from the first day of the order; a daily order starts again today.</summary>
    private static IEnumerable<LocalDate> ByInterval(CareOrder order, int every, LocalDate? lastDone, LocalDate today, LocalDate last)
    {
        var day = lastDone is { } done && done >= order.StartsOn ? done.PlusDays(every) : order.StartsOn;
        if (every == 1 && day < today) day = today;
        for (; day <= last; day = day.PlusDays(every)) yield return day;
    }
}
