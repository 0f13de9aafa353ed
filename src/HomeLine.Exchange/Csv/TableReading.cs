using System.Collections.Immutable;
using HomeLine.Exchange.Csv.Cells;

namespace HomeLine.Exchange.Csv;

/// <summary>Reads one file after another into what its rows mean, noting every problem on the way.</summary>
internal sealed class TableReading(IRosterFiles files, char separator, RosterTies ties, ProblemList problems)
{
    private static readonly char[] OtherSeparators = [';', '\t', ','];

    public ImmutableArray<T> Read<T>(TableShape shape, Func<Row, T?> readRow) where T : class
    {
        if (Sheet(shape) is not { } sheet || Columns(shape, sheet) is not { } columns) return [];
        var found = ImmutableArray.CreateBuilder<T>(sheet.Rows.Length);
        foreach (CsvLine line in sheet.Rows)
        {
            if (line.Fields.All(string.IsNullOrWhiteSpace)) continue;
            var row = new Row(shape.File, line, columns, ties, problems);
            T? value = readRow(row);
            if (row.IsSound && value is not null) found.Add(value);
        }

        return found.ToImmutable();
    }

    private CsvSheet? Sheet(TableShape shape)
    {
        if (!files.Names.Contains(shape.File))
        {
            if (shape.Required) problems.Add(shape.File, 1, "", "", "This file is missing; a roster cannot be without it.");
            return null;
        }

        FileContent content = files.Open(shape.File);
        if (content.Refused is null) return CsvParsing.Parse(shape.File, content.Bytes, separator, problems);
        problems.Add(shape.File, 1, "", "", content.Refused);
        return null;
    }

    private Dictionary<string, int>? Columns(TableShape shape, CsvSheet sheet)
    {
        if (LooksSeparatedOtherwise(shape, sheet)) return null;
        var places = new Dictionary<string, int>(StringComparer.Ordinal);
        for (int i = 0; i < sheet.Header.Fields.Length; i++) Place(shape, sheet, i, places);
        foreach (Column column in shape.Columns.Where(column => column.Required && !places.ContainsKey(column.Name)))
            problems.Add(shape.File, sheet.Header.Line, column.Name, "", "This column is missing and every row needs it.");
        return places;
    }

    private void Place(TableShape shape, CsvSheet sheet, int index, Dictionary<string, int> places)
    {
        string written = sheet.Header.Fields[index];
        string name = written.Trim();
        Column? known = shape.Columns.FirstOrDefault(column => column.Name.Equals(name, StringComparison.OrdinalIgnoreCase));
        if (known is null)
            problems.Add(shape.File, sheet.Header.Line, name, written, $"This column is not known here. Columns: {shape.ColumnNames}.");
        else if (!places.TryAdd(known.Name, index))
            problems.Add(shape.File, sheet.Header.Line, name, written, "This column stands twice in the header.");
    }

    private bool LooksSeparatedOtherwise(TableShape shape, CsvSheet sheet)
    {
        if (sheet.Header.Fields.Length != 1) return false;
        string header = sheet.Header.Fields[0];
        foreach (char other in OtherSeparators.Where(other => other != separator))
        {
            string first = header.Split(other)[0].Trim();
            if (first.Length == header.Length || !shape.Columns.Any(column => column.Name.Equals(first, StringComparison.OrdinalIgnoreCase)))
                continue;
            problems.AsksForSeparator = other;
            problems.Add(shape.File, sheet.Header.Line, "", header,
                $"The fields seem to be separated by {NameOf(other)}. Choose that and read again; it is never guessed.");
            return true;
        }

        return false;
    }

    private static string NameOf(char separator) => separator switch { ';' => "semicolons", '\t' => "tabs", _ => "commas" };
}
