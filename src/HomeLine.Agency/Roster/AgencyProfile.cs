using System.Collections.Immutable;
using NodaTime;

namespace HomeLine.Agency.Roster;

/// <summary>The branch itself: its name, zone, numbers to call, and whether its people are invented.</summary>
public sealed record AgencyProfile
{
    public required string Name { get; init; }
    public required string Branch { get; init; }

    /// <summary>Identifier of the branch's zone; the week and the nurses' shifts are in it.</summary>
    public required string ZoneId { get; init; }

    /// <summary>Who families call by day.</summary>
    public string DayPhone { get; init; } = "";

    /// <summary>Who families call by night.</summary>
    public string OnCallPhone { get; init; } = "";

    /// <summary>The emergency number of the place.</summary>
    public string EmergencyNumber { get; init; } = "911";

    /// <summary>States of the nurse licensure compact the agency works in: a multistate licence of one covers the others. Empty when none.</summary>
    public ImmutableArray<string> CompactStates { get; init; } = [];

    /// <summary>All people are invented; a banner says so and real exports are refused.</summary>
    public bool IsDemo { get; init; }

    /// <summary>The demo's fixed "now"; empty for a real agency, whose now is the clock's.</summary>
    public Instant? FixedNow { get; init; }

    public DateTimeZone Zone => DateTimeZoneProviders.Tzdb[ZoneId];
}
