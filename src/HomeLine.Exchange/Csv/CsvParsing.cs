using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using CsvHelper;

namespace HomeLine.Exchange.Csv;

/// <summary>
/// RFC 4180 text into rows with their line numbers. Takes CRLF and LF and a byte order mark; refuses rows of another width than
/// the header, broken quoting and bytes that are not UTF-8, each with its line.
/// </summary>
internal static class CsvParsing
{
    private static readonly UTF8Encoding Strict = new(encoderShouldEmitUTF8Identifier: false, throwOnInvalidBytes: true);

    public static CsvSheet? Parse(string file, ReadOnlyMemory<byte> bytes, char separator, ProblemList problems)
    {
        if (bytes.Length > ReadingLimits.FileBytes)
        {
            problems.Add(file, 1, "", "", ReadingLimits.TooLarge(bytes.Length));
            return null;
        }

        if (bytes.Span.StartsWith(Encoding.UTF8.Preamble)) bytes = bytes[3..];
        if (!IsUtf8(file, bytes.Span, problems)) return null;
        return ReadRows(file, bytes, separator, problems);
    }

    private static bool IsUtf8(string file, ReadOnlySpan<byte> bytes, ProblemList problems)
    {
        try
        {
            Strict.GetCharCount(bytes);
            return true;
        }
        catch (DecoderFallbackException error)
        {
            int line = 1 + bytes[..Math.Clamp(error.Index, 0, bytes.Length)].Count((byte)'\n');
            problems.Add(file, line, "", "", "This line holds bytes that are not UTF-8 text. Save the file as CSV UTF-8.");
            return false;
        }
    }

    private static CsvSheet? ReadRows(string file, ReadOnlyMemory<byte> bytes, char separator, ProblemList problems)
    {
        var options = new CsvReaderOptions
        {
            Separator = separator,
            HasHeader = false,
            TrackLineNumbers = true,
            IncludeValuesInExceptions = false,
            OnMalformedRecord = bad => problems.Add(file, Line(bad.LineNumber), "", bad.RawRecord, Explain(bad.Reason)),
        };
        using var reader = CsvReader.Create(bytes, options);
        CsvLine? header = null;
        var rows = ImmutableArray.CreateBuilder<CsvLine>();
        while (reader.Read())
        {
            var line = new CsvLine(Line(reader.LineNumber), [.. reader.Current.ToArray()]);
            if (header is null)
            {
                header = line;
            }
            else if (rows.Count == ReadingLimits.Rows)
            {
                problems.Add(file, line.Line, "", "", string.Create(CultureInfo.InvariantCulture,
                    $"This file has more than {ReadingLimits.Rows:N0} rows; the rest was not read. Split it."));
                break;
            }
            else if (Fits(file, line, header.Value.Fields.Length, problems))
            {
                rows.Add(line);
            }
        }

        if (header is { } found) return new CsvSheet(file, found, rows.ToImmutable());
        problems.Add(file, 1, "", "", "This file is empty; the first line must hold the column names.");
        return null;
    }

    private static bool Fits(string file, CsvLine line, int width, ProblemList problems)
    {
        if (line.Fields.Length != width)
        {
            problems.Add(file, line.Line, "", "", string.Create(CultureInfo.InvariantCulture,
                $"This row has {line.Fields.Length} fields and the header has {width}. A text with a comma needs quotes around it."));
            return false;
        }

        if (line.Fields.All(field => field.Length <= ReadingLimits.FieldCharacters)) return true;
        problems.Add(file, line.Line, "", "", string.Create(CultureInfo.InvariantCulture,
            $"A field of this row has more than {ReadingLimits.FieldCharacters:N0} characters. An opening quote may lack its closing one."));
        return false;
    }

    private static int Line(long number) => (int)Math.Clamp(number, 1, int.MaxValue);

    private static string Explain(CsvMalformedReason reason) => reason switch
    {
        CsvMalformedReason.StrayQuote =>
            "A quote stands inside a field that has no quotes around it. Put the field in quotes and double the quote inside.",
        CsvMalformedReason.TextAfterClosingQuote => "Text follows the closing quote of a field. Double each quote inside the field.",
        CsvMalformedReason.UnterminatedQuote => "A field opens with a quote that is never closed.",
        _ => "This row breaks the rules of quoting.",
    };
}
