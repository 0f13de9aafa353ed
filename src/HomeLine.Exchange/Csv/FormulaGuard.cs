namespace HomeLine.Exchange.Csv;

/// <summary>
/// Keeps exported text from being run as a formula by a spreadsheet: such text gets one apostrophe in front, which a spreadsheet shows
/// as plain text. Reading takes exactly that apostrophe away again, so that text that began with one comes back whole.
/// The list of characters follows OWASP's page on CSV injection, with NUL and the full-width forms added.
/// </summary>
public static class FormulaGuard
{
    private const string Starters = "=+-@\t\r\n\0＝＋－＠";

    /// <summary>The text as it is written.</summary>
    public static string Protect(string text) => NeedsGuard(text) ? "'" + text : text;

    /// <summary>The text as it was before <see cref="Protect"/>.</summary>
    public static string Unprotect(string cell) =>
        cell.Length > 1 && cell[0] == '\'' && NeedsGuard(cell[1..]) ? cell[1..] : cell;

    private static bool NeedsGuard(string text) => text.Length > 0 && (text[0] == '\'' || StartsLikeFormula(text));

    private static bool StartsLikeFormula(string text)
    {
        // A spreadsheet that trims spaces or strips quotes would see the formula behind them.
        foreach (char c in text)
        {
            if (Starters.Contains(c, StringComparison.Ordinal)) return true;
            if (!char.IsWhiteSpace(c) && !char.IsControl(c) && c is not ('"' or '\'' or '\uFEFF')) return false;
        }

        return false;
    }
}
