using NodaTime;

namespace HomeLine.LineCare.Travel;

/// <summary>A place where a patient stays for a while that is not the home.</summary>
/// <param name="State">State of the place: a nurse needs its licence.</param>
/// <param name="ZoneId">Zone of the place, as the time zone database names it.</param>
/// <param name="Address">Address there, for the record and for whoever gives the care.</param>
/// <param name="Phone">Telephone there.</param>
/// <param name="CareBy">Who gives the care that falls due there: a validated caregiver, or an agency there; empty while nobody is found.</param>
public sealed record Elsewhere(string State, string ZoneId, string Address = "", string Phone = "", string CareBy = "")
{
    /// <summary>The zone of the place.</summary>
    public DateTimeZone Zone => DateTimeZoneProviders.Tzdb[ZoneId];
}
