using System.Collections.Immutable;
using HomeLine.LineCare.Lines;
using HomeLine.Planning.Plans;
using NodaTime;

namespace HomeLine.Agency.WeekPlanning;

/// <summary>A week's visits as the agency keeps them: in branch time, with patients and care by name.</summary>
public sealed record PlannedWeek
{
    /// <summary>First day of the week.</summary>
    public required LocalDate FirstDay { get; init; }

    /// <summary>Grows with every published change; 0 for a draft never published.</summary>
    public int Version { get; init; }

    public required ImmutableArray<WeekVisit> Visits { get; init; }

    /// <summary>Needs the plan leaves unmet, with reasons, as planned.</summary>
    public ImmutableArray<UnmetNeed> Unmet { get; init; } = [];
}

/// <summary>One visit of a stored week.</summary>
public sealed record WeekVisit
{
    public required string Id { get; init; }
    public required PatientId Patient { get; init; }
    public required string Nurse { get; init; }

    /// <summary>The second person of a two-person visit.</summary>
    public string? Second { get; init; }
    public required LocalDate Day { get; init; }

    /// <summary>Arrival at the door, branch time.</summary>
    public required LocalTime Start { get; init; }

    /// <summary>Minutes in the home.</summary>
    public required int Minutes { get; init; }
    public required ImmutableArray<VisitCare> Care { get; init; }
    public PromiseState Promise { get; init; }

    /// <summary>Start of the arrival range the family was told, branch time.</summary>
    public LocalTime? ToldFrom { get; init; }

    /// <summary>Why nobody may ring the bell until a licensed person has decided; empty when the visit goes ahead.</summary>
    public string? Held { get; init; }
}

/// <summary>One item of care in a visit. The key names the need it answers (patient, item, line, lumen, order), not the day.</summary>
public sealed record VisitCare(string Key, string Label);

/// <summary>A need the plan leaves unmet.</summary>
public sealed record UnmetNeed(
    PatientId Patient,
    string Label,
    ImmutableArray<PlanningReason> Reasons,
    ImmutableArray<Relaxation> Relaxations)
{
    /// <summary>The last day on time; empty where none is known, also in a week stored before it was kept.</summary>
    public LocalDate? LastDay { get; init; }
}
