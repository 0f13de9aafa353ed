using HomeLine.LineCare.Policy;
using NodaTime;

namespace HomeLine.Exchange.History;

/// <summary>
/// A line's history as plain rows, one fact each: <c>2027-03-03 15:10 dressing film, connector A, outside 2 cm</c>.
/// docs/line-history.md lists every row that can be written. Nothing here is stored; it is for trying the rules and for examples.
/// </summary>
public static class HistoryText
{
    /// <summary>Longest text that is read, characters.</summary>
    public const int MostCharacters = 40_000;

    /// <summary>Reads the rows. Never throws for what they say: each row at fault is in the answer.</summary>
    /// <param name="text">The rows; what follows a # is a remark.</param>
    /// <param name="policy">The policy to start from.</param>
    /// <param name="zone">The zone when no row names one.</param>
    /// <param name="now">The instant to answer for when no row says.</param>
    public static HistoryReading Read(string text, PolicyBook policy, DateTimeZone zone, Instant now)
    {
        ArgumentNullException.ThrowIfNull(text);
        ArgumentNullException.ThrowIfNull(policy);
        ArgumentNullException.ThrowIfNull(zone);
        if (text.Length > MostCharacters)
            return new HistoryReading(null, [new HistoryFault(1, "", $"This is {text.Length:N0} characters long; at most {MostCharacters:N0} are read.")]);
        var draft = new HistoryDraft(policy, zone, now);
        HistoryRow[] rows = [.. Rows(text)];
        // Settings first, whatever their place, so that a zone named at the end still holds for every date.
        foreach (HistoryRow row in rows.OrderBy(row => row.StartsWithDate).ThenBy(row => row.Number))
            try
            {
                if (row.StartsWithDate) EntryRow.Read(row, draft);
                else SettingRow.Read(row, draft);
            }
            catch (RowUnreadableException unreadable)
            {
                draft.Faults.Add(new HistoryFault(row.Number, row.Text, unreadable.Message));
            }

        if (draft.Faults.Count == 0) draft.Check();
        return draft.Faults.Count > 0
            ? new HistoryReading(null, [.. draft.Faults.OrderBy(fault => fault.Row)])
            : new HistoryReading(draft.Finish(), []);
    }

    private static IEnumerable<HistoryRow> Rows(string text)
    {
        string[] rows = text.ReplaceLineEndings("\n").Split('\n');
        for (int i = 0; i < rows.Length; i++)
            if (HistoryRow.Of(i + 1, rows[i]) is { } row)
                yield return row;
    }
}
