using System.Collections.Immutable;
using HomeLine.LineCare;
using HomeLine.LineCare.Lines;
using NodaTime;

namespace HomeLine.Agency.Roster;

/// <summary>A patient at home. Lines, orders and the ledger are kept beside, not inside.</summary>
public sealed record Patient
{
    public required PatientId Id { get; init; }
    public required string Name { get; init; }
    public LocalDate? BornOn { get; init; }
    public required LocalDate CareStartedOn { get; init; }

    /// <summary>Therapy in the trade's words, for the nurse's eyes; never printed on a route sheet.</summary>
    public string Therapy { get; init; } = "";

    public string Address { get; init; } = "";
    public string Phone { get; init; } = "";

    /// <summary>How to get in, where to park, pets.</summary>
    public string AccessNotes { get; init; } = "";

    /// <summary>Who to speak to when it is not the patient, for example <c>spouse</c>.</summary>
    public string Contact { get; init; } = "";

    public required MapPoint Home { get; init; }

    /// <summary>State where the home is; the nurse needs its licence.</summary>
    public required string State { get; init; }

    /// <summary>Zone of the home.</summary>
    public required string ZoneId { get; init; }

    public RiskFactors Risks { get; init; }

    /// <summary>Language spoken at home as a BCP 47 tag; <c>en</c> needs no interpreter.</summary>
    public string Language { get; init; } = "en";

    public string Practitioner { get; init; } = "";

    /// <summary>When a visit may start; empty for any time. Local time at the home.</summary>
    public ImmutableArray<AccessTime> AccessTimes { get; init; } = [];

    public ImmutableArray<string> RequiredTraits { get; init; } = [];
    public ImmutableArray<string> ExcludedTraits { get; init; } = [];
    public ImmutableArray<string> RefusedNurses { get; init; } = [];
    public ImmutableArray<string> KnownNurses { get; init; } = [];

    /// <summary>Skill words every nurse at this home needs beside those of the items, for example <c>PEDS</c> or <c>PN</c>.</summary>
    public ImmutableArray<string> NeedsSkills { get; init; } = [];

    /// <summary>1, or 2 when two people must come together.</summary>
    public int CrewSize { get; init; } = 1;

    /// <summary>A nurse who goes alone gives a sign on arrival and one when she is out again, for example where she goes escorted or by daylight only. Two people always do.</summary>
    public bool AsksForSigns { get; init; }

    /// <summary>Minutes every visit here takes longer than policy says.</summary>
    public int ExtraMinutes { get; init; }

    /// <summary>Identifier lines, free text for the record.</summary>
    public string Note { get; init; } = "";

    public DateTimeZone Zone => DateTimeZoneProviders.Tzdb[ZoneId];
}

/// <summary>A place on the agency's map, kilometres east and north of its corner.</summary>
public readonly record struct MapPoint(double X, double Y);

/// <summary>Weekdays and local times at which a visit may start, both ends included; no weekdays means every day.</summary>
public sealed record AccessTime(ImmutableArray<IsoDayOfWeek> Weekdays, LocalTime From, LocalTime To);

/// <summary>Care expected from a clinic or another agency; a nurse visit is planned only when it is not reported in time.</summary>
public sealed record OutsideCare(PatientId Patient, LineId? Line, string Where, LocalDate ExpectedOn, LocalDateTime FallBackFrom);
