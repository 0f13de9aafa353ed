using System.Collections.Immutable;
using HomeLine.Planning.Checking;
using NodaTime;

namespace HomeLine.Agency.WeekPlanning;

/// <summary>The week as the page draws it: nurses by days, visits to time, what is unmet beside it.</summary>
/// <param name="Week">The visits, with labels.</param>
/// <param name="IsDraft">A proposal nobody outside has seen.</param>
/// <param name="Days">The days, in order.</param>
/// <param name="Nurses">A row for each nurse, in roster order.</param>
/// <param name="Unmet">Needs nobody covers, with reasons and the cheapest relaxations.</param>
/// <param name="Check">The independent checker's verdict on exactly this week.</param>
/// <param name="PlannedAt">When it was made.</param>
public sealed record WeekBoard(
    PlannedWeek Week,
    bool IsDraft,
    ImmutableArray<LocalDate> Days,
    ImmutableArray<NurseRow> Nurses,
    ImmutableArray<UnmetNeed> Unmet,
    CheckReport Check,
    Instant PlannedAt)
{
    /// <summary>Free slots of each day for care nobody planned, against the reserve of policy.</summary>
    public ImmutableArray<DayReserve> Reserve { get; init; } = [];
}

/// <summary>One nurse's row.</summary>
public sealed record NurseRow(string NurseId, string Name, string Credential, ImmutableArray<NurseDayCell> Days)
{
    /// <summary>The towns she belongs to this week: the one nearest her home first, then those of her visits.</summary>
    public ImmutableArray<string> Areas { get; init; } = [];
}

/// <summary>One nurse's day: shift, stops to time, driving.</summary>
public sealed record NurseDayCell(
    LocalDate Day,
    LocalTime? ShiftFrom,
    LocalTime? ShiftTo,
    string Absence,
    ImmutableArray<BoardStop> Stops,
    int DrivingMinutes,
    int HomeMinutes);

/// <summary>One visit in a nurse's day.</summary>
public sealed record BoardStop(
    WeekVisit Visit,
    string PatientName,
    string Place,
    bool AsSecond,
    int TravelBefore,
    LocalTime End,
    bool HasLateCare,
    ImmutableArray<string> Why)
{
    /// <summary>Lines of the patient that must not be used as usual, each with its reason.</summary>
    public ImmutableArray<string> Locks { get; init; } = [];

    /// <summary>A place held for a referral, and nobody's visit yet.</summary>
    public bool IsHeldPlace => Mending.HeldPlaces.IsHeld(Visit.Id);

    /// <summary>Where specimens are handed in after it; empty for nowhere.</summary>
    public HandIn? HandIn { get; init; }

    /// <summary>Minutes of driving there.</summary>
    public int TravelToHandIn { get; init; }

    /// <summary>Length of the arrival range a family is told, minutes; the agency's policy.</summary>
    public int ToldMinutes { get; init; }
}
