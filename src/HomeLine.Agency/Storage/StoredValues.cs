using HomeLine.LineCare.Ledger;
using HomeLine.LineCare.Lines;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Storage.ValueConversion;
using NodaTime;
using NodaTime.Text;

namespace HomeLine.Agency.Storage;

/// <summary>How single values are stored, the same on both providers (docs/decisions/0003-one-model-two-providers.md).</summary>
internal static class StoredValues
{
    public static void Configure(ModelConfigurationBuilder conventions)
    {
        conventions.Properties<Instant>().HaveConversion<InstantAsTicks>();
        conventions.Properties<LocalDate>().HaveConversion<DateAsText>();
        conventions.Properties<LocalTime>().HaveConversion<TimeAsText>();
        conventions.Properties<LocalDateTime>().HaveConversion<DateTimeAsText>();
        conventions.Properties<PatientId>().HaveConversion<PatientIdAsText>();
        conventions.Properties<LineId>().HaveConversion<LineIdAsText>();
        conventions.Properties<EventId>().HaveConversion<EventIdAsText>();
        conventions.Properties<CareMoment>().HaveConversion<JsonText<CareMoment>>();
        conventions.Properties<Enum>().HaveConversion<string>();
    }

    /// <summary>UTC ticks of 100 ns since 1970: sorts, compares, and loses nothing the system clock gives.</summary>
    private sealed class InstantAsTicks() : ValueConverter<Instant, long>(
        at => at.ToUnixTimeTicks(), ticks => Instant.FromUnixTimeTicks(ticks));

    private sealed class DateAsText() : ValueConverter<LocalDate, string>(
        date => LocalDatePattern.Iso.Format(date), text => LocalDatePattern.Iso.Parse(text).Value);

    private sealed class TimeAsText() : ValueConverter<LocalTime, string>(
        time => LocalTimePattern.ExtendedIso.Format(time), text => LocalTimePattern.ExtendedIso.Parse(text).Value);

    private sealed class DateTimeAsText() : ValueConverter<LocalDateTime, string>(
        at => LocalDateTimePattern.ExtendedIso.Format(at), text => LocalDateTimePattern.ExtendedIso.Parse(text).Value);

    private sealed class PatientIdAsText() : ValueConverter<PatientId, string>(id => id.Value, text => new PatientId(text));

    private sealed class LineIdAsText() : ValueConverter<LineId, string>(id => id.Value, text => new LineId(text));

    private sealed class EventIdAsText() : ValueConverter<EventId, string>(id => id.Value, text => new EventId(text));
}
