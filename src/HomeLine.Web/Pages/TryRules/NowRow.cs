using System.Globalization;
using System.Text.RegularExpressions;
using NodaTime;
using EventId = HomeLine.LineCare.Ledger.EventId;

namespace HomeLine.Web.Pages.TryRules;

/// <summary>The row that says when now is; moved by the buttons, so that the text alone always says everything.</summary>
public static partial class NowRow
{
    /// <summary>The text with its <c>now</c> row changed, or with one put first.</summary>
    public static string Moved(string text, LocalDateTime to)
    {
        ArgumentNullException.ThrowIfNull(text);
        string row = "now " + to.ToString("uuuu-MM-dd HH:mm", CultureInfo.InvariantCulture);
        return Now().IsMatch(text) ? Now().Replace(text, row, 1) : row + "\n" + text;
    }

    /// <summary>Where an entry stands on the page: <c>row-7</c> for the entry of row 7.</summary>
    public static string AnchorOf(EventId entry) => entry.Value.Replace(' ', '-');

    [GeneratedRegex(@"^now\s.*?(?=\r?$)", RegexOptions.Multiline | RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex Now();
}
