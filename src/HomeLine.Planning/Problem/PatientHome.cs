using System.Collections.Immutable;

namespace HomeLine.Planning.Problem;

/// <summary>A patient as the planner sees one: where, when, and by whom.</summary>
public sealed record PatientHome
{
    /// <summary>Identifier, for example <c>P03</c>.</summary>
    public required string Id { get; init; }

    /// <summary>Name as shown in reasons.</summary>
    public required string Name { get; init; }

    /// <summary>Place index of the home.</summary>
    public required int Place { get; init; }

    /// <summary>State whose licence the nurse needs at this home.</summary>
    public required string State { get; init; }

    /// <summary>
    /// Times within which a visit may start, plan minutes, both ends included, ascending and disjoint; empty for any time.
    /// </summary>
    public ImmutableArray<Span> StartSpans { get; init; } = [];

    /// <summary>Traits the nurse must have.</summary>
    public ImmutableArray<string> RequiredTraits { get; init; } = [];

    /// <summary>Traits the nurse must not have.</summary>
    public ImmutableArray<string> ExcludedTraits { get; init; } = [];

    /// <summary>Nurses the patient does not want.</summary>
    public ImmutableArray<string> RefusedNurses { get; init; } = [];

    /// <summary>Traits preferred; each missing one costs a soft point.</summary>
    public ImmutableArray<string> PreferredTraits { get; init; } = [];

    /// <summary>Trait without which a visit takes <see cref="InterpreterMinutes"/> longer, for example <c>language:vi</c>.</summary>
    public string? InterpreterUnless { get; init; }

    /// <summary>Extra minutes with an interpreter on the phone.</summary>
    public int InterpreterMinutes { get; init; }

    /// <summary>Nurses the patient knows, the usual one first.</summary>
    public ImmutableArray<string> KnownNurses { get; init; } = [];

    /// <summary>1, or 2 when two people must come together; the second needs no skill.</summary>
    public int CrewSize { get; init; } = 1;

    /// <summary>Nurse visits the orders allow in each calendar week of the horizon; safety visits open an order request instead.</summary>
    public ImmutableArray<WeekAllowance> Allowances { get; init; } = [];
}

/// <summary>A span of plan minutes, both ends included.</summary>
/// <param name="From">First minute.</param>
/// <param name="To">Last minute.</param>
public readonly record struct Span(int From, int To);

/// <summary>How many visits orders allow between two days of the horizon.</summary>
/// <param name="FirstDay">First day index, included.</param>
/// <param name="LastDay">Last day index, included.</param>
/// <param name="Visits">Ordered visits left, as-needed ones among them.</param>
public sealed record WeekAllowance(int FirstDay, int LastDay, int Visits);
