using System.Collections.Immutable;

namespace HomeLine.Planning.Plans;

/// <summary>What has been promised about a visit, from nothing to done.</summary>
public enum PromiseState
{
    /// <summary>Only proposed.</summary>
    Draft,

    /// <summary>Published to nurses.</summary>
    Published,

    /// <summary>The family was told an arrival range.</summary>
    Told,

    /// <summary>Starts within the hour, or is under way: frozen.</summary>
    Frozen,

    /// <summary>Done.</summary>
    Done,
}

/// <summary>One visit of a plan.</summary>
public sealed record PlannedVisit
{
    /// <summary>Identifier, stable while the visit keeps its purpose.</summary>
    public required string Id { get; init; }

    /// <summary>The patient.</summary>
    public required string Patient { get; init; }

    /// <summary>The nurse who does the care.</summary>
    public required string Nurse { get; init; }

    /// <summary>The second person of a two-person visit, same start.</summary>
    public string? Second { get; init; }

    /// <summary>Start, plan minutes: arrival at the door.</summary>
    public required int Start { get; init; }

    /// <summary>Minutes in the home, interpreter included, charting not.</summary>
    public required int Minutes { get; init; }

    /// <summary>The tasks done, in order of identifiers.</summary>
    public required ImmutableArray<string> Tasks { get; init; }

    /// <summary>What has been promised.</summary>
    public PromiseState Promise { get; init; }

    /// <summary>Start of the arrival range the family was told, plan minutes; empty when not told.</summary>
    public int? ToldFrom { get; init; }
}

/// <summary>A week's plan: the visits, what stays unmet and why, and its score.</summary>
/// <param name="Visits">Visits ordered by start, then nurse.</param>
/// <param name="Unmet">Tasks left out, most at risk first.</param>
/// <param name="Score">The plan's score, as the checker computes it.</param>
public sealed record WeekPlan(ImmutableArray<PlannedVisit> Visits, ImmutableArray<UnmetTask> Unmet, PlanScore Score);

/// <summary>A task no visit does, why, and what would place it.</summary>
/// <param name="Task">The task's identifier.</param>
/// <param name="Reasons">Why, the most binding first.</param>
/// <param name="Relaxations">The cheapest changes that would place it, cheapest first.</param>
public sealed record UnmetTask(string Task, ImmutableArray<PlanningReason> Reasons, ImmutableArray<Relaxation> Relaxations);

/// <summary>A reason with its stable code and a possible action; every code is explained in docs/reasons.md.</summary>
/// <param name="Code">Stable code, for example <c>skill-missing</c>.</param>
/// <param name="Sentence">One plain sentence with the names and amounts.</param>
/// <param name="Action">What somebody could do about it.</param>
public sealed record PlanningReason(string Code, string Sentence, string Action);

/// <summary>A change that would place an unmet task.</summary>
/// <param name="Code">Stable code, for example <c>overtime</c>.</param>
/// <param name="Sentence">One plain sentence with the amount.</param>
/// <param name="CostMinutes">How much it costs, minutes, for ordering.</param>
public sealed record Relaxation(string Code, string Sentence, int CostMinutes);

/// <summary>
/// The score, compared tier by tier, lower is better; never a weighted sum. Tiers of the week:
/// critical, risk, duties, work (visits and paid minutes), people (continuity, wishes), unused life, tie-break.
/// </summary>
public readonly record struct PlanScore(long Critical, long Risk, long Duties, long Work, long People, long UnusedLife)
    : IComparable<PlanScore>
{
    /// <inheritdoc/>
    public int CompareTo(PlanScore other)
    {
        int c = Critical.CompareTo(other.Critical);
        if (c != 0) return c;
        c = Risk.CompareTo(other.Risk);
        if (c != 0) return c;
        c = Duties.CompareTo(other.Duties);
        if (c != 0) return c;
        c = Work.CompareTo(other.Work);
        if (c != 0) return c;
        c = People.CompareTo(other.People);
        return c != 0 ? c : UnusedLife.CompareTo(other.UnusedLife);
    }

    /// <summary>Whether <paramref name="left"/> is better.</summary>
    public static bool operator <(PlanScore left, PlanScore right) => left.CompareTo(right) < 0;

    /// <summary>Whether <paramref name="left"/> is worse.</summary>
    public static bool operator >(PlanScore left, PlanScore right) => left.CompareTo(right) > 0;

    /// <summary>Whether <paramref name="left"/> is at least as good.</summary>
    public static bool operator <=(PlanScore left, PlanScore right) => left.CompareTo(right) <= 0;

    /// <summary>Whether <paramref name="left"/> is no better.</summary>
    public static bool operator >=(PlanScore left, PlanScore right) => left.CompareTo(right) >= 0;
}
