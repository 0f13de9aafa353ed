using NodaTime;

namespace HomeLine.LineCare.Ledger;

/// <summary>
/// When care was performed: always a civil date at the patient's place, and the exact instant when it is known.
/// A date clock needs the date alone; an hour clock without an instant counts as of low certainty.
/// </summary>
/// <param name="Date">Civil date in the zone where the patient was.</param>
/// <param name="At">The exact moment, when known.</param>
public readonly record struct CareMoment(LocalDate Date, Instant? At = null)
{
    /// <summary>A moment known to the minute.</summary>
    public static CareMoment Exactly(Instant at, DateTimeZone zone)
    {
        ArgumentNullException.ThrowIfNull(zone);
        return new CareMoment(at.InZone(zone).Date, at);
    }

    /// <summary>A moment of which only the date is known.</summary>
    public static CareMoment SometimeOn(LocalDate date) => new(date);
}
