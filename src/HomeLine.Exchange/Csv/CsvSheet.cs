using System.Collections.Immutable;

namespace HomeLine.Exchange.Csv;

/// <summary>One row as it stands in the file, with the line it begins on.</summary>
internal readonly record struct CsvLine(int Line, ImmutableArray<string> Fields);

/// <summary>A parsed file: its header and the rows that have as many fields as the header.</summary>
internal sealed record CsvSheet(string File, CsvLine Header, ImmutableArray<CsvLine> Rows);
