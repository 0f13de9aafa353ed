using System.Collections.Immutable;
using NodaTime;

namespace HomeLine.Exchange.Csv.Cells;

/// <summary>Dates, times and places in a row.</summary>
internal sealed partial class Row
{
    private static readonly LocalDate StandIn = new(2000, 1, 1);

    public LocalDate? Date(string column) => Has(column) ? Date(column, Trimmed(column)) : null;

    public LocalDate RequiredDate(string column)
    {
        if (!Has(column)) Missing(column);
        return Date(column) ?? StandIn;
    }

    public ImmutableArray<LocalDate> Dates(string column) => [.. List(column).Select(text => Date(column, text) ?? StandIn)];

    public LocalTime? Time(string column) => Has(column) ? Time(column, Trimmed(column)) : null;

    public LocalTime RequiredTime(string column)
    {
        if (!Has(column)) Missing(column);
        return Time(column) ?? LocalTime.Midnight;
    }

    public ImmutableArray<LocalTime> Times(string column) => [.. List(column).Select(text => Time(column, text) ?? LocalTime.Midnight)];

    /// <summary>A local date with a time, <c>2027-03-11T18:00</c>.</summary>
    public LocalDateTime? DateTime(string column) => Moment(column) is { } found ? found.Local : null;

    public LocalDateTime RequiredDateTime(string column)
    {
        if (!Has(column)) Missing(column);
        return DateTime(column) ?? StandIn.AtMidnight();
    }

    /// <summary>A local date and time of a zone as an instant.</summary>
    public Instant? Instant(string column, DateTimeZone zone)
    {
        if (Moment(column) is not { } found) return null;
        (Instant? at, string? problem) = TimeText.Resolve(found.Local, found.Offset, zone);
        if (problem is not null) Refuse(column, problem);
        return at;
    }

    /// <summary>Refuses a date that lies after the files' own date.</summary>
    public LocalDate? PastDate(string column, DateTimeZone zone)
    {
        LocalDate? date = Date(column);
        if (date is { } day && Ties.AsOf is { } asOf && day > asOf.InZone(zone).Date)
            Refuse(column, $"This day lies in the future: the files are as of {TimeText.Write(asOf.InZone(zone).Date)}.");
        return date;
    }

    /// <summary>Refuses an end before its start; both columns may be empty.</summary>
    public void InOrder<T>(string from, T? start, string to, T? end) where T : struct, IComparable<T>
    {
        if (start is { } a && end is { } b && b.CompareTo(a) < 0) Refuse(to, $"This ends before {from} begins.");
    }

    /// <summary>A place on the map from two columns.</summary>
    public (double X, double Y) Place(string xColumn = "x", string yColumn = "y")
    {
        if (!Has(xColumn)) Missing(xColumn);
        if (!Has(yColumn)) Missing(yColumn);
        if (Kilometres(xColumn) is not { } x || Kilometres(yColumn) is not { } y) return default;
        if (x == 0 && y == 0)
            Refuse(xColumn, "0,0 is the corner of the map and usually means that the place was never entered.");
        else if (!OnMap(x, y))
            Refuse(xColumn, $"{Raw(xColumn)},{Raw(yColumn)}", OnMap(y, x)
                ? "This place is off the map; x and y look swapped."
                : $"This place is off the map, which is {Ties.MapWidth} km wide and {Ties.MapHeight} km high.");
        return (x, y);
    }

    public double? Kilometres(string column)
    {
        if (!Has(column)) return null;
        if (ReadKilometres(Trimmed(column)) is { } value) return value;
        Refuse(column, "This must be kilometres on the map as a plain number, for example 23.6.");
        return null;
    }

    private static double? ReadKilometres(string text) =>
        ReadDecimal(text) is not null
        && double.TryParse(text, System.Globalization.CultureInfo.InvariantCulture, out double value) && Math.Abs(value) < 100_000
            ? value
            : null;

    private bool OnMap(double x, double y) => x >= 0 && x <= Ties.MapWidth && y >= 0 && y <= Ties.MapHeight;

    private LocalDate? Date(string column, string text)
    {
        DateCell cell = DateCell.Read(text, Ties.Dates);
        if (cell.Problem is not { } problem) return cell.Date;
        if (cell.AsksForOrder) problems.AsksForDateOrder = true;
        Refuse(column, text, problem);
        return null;
    }

    private LocalTime? Time(string column, string text)
    {
        if (TimeText.ReadTime(text) is { } time) return time;
        Refuse(column, text, "This is not a time. Write 24-hour time, for example 09:30.");
        return null;
    }

    private (LocalDateTime Local, Offset? Offset)? Moment(string column)
    {
        string text = Trimmed(column);
        if (text.Length == 0) return null;
        string[] parts = text.Split(['T', ' '], 2, StringSplitOptions.TrimEntries);
        if (parts.Length == 2 && TimeText.ReadClock(parts[1]) is { } clock)
            return Date(column, parts[0]) is { } date ? (date + clock.Time, clock.Offset) : null;
        Refuse(column, "This is not a date with a time. Write for example 2027-03-08T06:00.");
        return null;
    }
}
