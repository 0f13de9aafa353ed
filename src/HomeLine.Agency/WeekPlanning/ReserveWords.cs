using System.Collections.Immutable;
using System.Globalization;
using HomeLine.Planning.Reserve;

namespace HomeLine.Agency.WeekPlanning;

/// <summary>In words what a planned week keeps free for care nobody planned, and what that costs.</summary>
internal static class ReserveWords
{
    public const string Looking = "The week is planned. Now free time is looked for on days that have too little for care nobody planned.";

    /// <summary>Slots of each day, what could not be had, and the price; nothing where policy asks for no reserve.</summary>
    /// <param name="reserved">The plan with all days that were looked at.</param>
    /// <param name="days">The days of the week itself.</param>
    public static string Of(ReservedWeek reserved, ImmutableArray<DayReserve> days)
    {
        DayReserve[] asked = [.. days.Where(d => d.Asked > 0)];
        if (asked.Length == 0) return "";
        string free = $"Slots free for care nobody planned (in brackets, asked for): {string.Join("; ", asked.Select(d => $"{Text(d)} {d.Free} ({d.Asked})"))}.";
        string below = asked.All(d => d.IsKept) ? "" : $" Below the reserve: {string.Join(", ", asked.Where(d => !d.IsKept).Select(Text))}; no plan was found that frees more there and gives up no care.";
        return free + below + Price(reserved);
    }

    private static string Price(ReservedWeek reserved)
    {
        int gained = reserved.MissingWithout - reserved.Missing;
        if (gained == 0) return reserved.Missing == 0 ? " No work was added for it." : "";
        string slots = gained == 1 ? "1 slot" : $"{gained} slots";
        string added = reserved.WorkMinutes > 0 ? $"cost {reserved.WorkMinutes} min of work more (visits, driving, waiting, overtime)" : "took no more work";
        return $" With the week after, {slots} more than a plan without the reserve would keep {added}.";
    }

    private static string Text(DayReserve day) => day.Day.ToString("ddd d MMM", CultureInfo.InvariantCulture);
}
