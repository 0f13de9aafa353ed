using System.Collections.Immutable;
using HomeLine.Agency.WeekPlanning;
using HomeLine.LineCare;
using HomeLine.LineCare.Lines;
using HomeLine.LineCare.Windows;
using NodaTime;
using NodaTime.Text;

namespace HomeLine.Agency.Visits;

/// <summary>Moved windows as a nurse reads them: what, as it stood, as it stands.</summary>
internal static class MovedWords
{
    private static readonly LocalDatePattern Day = LocalDatePattern.CreateWithInvariantCulture("ddd d MMM");
    private static readonly LocalDateTimePattern Moment = LocalDateTimePattern.CreateWithInvariantCulture("ddd d MMM HH:mm");

    /// <summary>One row for each item and line; lumens that move alike share it.</summary>
    public static ImmutableArray<MovedCare> Of(ImmutableArray<MovedWindow> moved, PatientCare care, Instant now) =>
    [
        .. moved
            .Select(m => (Window: (m.After ?? m.Before)!, Before: Words(m.Before, care.Zone, now), After: Words(m.After, care.Zone, now)))
            .Where(m => m.Window.Item is not (CareItem.CaregiverValidation or CareItem.Securement or CareItem.OutsideLength))
            .GroupBy(m => (m.Window.Item, m.Window.Line, m.Window.Order, m.Before, m.After))
            .OrderBy(g => g.Key.Line?.Value, StringComparer.Ordinal).ThenBy(g => g.Key.Item)
            .Select(g => new MovedCare(Label([.. g.Select(m => m.Window)], care), g.Key.Before, g.Key.After, g.Key.Item, g.Key.Line, g.Key.Order)),
    ];

    /// <summary>A window in words.</summary>
    public static string Words(DueWindow? window, DateTimeZone zone, Instant now)
    {
        if (window is null) return "";
        if (window.Standing == WindowStanding.DateUnknown) return "date unknown: due at the first contact";
        if (window.Basis == ClockBasis.Hour || window.Standing == WindowStanding.CutShort)
            return $"by {Moment.Format(window.LateFrom.InZone(zone).LocalDateTime)}";
        string days = window.OpensOn == window.LastDay ? Day.Format(window.LastDay) : $"{Day.Format(window.OpensOn)} to {Day.Format(window.LastDay)}";
        return window.IsLateAt(now) ? $"{days}, late" : days;
    }

    private static string Label(ImmutableArray<DueWindow> windows, PatientCare care)
    {
        DueWindow lead = windows[0];
        string item = lead.Order is { } order && care.Orders.FirstOrDefault(o => o.Id == order) is { Text.Length: > 0 } named ? named.Text : CareLabels.Of(lead.Item);
        string lumens = string.Join(", ", windows.Select(w => w.Lumen).OfType<string>().Distinct().Order(StringComparer.Ordinal));
        string line = care.Lines.FirstOrDefault(l => l.Id == lead.Line) is { } found ? $", {CareLabels.Of(found.Kind)} {found.Id}" : "";
        return $"{char.ToUpperInvariant(item[0])}{item[1..]}{(lumens.Length > 0 ? $" {lumens}" : "")}{line}";
    }
}
