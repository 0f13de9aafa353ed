using HomeLine.Agency.WeekPlanning;
using Microsoft.AspNetCore.Components;
using NodaTime;

namespace HomeLine.Web.Pages.Week;

/// <summary>
/// The scale of a nurse's row: all her days are drawn from the same hour, five minutes to a step, so that a visit at nine stands
/// at the same height on every day.
/// </summary>
/// <param name="FromMinute">Minute of the day at which the drawing begins, on a full hour.</param>
/// <param name="ToMinute">Minute of the day at which it ends.</param>
public sealed record DayScale(int FromMinute, int ToMinute)
{
    private const int Step = 5;
    private MarkupString? marks;

    /// <summary>Wide enough for every shift and visit of the row.</summary>
    public static DayScale For(NurseRow nurse)
    {
        IEnumerable<int> starts = nurse.Days.SelectMany(day => day.Stops.Select(stop => MinuteOf(stop.Visit.Start))
            .Concat(day.ShiftFrom is { } from ? [MinuteOf(from)] : []));
        IEnumerable<int> ends = nurse.Days.SelectMany(day => day.Stops.Select(stop => MinuteOf(stop.Visit.Start) + stop.Visit.Minutes)
            .Concat(day.ShiftTo is { } to ? [MinuteOf(to)] : []));
        int first = starts.DefaultIfEmpty(8 * 60).Min();
        int last = ends.DefaultIfEmpty(16 * 60).Max();
        return new DayScale(first / 60 * 60, Math.Max(last, first + 60));
    }

    /// <summary>First step of a moment, from 1.</summary>
    public int StepOf(LocalTime time) => Math.Max(0, MinuteOf(time) - FromMinute) / Step + 1;

    /// <summary>Steps of a stretch of minutes, at least one.</summary>
    public static int StepsOf(int minutes) => Math.Clamp((minutes + Step - 1) / Step, 1, 216);

    /// <summary>The classes that place a stretch on the scale.</summary>
    public string Place(LocalTime from, int minutes) => $"from-{StepOf(from)} long-{StepsOf(minutes)}";

    /// <summary>The classes of the whole scale, so that every day of the row is equally high.</summary>
    public string Whole => $"from-1 long-{StepsOf(ToMinute - FromMinute)}";

    /// <summary>The marks of the full hours, the same on each day of the row: written once, as they hold no text of people's.</summary>
    public MarkupString HourMarks => marks ??= new MarkupString(string.Concat(Hours().Select(hour => $"<li class=\"hour {Place(hour, Step)}\" aria-hidden=\"true\">{hour.Hour}</li>")));

    /// <summary>Full hours that get a mark.</summary>
    public IEnumerable<LocalTime> Hours()
    {
        for (int minute = FromMinute; minute < ToMinute; minute += 60)
            yield return new LocalTime(minute / 60, 0);
    }

    private static int MinuteOf(LocalTime time) => time.Hour * 60 + time.Minute;
}
