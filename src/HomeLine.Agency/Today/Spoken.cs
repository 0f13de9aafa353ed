using System.Text.RegularExpressions;

namespace HomeLine.Agency.Today;

/// <summary>A message as it is said on the phone: short sentences, whole words, one thing after the other. Nothing of it has to be read. Pure.</summary>
public static partial class Spoken
{
    private static readonly (string Short, string Said)[] Days =
        [("Mon", "Monday"), ("Tue", "Tuesday"), ("Wed", "Wednesday"), ("Thu", "Thursday"), ("Fri", "Friday"), ("Sat", "Saturday"), ("Sun", "Sunday")];

    private static readonly (string Short, string Said)[] Months =
    [
        ("Jan", "January"), ("Feb", "February"), ("Mar", "March"), ("Apr", "April"), ("Jun", "June"), ("Jul", "July"),
        ("Aug", "August"), ("Sep", "September"), ("Oct", "October"), ("Nov", "November"), ("Dec", "December"),
    ];

    /// <summary>The sentences in order; each is short enough to be repeated back.</summary>
    public static IReadOnlyList<string> Of(string text)
    {
        string said = text.Replace("Read it when parked.", "", StringComparison.Ordinal);
        foreach ((string brief, string whole) in Days) said = Regex.Replace(said, $@"\b{brief}\b", whole);
        foreach ((string brief, string whole) in Months) said = Regex.Replace(said, $@"\b{brief}\b", whole);
        said = Minutes().Replace(said, "minutes");
        said = Clock().Replace(said, m => m.Groups[2].Value == "00" ? $"{int.Parse(m.Groups[1].Value, System.Globalization.CultureInfo.InvariantCulture)} o’clock" : $"{int.Parse(m.Groups[1].Value, System.Globalization.CultureInfo.InvariantCulture)} {m.Groups[2].Value}");
        return [.. Breaks().Split(said).Select(s => s.Trim(' ', '.', ',', ':', ';')).Where(s => s.Length > 0).Select(s => char.ToUpperInvariant(s[0]) + s[1..] + ".")];
    }

    [GeneratedRegex(@"\bmin\b")]
    private static partial Regex Minutes();

    [GeneratedRegex(@"\b(\d{2}):(\d{2})\b")]
    private static partial Regex Clock();

    [GeneratedRegex(@"(?<=[.;])\s+|[:,]\s+")]
    private static partial Regex Breaks();
}
