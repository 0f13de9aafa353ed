using System.Globalization;

namespace HomeLine.Exchange.Csv;

/// <summary>What one file may hold. Our own defaults: a large branch stays under a tenth of them.</summary>
public static class ReadingLimits
{
    public const int FileBytes = 5 * 1024 * 1024;
    public const int Rows = 100_000;
    public const int FieldCharacters = 10_000;

    internal static string TooLarge(long bytes) => string.Create(
        CultureInfo.InvariantCulture,
        $"This file has {bytes:N0} bytes; the most is {FileBytes:N0}. Split it or leave old rows out.");
}
