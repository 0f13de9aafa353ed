using System.Collections.Immutable;
using System.Globalization;

namespace HomeLine.Web.Pages.Today;

/// <summary>What a way in is opened with already filled in: from the address, or from an event of the demonstration. A wrong value is as good as none.</summary>
public sealed class Filled(ImmutableDictionary<string, string> values)
{
    public static readonly Filled Nothing = new(ImmutableDictionary<string, string>.Empty);

    public string Text(string key) => values.GetValueOrDefault(key, "");

    public int? Number(string key) => int.TryParse(Text(key), CultureInfo.InvariantCulture, out int number) ? number : null;

    public double? Kilometres(string key) => double.TryParse(Text(key), CultureInfo.InvariantCulture, out double number) ? number : null;

    public DateTime? Moment(string key) => DateTime.TryParse(Text(key), CultureInfo.InvariantCulture, DateTimeStyles.None, out DateTime moment) ? moment : null;

    public bool Is(string key) => Text(key) == "yes";

    public T? Choice<T>(string key)
        where T : struct, Enum => Enum.TryParse(Text(key), out T choice) ? choice : null;

    public ImmutableArray<string> List(string key) => [.. Text(key).Split(';', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries)];
}
