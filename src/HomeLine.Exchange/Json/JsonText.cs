using System.Globalization;
using System.Text.Json;
using NodaTime;
using NodaTime.Text;

namespace HomeLine.Exchange.Json;

/// <summary>How values are written in our JSON files: snake_case names, ISO dates, instants with the offset of a named zone.</summary>
public static class JsonText
{
    private static readonly OffsetDateTimePattern MomentPattern =
        OffsetDateTimePattern.CreateWithInvariantCulture("uuuu'-'MM'-'dd'T'HH':'mm':'sso<G>");

    /// <summary>The writer's options: indented, stable order, nothing escaped that need not be.</summary>
    public static JsonSerializerOptions Options { get; } = new()
    {
        WriteIndented = true,
        NewLine = "\n",
        PropertyNamingPolicy = JsonNamingPolicy.SnakeCaseLower,
        Encoder = System.Text.Encodings.Web.JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
    };

    public static string Name<T>(T value)
        where T : struct, Enum => JsonNamingPolicy.SnakeCaseLower.ConvertName(value.ToString());

    public static string Moment(Instant at, DateTimeZone zone) => MomentPattern.Format(at.InZone(zone).ToOffsetDateTime());

    public static string Date(LocalDate date) => LocalDatePattern.Iso.Format(date);

    public static string Time(LocalTime time) => time.ToString("HH:mm", CultureInfo.InvariantCulture);
}
