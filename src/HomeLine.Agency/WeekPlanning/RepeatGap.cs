using HomeLine.LineCare.Windows;
using NodaTime;

namespace HomeLine.Agency.WeekPlanning;

/// <summary>A clock's gaps on the planner's minute axis.</summary>
public static class RepeatGap
{
    public static bool InDays(this Repeat repeat) => repeat.Basis == ClockBasis.Date;

    public static int MinMinutes(this Repeat repeat) => repeat.MinGap * MinutesPerUnit(repeat);

    public static int MaxMinutes(this Repeat repeat) => repeat.MaxGap * MinutesPerUnit(repeat);

    /// <summary>First day on which the next occurrence is useful, when this one is done on <paramref name="day"/>.</summary>
    public static LocalDate OpensAfter(this Repeat repeat, LocalDate day) =>
        day.PlusDays(repeat.InDays() ? repeat.MinGap : (repeat.MinGap + 23) / 24);

    private static int MinutesPerUnit(Repeat repeat) => repeat.InDays() ? PlanCalendar.MinutesADay : 60;
}
