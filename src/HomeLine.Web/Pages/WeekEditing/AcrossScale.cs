using HomeLine.Agency.WeekEditing;
using NodaTime;

namespace HomeLine.Web.Pages.WeekEditing;

/// <summary>A day drawn across, five minutes to a column, from the full hour of the first thing on it to the full hour after the last.</summary>
/// <param name="FromHour">First hour drawn.</param>
/// <param name="Hours">Hours drawn, 1 to 24.</param>
public sealed record AcrossScale(int FromHour, int Hours)
{
    private const int Step = 5;

    /// <summary>Wide enough for every shift, visit and way home of the day.</summary>
    public static AcrossScale For(IEnumerable<DraftDay> day)
    {
        var minutes = day.SelectMany(d => d.Stops
            .SelectMany(s => new[] { Minute(s.Visit.Start) - s.TravelBefore, Minute(s.Visit.Start) + s.Visit.Minutes })
            .Concat(d.ShiftFrom is { } from && d.ShiftTo is { } to ? [Minute(from), Minute(to)] : [])
            .Concat(d.HomeAgain > 0 ? [d.HomeAgain] : [])).DefaultIfEmpty(8 * 60).ToArray();
        int first = Math.Clamp(minutes.Min() / 60, 0, 22), last = Math.Clamp((minutes.Max() + 59) / 60, first + 2, 24);
        return new AcrossScale(first, last - first);
    }

    /// <summary>The class of the whole row.</summary>
    public string Whole => $"across-{Hours}";

    /// <summary>The classes of a stretch.</summary>
    public string Place(LocalTime from, int minutes) => Place(Minute(from), minutes);

    /// <summary>The classes of a stretch by the minute of the day.</summary>
    public string Place(int from, int minutes)
    {
        int column = Math.Clamp((from - (FromHour * 60)) / Step, 0, (Hours * 12) - 1);
        int wide = Math.Clamp((minutes + Step - 1) / Step, 1, (Hours * 12) - column);
        return $"at-{column + 1} for-{wide}";
    }

    public IEnumerable<int> EveryHour() => Enumerable.Range(FromHour, Hours);

    public static int Minute(LocalTime time) => (time.Hour * 60) + time.Minute;
}
