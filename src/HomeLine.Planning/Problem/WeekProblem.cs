using System.Collections.Immutable;
using NodaTime;

namespace HomeLine.Planning.Problem;

/// <summary>
/// One planning problem: who needs what, who can do it, and how long the roads are.
/// All times are whole <b>plan minutes</b>: minutes of branch wall-clock time since 00:00 of <see cref="FirstDay"/>,
/// so day <c>d</c> runs from <c>1440·d</c> to <c>1440·(d+1)</c>. Translating zones and clock changes is the caller's business.
/// </summary>
public sealed record WeekProblem
{
    /// <summary>Day 0.</summary>
    public required LocalDate FirstDay { get; init; }

    /// <summary>Number of planning days, 1 to 28.</summary>
    public required int DayCount { get; init; }

    /// <summary>The plan minute of "now": nothing may start before it.</summary>
    public int Now { get; init; }

    /// <summary>Travel times between places.</summary>
    public required ITravelTimes Travel { get; init; }

    /// <summary>The nurses, in a fixed order.</summary>
    public required ImmutableArray<Nurse> Nurses { get; init; }

    /// <summary>The patients, in a fixed order.</summary>
    public required ImmutableArray<PatientHome> Patients { get; init; }

    /// <summary>What must be done.</summary>
    public required ImmutableArray<CareTask> Tasks { get; init; }

    /// <summary>Lengths and limits that hold for everybody.</summary>
    public required PlanningRules Rules { get; init; }

    /// <summary>Where a specimen can be handed in.</summary>
    public ImmutableArray<DropPoint> DropPoints { get; init; } = [];

    /// <summary>Visits that must stay as they are: under way, done, or about to start. Their tasks are in <see cref="Tasks"/>.</summary>
    public ImmutableArray<string> FrozenVisits { get; init; } = [];

    /// <summary>The plan people were told about, when re-planning: disruption is measured against it and a warm start begins there.</summary>
    public Plans.WeekPlan? Published { get; init; }
}

/// <summary>Minutes to travel between two places.</summary>
public interface ITravelTimes
{
    /// <summary>Whole minutes from door to door, parking included; <see cref="Unreachable"/> when there is no way.</summary>
    /// <param name="from">Index of the place left.</param>
    /// <param name="to">Index of the place reached.</param>
    int Minutes(int from, int to);

    /// <summary>The value that means there is no way.</summary>
    const int Unreachable = 100_000;
}

/// <summary>Lengths and limits that hold for everybody. Values come from the agency's policy.</summary>
/// <param name="DocumentationMinutes">Charting after each visit, before driving on.</param>
/// <param name="RestBetweenShiftsMinutes">Least rest between two working days of one nurse.</param>
/// <param name="ToldRangeMinutes">Length of the arrival range a family is told; a start that moves inside it disturbs nobody.</param>
/// <param name="LateStepPoints">Risk points per weight for the first late day; each further day adds twice that plus one step more.</param>
public sealed record PlanningRules(
    int DocumentationMinutes,
    int RestBetweenShiftsMinutes,
    int ToldRangeMinutes,
    int LateStepPoints)
{
    /// <summary>A visit that starts within this many minutes of now keeps nurse and time. Our own default: 60.</summary>
    public int FrozenAheadMinutes { get; init; } = 60;

    /// <summary>
    /// What a visit costs in the work tier besides its minutes on the road: bundling wins when it saves a knock on the door.
    /// Our own default: 30 minutes.
    /// </summary>
    public int VisitPriceMinutes { get; init; } = 30;

    /// <summary>What a minute of overtime costs in the work tier, in minutes. Our own default: 2.</summary>
    public int OvertimeFactor { get; init; } = 2;
}

/// <summary>A place where specimens are handed in.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Place">Its place index.</param>
/// <param name="Cutoffs">Plan minutes of the courier's collections, ascending.</param>
public sealed record DropPoint(string Name, int Place, ImmutableArray<int> Cutoffs);
