using HomeLine.LineCare.Ledger;
using HomeLine.LineCare.Lines;
using NodaTime;

namespace HomeLine.Exchange.Csv.Cells;

/// <summary>
/// When care was done: <c>performed_on</c> is the day at the patient's place, <c>performed_at</c> the clock time there. An offset behind
/// the time settles hours that come twice, and days spent in another zone than home.
/// </summary>
internal static class PerformedCells
{
    private const int WidestOffsetHours = 14;

    public static CareMoment? Read(Row row, DateTimeZone zone, LineId? line)
    {
        LocalDate? day = row.PastDate("performed_on", zone);
        if (day is not { } date)
        {
            if (row.Has("performed_at") && !row.Has("performed_on")) row.Refuse("performed_at", "A time needs its day in performed_on.");
            return null;
        }

        if (line is { } id && row.Ties.Lines.GetValueOrDefault(id.Value)?.InsertedOn is { } inserted && date < inserted)
            row.Refuse("performed_on", $"This lies before the line was inserted on {TimeText.Write(inserted)}.");
        return row.Has("performed_at") ? Exact(row, date, zone) : CareMoment.SometimeOn(date);
    }

    public static string Day(CareMoment? performed) => TimeText.Write(performed?.Date);

    public static string Clock(CareMoment? performed, DateTimeZone home)
    {
        if (performed is not { At: { } at } moment) return "";
        LocalDateTime local = at.InZone(home).LocalDateTime;
        if (local.Date == moment.Date)
            return home.MapLocal(local).Count > 1 ? TimeText.Write(local.TimeOfDay) + TimeText.Write(at.InZone(home).Offset) : TimeText.Write(local.TimeOfDay);
        Offset there = Enumerable.Range(-WidestOffsetHours, (2 * WidestOffsetHours) + 1).Select(Offset.FromHours)
            .OrderBy(offset => Math.Abs(offset.Seconds - at.InZone(home).Offset.Seconds))
            .FirstOrDefault(offset => at.WithOffset(offset).Date == moment.Date, at.InZone(home).Offset);
        return TimeText.Write(at.WithOffset(there).TimeOfDay) + TimeText.Write(there);
    }

    private static CareMoment Exact(Row row, LocalDate date, DateTimeZone zone)
    {
        if (TimeText.ReadClock(row.Trimmed("performed_at")) is not { } clock)
        {
            row.Refuse("performed_at", "This is not a time. Write 24-hour time, for example 14:00.");
            return CareMoment.SometimeOn(date);
        }

        (Instant? at, string? problem) = TimeText.Resolve(date + clock.Time, clock.Offset, zone);
        if (problem is not null) row.Refuse("performed_at", problem);
        if (at is { } moment && row.Ties.AsOf is { } asOf && moment > asOf && date <= asOf.InZone(zone).Date)
            row.Refuse("performed_at", $"This lies in the future: the files are as of {TimeText.Write(asOf, zone)}.");
        return new CareMoment(date, at);
    }
}
