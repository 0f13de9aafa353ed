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

    /// <summary>
    /// Times during which trips take other minutes than <see cref="Travel"/> says; they do not overlap. Planning, answers, mends, moves
    /// by hand and the checker keep to them.
    /// </summary>
    public ImmutableArray<RoadChange> RoadChanges { get; init; } = [];

    /// <summary>Hours in which everybody drives slower; they do not overlap. How they and <see cref="RoadChanges"/> are counted says <see cref="TripTimes"/>.</summary>
    public ImmutableArray<SlowHours> SlowHours { get; init; } = [];

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

    /// <summary>
    /// The published visits that keep nurse, second person, start and tasks: those named in <see cref="FrozenVisits"/>, those promised as frozen or
    /// done, and those told or published that start before or within <see cref="PlanningRules.FrozenAheadMinutes"/> of <see cref="Now"/>.
    /// </summary>
    public ImmutableArray<Plans.PlannedVisit> FixedVisits()
    {
        if (Published is not { Visits.IsDefault: false } published) return [];
        var frozen = FrozenVisits.ToHashSet(StringComparer.Ordinal);
        return [.. published.Visits.Where(v => IsFixed(v, frozen))];
    }

    private bool IsFixed(Plans.PlannedVisit visit, HashSet<string> frozen) => visit.Promise switch
    {
        Plans.PromiseState.Frozen or Plans.PromiseState.Done => true,
        Plans.PromiseState.Published or Plans.PromiseState.Told when visit.Start <= Now + Rules.FrozenAheadMinutes => true,
        _ => frozen.Contains(visit.Id),
    };
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

/// <summary>A place where specimens are handed in.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Place">Its place index.</param>
/// <param name="Cutoffs">Plan minutes of the courier's collections, ascending.</param>
public sealed record DropPoint(string Name, int Place, ImmutableArray<int> Cutoffs);
