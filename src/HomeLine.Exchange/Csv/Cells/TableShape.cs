using System.Collections.Immutable;

namespace HomeLine.Exchange.Csv.Cells;

/// <summary>One column of a file.</summary>
/// <param name="Name">As in the header.</param>
/// <param name="Required">Every row must have a value, and the header must have the column.</param>
internal sealed record Column(string Name, bool Required = false);

/// <summary>One file: its name, whether a roster can be without it, and its columns in the order they are written.</summary>
internal sealed record TableShape(string File, bool Required, ImmutableArray<Column> Columns)
{
    /// <summary>Columns from a list of names; a name with <c>!</c> behind it is required.</summary>
    public static TableShape Of(string file, bool required, string columns) =>
        new(file, required, [.. columns.Split(' ', StringSplitOptions.RemoveEmptyEntries)
            .Select(name => new Column(name.TrimEnd('!'), name.EndsWith('!')))]);

    public string ColumnNames => string.Join(", ", Columns.Select(column => column.Name));
}
