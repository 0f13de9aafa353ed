using System.Globalization;
using System.Text.RegularExpressions;
using HomeLine.LineCare.Orders;
using NodaTime;

namespace HomeLine.Exchange.History;

/// <summary>A row that begins with <c>order</c>.</summary>
internal static partial class OrderRow
{
    public static CareOrder Read(string rest, HistoryRow row, HistoryDraft draft)
    {
        var order = Wanted(rest, new CareOrder
        {
            Id = $"O{draft.Orders.Count + 1}",
            Patient = HistoryDraft.Patient,
            Kind = OrderKind.VisitFrequency,
            StartsOn = LocalDate.MinIsoValue,
            Practitioner = "the prescriber",
        });
        return row.Clauses.Skip(1).Aggregate(order, (known, clause) => With(known, clause, draft));
    }

    private static CareOrder Wanted(string text, CareOrder blank)
    {
        if (Frequency().Match(text) is { Success: true } weekly) return blank with { VisitsPerWeek = Whole(weekly.Groups[1].Value, 1, 50), Text = text };
        if (Interval().Match(text) is { Success: true } interval)
            return blank with
            {
                Kind = OrderKind.Interval,
                Item = Words.Find(Words.Items, interval.Groups[1].Value, "item"),
                EveryDays = Whole(interval.Groups[2].Value, 1, 365),
                Text = text,
            };
        if (Labs().Match(text) is { Success: true } labs) return Draws(blank with { Kind = OrderKind.Labs, Text = "labs" }, labs.Groups[1].Value);
        if (Removal().Match(text) is { Success: true } removal)
            return blank with { Kind = OrderKind.Removal, Dates = [HistoryRow.Date(removal.Groups[1].Value)], Text = "line removal" };
        throw new RowUnreadableException(
            "Known orders: order 1 visit a week, 3 as needed; order dressing every 14 days; order labs every 7 days; order labs on Mon Thu; order labs on 2027-03-09; order removal on 2027-03-11.");
    }

    private static CareOrder Draws(CareOrder order, string when)
    {
        if (EveryDays().Match(when) is { Success: true } every) return order with { EveryDays = Whole(every.Groups[1].Value, 1, 365) };
        string[] days = when.Split(' ', StringSplitOptions.RemoveEmptyEntries)[1..];
        return char.IsAsciiDigit(days[0][0])
            ? order with { Dates = [.. days.Select(HistoryRow.Date)] }
            : order with { Weekdays = [.. days.Select(Weekday)] };
    }

    private static CareOrder With(CareOrder order, string clause, HistoryDraft draft)
    {
        if (From().Match(clause) is { Success: true } from)
            return order with
            {
                StartsOn = HistoryRow.Date(from.Groups[1].Value),
                EndsOn = from.Groups[2].Success ? HistoryRow.Date(from.Groups[2].Value) : null,
            };
        if (AsNeeded().Match(clause) is { Success: true } asNeeded)
            return order with
            {
                AsNeededVisits = Whole(asNeeded.Groups[1].Value, 1, 99),
                AsNeededUsed = asNeeded.Groups[2].Success ? Whole(asNeeded.Groups[2].Value, 0, 99) : 0,
            };
        if (clause.Equals("confirmed", StringComparison.OrdinalIgnoreCase)) return order with { Confirmed = true };
        if (OnLine().Match(clause) is { Success: true } line) return order with { Line = draft.LineNamed(line.Groups[1].Value) };
        throw new RowUnreadableException($"“{clause}” is not understood. Known for an order: from 2027-02-01 to 2027-04-01, 3 as needed (1 used), confirmed, on L1.");
    }

    private static int Whole(string text, int least, int most) =>
        int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out int value) && value >= least && value <= most
            ? value
            : throw new RowUnreadableException($"“{text}” must be a whole number from {least} to {most}.");

    private static IsoDayOfWeek Weekday(string text) => text.ToUpperInvariant() switch
    {
        "MON" => IsoDayOfWeek.Monday,
        "TUE" => IsoDayOfWeek.Tuesday,
        "WED" => IsoDayOfWeek.Wednesday,
        "THU" => IsoDayOfWeek.Thursday,
        "FRI" => IsoDayOfWeek.Friday,
        "SAT" => IsoDayOfWeek.Saturday,
        "SUN" => IsoDayOfWeek.Sunday,
        _ => throw new RowUnreadableException($"“{text}” is no weekday. Write Mon, Tue, Wed, Thu, Fri, Sat or Sun."),
    };

    [GeneratedRegex(@"^(\d+)\s+visits?\s+a\s+week$", RegexOptions.CultureInvariant | RegexOptions.IgnoreCase)]
    private static partial Regex Frequency();

    [GeneratedRegex(@"^(?!labs\b)(.+?)\s+every\s+(\d+)\s+days?$", RegexOptions.CultureInvariant | RegexOptions.IgnoreCase)]
    private static partial Regex Interval();

    [GeneratedRegex(@"^labs\s+((?:every\s+\d+\s+days?)|(?:on\s+\S.*))$", RegexOptions.CultureInvariant | RegexOptions.IgnoreCase)]
    private static partial Regex Labs();

    [GeneratedRegex(@"^removal\s+on\s+(\S+)$", RegexOptions.CultureInvariant | RegexOptions.IgnoreCase)]
    private static partial Regex Removal();

    [GeneratedRegex(@"^every\s+(\d+)\s+days?$", RegexOptions.CultureInvariant | RegexOptions.IgnoreCase)]
    private static partial Regex EveryDays();

    [GeneratedRegex(@"^from\s+(\S+)(?:\s+to\s+(\S+))?$", RegexOptions.CultureInvariant | RegexOptions.IgnoreCase)]
    private static partial Regex From();

    [GeneratedRegex(@"^(\d+)\s+as\s+needed(?:\s+\((\d+)\s+used\))?$", RegexOptions.CultureInvariant | RegexOptions.IgnoreCase)]
    private static partial Regex AsNeeded();

    [GeneratedRegex(@"^on\s+(\S+)$", RegexOptions.CultureInvariant | RegexOptions.IgnoreCase)]
    private static partial Regex OnLine();
}
