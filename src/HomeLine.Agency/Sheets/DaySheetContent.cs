using System.Collections.Immutable;
using HomeLine.Agency.WeekPlanning;
using NodaTime;

namespace HomeLine.Agency.Sheets;

/// <summary>A nurse's day on paper: usable with no device. No diagnosis, no therapy names.</summary>
public sealed record DaySheetContent
{
    public required string AgencyName { get; init; }
    public required string NurseName { get; init; }
    public required LocalDate Day { get; init; }
    public required LocalDateTime PrintedAt { get; init; }

    /// <summary>Version of the published plan the sheet was printed from.</summary>
    public required int PlanVersion { get; init; }
    public required string CoordinatorPhone { get; init; }
    public required string OnCallPhone { get; init; }
    public required string EmergencyNumber { get; init; }
    public required ImmutableArray<DayStop> Stops { get; init; }
    public required int DrivingMinutes { get; init; }

    /// <summary>What the day is paid for by estimate, and by which rule; empty for nothing to say.</summary>
    public string Paid { get; init; } = "";
    public bool IsDemo { get; init; }
}

/// <summary>One door of the day.</summary>
public sealed record DayStop
{
    public required LocalTime Start { get; init; }
    public required LocalTime ToldFrom { get; init; }
    public required LocalTime ToldTo { get; init; }
    public required string PatientName { get; init; }
    public required string Address { get; init; }
    public required string Phone { get; init; }
    public required string AccessNotes { get; init; }
    public required int Minutes { get; init; }
    public required int TravelMinutesBefore { get; init; }

    /// <summary>Where specimens are handed in after it; empty for nowhere.</summary>
    public HandIn? HandIn { get; init; }

    /// <summary>Minutes of driving there.</summary>
    public int TravelToHandIn { get; init; }

    /// <summary>What to do, in order, with the last acceptable day of each.</summary>
    public required ImmutableArray<string> ToDo { get; init; }

    /// <summary>What to bring.</summary>
    public required ImmutableArray<string> Bring { get; init; }

    /// <summary>What is unusual: allergy, lock, two persons, decision open.</summary>
    public required ImmutableArray<string> Unusual { get; init; }

    /// <summary>Told range in the patient's own zone when it differs from the branch's; empty otherwise.</summary>
    public string OtherZoneRange { get; init; } = "";
}
