using System.CommandLine;
using System.Globalization;

namespace HomeLine.Benchmarks;

/// <summary>How many nurses look after how many patients.</summary>
internal readonly record struct WeekSize(int Nurses, int Patients);

/// <summary>Options that several measurements share. What makes no sense is answered in a sentence, before anything is measured.</summary>
internal static class Asked
{
    /// <summary>The word for the demonstration week.</summary>
    public const string Demo = "demo";

    private const int Most = 100_000_000;

    /// <summary>A whole number that may not be too small.</summary>
    public static Option<int> Number(string name, string description, int usual, int least = 0)
    {
        var option = new Option<int>(name) { Description = description, DefaultValueFactory = _ => usual };
        option.Validators.Add(result =>
        {
            string given = result.Tokens.Count == 0 ? "" : result.Tokens[0].Value;
            if (result.Tokens.Count > 0 && !(int.TryParse(given, NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out int value) && value >= least && value <= Most))
                result.AddError($"{name} must be a whole number from {least} to {Most}, not '{given}'.");
        });
        return option;
    }

    /// <summary>An amount of seconds or effort, which may be a fraction.</summary>
    public static Option<double> Amount(string name, string description, double usual)
    {
        var option = new Option<double>(name) { Description = description, DefaultValueFactory = _ => usual };
        option.Validators.Add(result =>
        {
            string given = result.Tokens.Count == 0 ? "" : result.Tokens[0].Value;
            if (result.Tokens.Count > 0 && !(double.TryParse(given, NumberStyles.Float, CultureInfo.InvariantCulture, out double value) && value >= 0 && value <= Most))
                result.AddError($"{name} must be a number from 0 to {Most}, not '{given}'.");
        });
        return option;
    }

    /// <summary>One size, for example 60x700.</summary>
    public static Option<string> Size(string name, string usual) => Sizes(name, usual, several: false);

    /// <summary>Sizes with commas between them, for example 5x30,20x200.</summary>
    public static Option<string> Sizes(string name, string usual) => Sizes(name, usual, several: true);

    /// <summary>Sizes with commas between them, or the demonstration week by its word.</summary>
    public static Option<string> SizesOrDemo(string name, string usual) => Sizes(name, usual, several: true, orDemo: true);

    /// <summary>The sizes of a text that was accepted.</summary>
    public static WeekSize[] SizesOf(string text) => Read(text) ?? throw new ArgumentException($"'{text}' is not a list of sizes.", nameof(text));

    private static Option<string> Sizes(string name, string usual, bool several, bool orDemo = false)
    {
        string what = (several, orDemo) switch
        {
            (true, true) => $"nurses x patients or {Demo}, with commas between several",
            (true, false) => "nurses x patients, with commas between several",
            _ => "nurses x patients",
        };
        var option = new Option<string>(name) { Description = $"{char.ToUpperInvariant(what[0])}{what[1..]}.", DefaultValueFactory = _ => usual };
        option.Validators.Add(result =>
        {
            if (result.Tokens.Count == 0) return;
            string given = result.Tokens[0].Value;
            string[] named = [.. given.Split(',', StringSplitOptions.RemoveEmptyEntries).Where(s => orDemo && s == Demo)];
            string rest = string.Join(',', given.Split(',', StringSplitOptions.RemoveEmptyEntries).Where(s => !orDemo || s != Demo));
            if (Read(rest) is { } sizes && sizes.Length + named.Length > 0 && (several || sizes.Length == 1)) return;
            result.AddError($"{name} must be {what}, for example {usual}, not '{given}'.");
        });
        return option;
    }

    private static WeekSize[]? Read(string text)
    {
        var sizes = new List<WeekSize>();
        foreach (string size in text.Split(',', StringSplitOptions.RemoveEmptyEntries))
        {
            string[] parts = size.Split('x');
            if (parts.Length != 2 || Count(parts[0]) is not { } nurses || Count(parts[1]) is not { } patients) return null;
            sizes.Add(new WeekSize(nurses, patients));
        }

        return [.. sizes];
    }

    private static int? Count(string text) =>
        int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out int count) && count is > 0 and <= 100_000 ? count : null;
}
