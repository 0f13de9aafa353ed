using System.Collections.Immutable;
using HomeLine.LineCare.Lines;
using HomeLine.LineCare.Policy;
using NodaTime;

namespace HomeLine.LineCare.Calendar;

/// <summary>
/// Past care and the windows ahead. Looking ahead assumes that every item is done on its last acceptable day, one after the other, by whoever
/// owns it on that day: something to look at, never a promise. Every window comes from the same clocks as those of today.
/// </summary>
public static class LineCalendar
{
    /// <summary>The most weeks one can look ahead; beyond that orders and policy will have changed.</summary>
    public const int MostWeeks = 26;

    /// <summary>Draws up the calendar. Pure: same inputs, same answer.</summary>
    /// <param name="care">The patient.</param>
    /// <param name="policy">The policy book with all its versions.</param>
    /// <param name="now">The instant to answer for.</param>
    /// <param name="weeks">Weeks to look ahead from today; 1 to <see cref="MostWeeks"/>.</param>
    public static CareCalendar For(PatientCare care, PolicyBook policy, Instant now, int weeks = 8)
    {
        ArgumentNullException.ThrowIfNull(care);
        ArgumentNullException.ThrowIfNull(policy);
        ArgumentOutOfRangeException.ThrowIfLessThan(weeks, 1);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(weeks, MostWeeks);
        var through = now.InZone(care.Zone).Date.PlusDays(7 * weeks);
        var events = LookingBack.Over(care, now);
        var ahead = new LookingAhead(care, policy, now, through);
        ahead.Walk();
        var past = new PastWindows(care, policy).Of(events);
        var keys = past.Select(pair => pair.Key).Concat(ahead.Windows.Select(pair => pair.Key)).Distinct();
        var order = care.Lines.Select((line, index) => (line.Id, index)).ToDictionary(pair => pair.Id, pair => pair.index);
        return new CareCalendar(care.Patient, now, through, ahead.OnHold,
        [
            .. keys
                .OrderBy(key => key.Line is { } line ? order.GetValueOrDefault(line, int.MaxValue) : int.MaxValue)
                .ThenBy(key => key.Item).ThenBy(key => key.Lumen, StringComparer.Ordinal).ThenBy(key => key.Order, StringComparer.Ordinal)
                .Select(key => new ItemCalendar(
                    key.Item, key.Line, key.Lumen, key.Order,
                    [.. past.Where(pair => pair.Key == key).Select(pair => pair.Care)],
                    [.. ahead.Windows.Where(pair => pair.Key == key).Select(pair => pair.Window)])),
        ], events);
    }
}

/// <summary>Which clock something belongs to.</summary>
internal readonly record struct ClockKey(CareItem Item, LineId? Line, string? Lumen, string? Order);
