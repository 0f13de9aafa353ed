using System.Collections.Immutable;
using System.Text.RegularExpressions;
using HomeLine.LineCare.Ledger;
using NodaTime;

namespace HomeLine.Exchange.History;

/// <summary>What follows the first comma of an entry: what else was done, by whom, how surely, and when it was written down.</summary>
internal static partial class EntryDetail
{
    public static LineEvent Add(LineEvent entry, string clause, DateTimeZone zone)
    {
        if (clause.Equals("securement", StringComparison.OrdinalIgnoreCase)) return entry with { SecurementChanged = true };
        if (Connector().Match(clause) is { Success: true } connector)
            return entry with { ConnectorsChanged = entry.ConnectorsChanged.AddRange(Lumens(connector.Groups[1].Value)) };
        if (Lumen().Match(clause) is { Success: true } lumen)
            return entry with { LumensUsed = entry.LumensUsed.AddRange(Lumens(lumen.Groups[1].Value)) };
        if (Centimetres().Match(clause) is { Success: true } length)
        {
            decimal cm = HistoryRow.Amount(length.Groups["cm"].Value);
            return length.Groups["what"].Value.Equals("girth", StringComparison.OrdinalIgnoreCase)
                ? entry with { ArmGirthCm = cm }
                : entry with { OutsideLengthCm = cm };
        }

        if (Words.Certainties.TryGetValue(clause, out Certainty certainty)) return entry with { Certainty = certainty };
        if (Recorded().Match(clause) is { Success: true } recorded)
            return entry with { RecordedAt = HistoryRow.Moment(HistoryRow.Date(recorded.Groups[1].Value), HistoryRow.Time(recorded.Groups[2].Value), zone) };
        if (Replaces().Match(clause) is { Success: true } replaced) return entry with { Voids = new EventId($"row {replaced.Groups[1].Value}") };
        if (Under().Match(clause) is { Success: true } order) return entry with { Order = order.Groups[1].Value };
        if (By().Match(clause) is { Success: true } by)
            return entry with { Performer = Words.Find(Words.Performers, by.Groups[1].Value, "performer"), PerformerName = by.Groups[2].Value.Trim() };
        if (Note().Match(clause) is { Success: true } note) return entry with { Note = note.Groups[1].Value };
        throw new RowUnreadableException(
            $"“{clause}” is not understood. Known after the comma: securement, connector A, lumen A, outside 2 cm, girth 30 cm, on L1, by caregiver spouse, "
            + $"{string.Join(", ", Words.Certainties.Keys.Order(StringComparer.Ordinal))}, recorded 2027-03-05 17:00, replaces row 3, under O1, note ….");
    }

    /// <summary>Letters of lumens: <c>A</c>, <c>A B</c>, <c>A and B</c>.</summary>
    public static ImmutableArray<string> Lumens(string text)
    {
        string[] letters = [.. text.Split(' ', StringSplitOptions.RemoveEmptyEntries).Where(word => word is not ("and" or "+")).Select(word => word.ToUpperInvariant())];
        return letters.FirstOrDefault(letter => letter is not [>= 'A' and <= 'Z']) is { } odd
            ? throw new RowUnreadableException($"“{odd}” is no lumen. Lumens are single letters: A, or A B.")
            : [.. letters];
    }

    [GeneratedRegex(@"^connectors?\s+(.+)$", RegexOptions.CultureInvariant | RegexOptions.IgnoreCase)]
    private static partial Regex Connector();

    [GeneratedRegex(@"^lumens?\s+(.+)$", RegexOptions.CultureInvariant | RegexOptions.IgnoreCase)]
    private static partial Regex Lumen();

    [GeneratedRegex(@"^(?:(?<what>outside|girth)\s+)?(?<cm>\d+(?:\.\d+)?)\s*cm$", RegexOptions.CultureInvariant | RegexOptions.IgnoreCase)]
    private static partial Regex Centimetres();

    [GeneratedRegex(@"^recorded\s+(\S+)\s+(\S+)$", RegexOptions.CultureInvariant | RegexOptions.IgnoreCase)]
    private static partial Regex Recorded();

    [GeneratedRegex(@"^replaces\s+row\s+(\d+)$", RegexOptions.CultureInvariant | RegexOptions.IgnoreCase)]
    private static partial Regex Replaces();

    [GeneratedRegex(@"^under\s+(\S+)$", RegexOptions.CultureInvariant | RegexOptions.IgnoreCase)]
    private static partial Regex Under();

    [GeneratedRegex(@"^by\s+(nurse|caregiver|clinic|hospital)\b(.*)$", RegexOptions.CultureInvariant | RegexOptions.IgnoreCase)]
    private static partial Regex By();

    [GeneratedRegex(@"^note\s+(.+)$", RegexOptions.CultureInvariant | RegexOptions.IgnoreCase)]
    private static partial Regex Note();
}
