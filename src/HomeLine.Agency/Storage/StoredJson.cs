using System.Globalization;
using System.Text.Json;
using System.Text.Json.Serialization;
using HomeLine.LineCare.Ledger;
using HomeLine.LineCare.Lines;
using NodaTime;
using NodaTime.Serialization.SystemTextJson;

namespace HomeLine.Agency.Storage;

/// <summary>How values are written as JSON in the database: one spelling, so that equal values are equal texts.</summary>
internal static class StoredJson
{
    public static readonly JsonSerializerOptions Options = Create();

    public static string Write<T>(T value) => JsonSerializer.Serialize(value, Options);

    /// <exception cref="JsonException">The text is not a value of this kind: the stored row is damaged.</exception>
    public static T Read<T>(string text) =>
        JsonSerializer.Deserialize<T>(text, Options) ?? throw new JsonException($"A stored {typeof(T).Name} is empty.");

    private static JsonSerializerOptions Create()
    {
        var options = new JsonSerializerOptions
        {
            // What a record computes (a zone from its identifier) is not stored.
            IgnoreReadOnlyProperties = true,
            PropertyNamingPolicy = JsonNamingPolicy.CamelCase,
            // One of the providers sorts the names inside a column: the name of the kind need not come first.
            AllowOutOfOrderMetadataProperties = true,
            // The last speed band of a map and an unbounded barrier reach to infinity.
            NumberHandling = JsonNumberHandling.AllowNamedFloatingPointLiterals,
            Converters =
            {
                new JsonStringEnumConverter(),
                new PlainDecimal(),
                new AsText<PatientId>(id => id.Value, text => new PatientId(text)),
                new AsText<LineId>(id => id.Value, text => new LineId(text)),
                new AsText<EventId>(id => id.Value, text => new EventId(text)),
            },
        };
        return options.ConfigureForNodaTime(DateTimeZoneProviders.Tzdb);
    }

    /// <summary>A strong identifier is written as its text.</summary>
    private sealed class AsText<T>(Func<T, string> write, Func<string, T> read) : JsonConverter<T>
    {
        public override T Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options) =>
            read(reader.GetString() ?? throw new JsonException("An identifier is empty."));

        public override void Write(Utf8JsonWriter writer, T value, JsonSerializerOptions options) =>
            writer.WriteStringValue(write(value));
    }

    /// <summary>1.50 and 1.5 are the same length of catheter: trailing zeros are not kept.</summary>
    private sealed class PlainDecimal : JsonConverter<decimal>
    {
        public override decimal Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options) =>
            reader.GetDecimal();

        public override void Write(Utf8JsonWriter writer, decimal value, JsonSerializerOptions options) =>
            writer.WriteRawValue(value.ToString("0.############################", CultureInfo.InvariantCulture));
    }
}
