using System.Globalization;
using NodaTime;
using NodaTime.Text;

namespace HomeLine.Exchange.Csv.Cells;

/// <summary>A date in a cell: the date, or why it is none.</summary>
internal readonly record struct DateCell(LocalDate? Date, string? Problem = null, bool AsksForOrder = false)
{
    private const int EarliestYear = 1900;
    private const int LatestYear = 2200;

    // Day numbers of spreadsheets for the years 1954 to 2119; a shorter or longer number is more likely something else.
    private const int EarliestSerial = 20_000;
    private const int LatestSerial = 80_000;
    private static readonly LocalDate SerialZero = new(1899, 12, 30);
    private static readonly char[] Marks = ['/', '.', '-'];

    public static DateCell Read(string text, DateOrder order)
    {
        ParseResult<LocalDate> iso = LocalDatePattern.Iso.Parse(text);
        if (iso.Success) return InRange(iso.Value);
        if (SerialNumber(text) is { } serial) return serial;
        string[] parts = text.Split(Marks);
        return parts.Length == 3 && parts.All(part => part.Length is > 0 and <= 4 && part.All(char.IsAsciiDigit))
            ? FromParts(text, [.. parts.Select(part => int.Parse(part, CultureInfo.InvariantCulture))], order)
            : new DateCell(null, "This is not a date. Write year-month-day, for example 2027-03-04.");
    }

    private static DateCell? SerialNumber(string text)
    {
        if (text.Length != 5 || !text.All(char.IsAsciiDigit)) return null;
        int serial = int.Parse(text, CultureInfo.InvariantCulture);
        if (serial is < EarliestSerial or > LatestSerial) return null;
        string meant = LocalDatePattern.Iso.Format(SerialZero.PlusDays(serial));
        return new DateCell(null, $"This is a spreadsheet's day number, it may mean {meant}. "
            + "Format the column as year-month-day and save again.");
    }

    private static DateCell FromParts(string text, int[] parts, DateOrder order)
    {
        if (parts[0] > 31) return new DateCell(null, "This is not a date. Write year-month-day with two digits each, for example 2027-03-04.");
        if (parts[2] < 100) return new DateCell(null, "The year needs four digits. Write year-month-day, for example 2027-03-04.");
        LocalDate? monthFirst = Valid(parts[2], parts[0], parts[1]);
        LocalDate? dayFirst = Valid(parts[2], parts[1], parts[0]);
        LocalDate? meant = order switch
        {
            DateOrder.MonthFirst => monthFirst,
            DateOrder.DayFirst => dayFirst,
            _ => null,
        };
        if (meant is { } date) return InRange(date);
        if (order != DateOrder.Iso || (monthFirst is null && dayFirst is null))
            return new DateCell(null, $"{text} is no day of the calendar in the declared order. Write year-month-day, for example 2027-03-04.");
        return new DateCell(null, $"{Readings(monthFirst, dayFirst)} Write year-month-day, or declare date_order once in agency.csv.", true);
    }

    private static string Readings(LocalDate? monthFirst, LocalDate? dayFirst) =>
        (monthFirst, dayFirst) switch
        {
            ({ } a, { } b) when a != b => $"This could be {LocalDatePattern.Iso.Format(a)} or {LocalDatePattern.Iso.Format(b)}.",
            var (a, b) => $"This is probably {LocalDatePattern.Iso.Format((a ?? b)!.Value)}.",
        };

    private static LocalDate? Valid(int year, int month, int day) =>
        year is >= EarliestYear and <= LatestYear && month is >= 1 and <= 12
        && day >= 1 && day <= CalendarSystem.Iso.GetDaysInMonth(year, month)
            ? new LocalDate(year, month, day)
            : null;

    private static DateCell InRange(LocalDate date) => date.Year is >= EarliestYear and <= LatestYear
        ? new DateCell(date)
        : new DateCell(null, string.Create(CultureInfo.InvariantCulture, $"The year must lie between {EarliestYear} and {LatestYear}."));
}
