using System.Globalization;
using CsvHelper;
using HomeLine.Exchange.Csv.Cells;

namespace HomeLine.Exchange.Csv;

/// <summary>Rows into RFC 4180 text: CRLF, quotes where needed, and no cell that a spreadsheet would run as a formula.</summary>
internal static class CsvWriting
{
    // A field with one of these falls apart when a spreadsheet of another country opens the file by semicolons or tabs.
    private static readonly char[] OtherSeparators = [';', '\t'];

    public static byte[] Write(TableShape shape, IEnumerable<string[]> rows)
    {
        using var buffer = new MemoryStream();
        using (var writer = CsvWriter.Create(buffer, new CsvWriterOptions(), true))
        {
            WriteRow(writer, shape.Columns.Select(column => column.Name));
            foreach (string[] row in rows) WriteRow(writer, row.Select(Cell));
        }

        return buffer.ToArray();
    }

    private static void WriteRow(CsvWriter writer, IEnumerable<string> cells)
    {
        foreach (string cell in cells)
            writer.WriteField(cell, cell.IndexOfAny(OtherSeparators) >= 0 ? CsvQuoting.Always : CsvQuoting.WhenNeededOrWhitespace);
        writer.EndRecord();
    }

    /// <summary>A plain negative number stays a number; everything else that begins like a formula is guarded.</summary>
    private static string Cell(string text) =>
        decimal.TryParse(text, NumberStyles.AllowDecimalPoint | NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out _)
        && text[0] is '-' or (>= '0' and <= '9')
            ? text
            : FormulaGuard.Protect(text);
}
