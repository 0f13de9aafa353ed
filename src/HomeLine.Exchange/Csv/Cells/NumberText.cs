using System.Globalization;

namespace HomeLine.Exchange.Csv.Cells;

/// <summary>Numbers as the files write them: a point before decimals, no grouping, no exponent.</summary>
internal static class NumberText
{
    public static string Write(int value) => value.ToString(CultureInfo.InvariantCulture);

    public static string Write(int? value) => value?.ToString(CultureInfo.InvariantCulture) ?? "";

    public static string Write(decimal? value) => value?.ToString(CultureInfo.InvariantCulture) ?? "";

    /// <summary>Through decimal, because a double's own text may hold an exponent.</summary>
    public static string Write(double value) => double.IsInfinity(value) ? "" : ((decimal)value).ToString(CultureInfo.InvariantCulture);
}
