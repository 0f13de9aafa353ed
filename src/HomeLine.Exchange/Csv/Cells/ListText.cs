namespace HomeLine.Exchange.Csv.Cells;

/// <summary>Lists inside one field: words with a space between them.</summary>
internal static class ListText
{
    public static string Write(IEnumerable<string> words) => string.Join(' ', words);

    public static string WriteFlags<T>(T value) where T : struct, Enum => string.Join(' ', Enum.GetValues<T>().Distinct()
        .Where(flag => Convert.ToInt64(flag, System.Globalization.CultureInfo.InvariantCulture) != 0 && value.HasFlag(flag))
        .Select(Words<T>.Of));
}
