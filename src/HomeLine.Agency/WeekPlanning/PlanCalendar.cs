using NodaTime;

namespace HomeLine.Agency.WeekPlanning;

/// <summary>
/// The planner's minute axis: minutes of branch wall-clock time since 00:00 of the first day, 1,440 to every day.
/// Clock changes happen at night and shift no visit; instants are translated here and nowhere else.
/// </summary>
public sealed class PlanCalendar(DateTimeZone zone, LocalDate firstDay, int dayCount)
{
    /// <summary>Minutes of one day on the axis.</summary>
    public const int MinutesADay = 1440;

    public DateTimeZone Zone { get; } = zone;

    public LocalDate FirstDay { get; } = firstDay;

    public int DayCount { get; } = dayCount;

    /// <summary>First minute after the horizon.</summary>
    public int End => DayCount * MinutesADay;

    /// <summary>Day index of a date; negative before the horizon.</summary>
    public int Day(LocalDate date) => Period.DaysBetween(FirstDay, date);

    public LocalDate Date(int day) => FirstDay.PlusDays(day);

    /// <summary>Plan minute of an instant, rounded up so that a limit is never read too early.</summary>
    public int Minute(Instant at)
    {
        LocalDateTime local = at.InZone(Zone).LocalDateTime;
        int whole = Minute(local);
        return local.Second > 0 || local.NanosecondOfSecond > 0 ? whole + 1 : whole;
    }

    public int Minute(LocalDateTime local) => Minute(local.Date, local.TimeOfDay);

    public int Minute(LocalDate date, LocalTime time) => (Day(date) * MinutesADay) + (time.Hour * 60) + time.Minute;

    /// <summary>Plan minute of a local time at another place.</summary>
    public int Minute(LocalDate date, LocalTime time, DateTimeZone elsewhere) =>
        elsewhere.Equals(Zone) ? Minute(date, time) : Minute(date.At(time).InZoneLeniently(elsewhere).ToInstant());

    public LocalDateTime Local(int minute)
    {
        int day = (int)Math.Floor(minute / (double)MinutesADay);
        return Date(day).AtMidnight().PlusMinutes(minute - (day * MinutesADay));
    }

    public Instant At(int minute) => Local(minute).InZoneLeniently(Zone).ToInstant();
}
