using System.Collections.Immutable;
using System.Globalization;
using System.Text.RegularExpressions;
using NodaTime;
using NodaTime.Text;

namespace HomeLine.Exchange.History;

/// <summary>One row, without its remark, split at commas.</summary>
internal sealed partial record HistoryRow(int Number, string Text, ImmutableArray<string> Clauses)
{
    private static readonly LocalDatePattern Days = LocalDatePattern.Iso;
    private static readonly LocalTimePattern Times = LocalTimePattern.CreateWithInvariantCulture("H:mm");

    public bool StartsWithDate => DateLead().IsMatch(Text);

    public static HistoryRow? Of(int number, string raw)
    {
        int remark = raw.IndexOf('#', StringComparison.Ordinal);
        string text = (remark < 0 ? raw : raw[..remark]).Trim();
        return text.Length == 0 ? null : new HistoryRow(number, text, [.. text.Split(',', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries)]);
    }

    public static LocalDate Date(string text) => Days.Parse(text) is { Success: true } read
        ? read.Value
        : throw new RowUnreadableException($"“{text}” is no date. Write year, month, day: 2027-03-08.");

    public static LocalTime Time(string text) => Times.Parse(text) is { Success: true } read
        ? read.Value
        : throw new RowUnreadableException($"“{text}” is no time of day. Write hours and minutes: 15:10.");

    public static decimal Amount(string text) => decimal.TryParse(text, NumberStyles.Number, CultureInfo.InvariantCulture, out decimal value)
        ? value
        : throw new RowUnreadableException($"“{text}” is no number.");

    /// <summary>The instant of a local time, refused where it does not exist or happens twice.</summary>
    public static Instant Moment(LocalDate day, LocalTime time, DateTimeZone zone)
    {
        var mapping = zone.MapLocal(day + time);
        return mapping.Count switch
        {
            1 => mapping.First().ToInstant(),
            0 => throw new RowUnreadableException($"{day:uuuu-MM-dd} {time:HH:mm} does not exist in {zone.Id}: the clocks go forward. Write a time before or after."),
            _ => throw new RowUnreadableException($"{day:uuuu-MM-dd} {time:HH:mm} happens twice in {zone.Id}: the clocks go back. Write a time before or after."),
        };
    }

    [GeneratedRegex(@"^(\d{4}-\d{2}-\d{2}|unknown date)\b", RegexOptions.CultureInvariant)]
    private static partial Regex DateLead();
}

/// <summary>A row cannot be read; the message says what would be right. Caught within this folder, never seen outside.</summary>
internal sealed class RowUnreadableException(string message) : Exception(message);
