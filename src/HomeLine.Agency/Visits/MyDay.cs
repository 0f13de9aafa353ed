using System.Collections.Immutable;
using HomeLine.Agency.Kits;
using HomeLine.Agency.Sheets;
using HomeLine.Agency.WeekPlanning;
using NodaTime;

namespace HomeLine.Agency.Visits;

/// <summary>A nurse's day on her phone: the next door first, those that are recorded last.</summary>
public sealed record MyDay
{
    public required string Nurse { get; init; }
    public required string NurseName { get; init; }
    public required LocalDate Day { get; init; }

    /// <summary>Now, by branch time.</summary>
    public required LocalDateTime Now { get; init; }

    /// <summary>Version of the published plan; 0 when the week is not published.</summary>
    public required int PlanVersion { get; init; }
    public required ImmutableArray<MyStop> Stops { get; init; }
    public required int DrivingMinutes { get; init; }
    public string CoordinatorPhone { get; init; } = "";
    public string OnCallPhone { get; init; } = "";
    public string EmergencyNumber { get; init; } = "";

    /// <summary>The next door: the first that is not recorded and not held back.</summary>
    public MyStop? Next => Stops.FirstOrDefault(s => s.Recorded.IsEmpty);
}

/// <summary>One door.</summary>
/// <param name="Visit">The published visit.</param>
/// <param name="Sheet">What the day sheet says of it.</param>
/// <param name="Kit">What to bring.</param>
/// <param name="AsSecond">This nurse comes as the second person.</param>
/// <param name="Recorded">Identifiers of the records that stand.</param>
public sealed record MyStop(WeekVisit Visit, DayStop Sheet, KitList Kit, bool AsSecond, ImmutableArray<string> Recorded)
{
    /// <summary>The home asks for a sign on arrival and one when who went in is out again.</summary>
    public bool AsksForSigns { get; init; }

    /// <summary>The home is entered by two people only.</summary>
    public bool IsForTwo { get; init; }

    /// <summary>When somebody said that she arrived, branch time; empty while nobody has.</summary>
    public LocalTime? ArrivedAt { get; init; }

    /// <summary>When somebody said that she is out again, branch time; empty while nobody has.</summary>
    public LocalTime? OutAt { get; init; }
}
