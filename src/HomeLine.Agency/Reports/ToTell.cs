using System.Collections.Immutable;
using NodaTime;

namespace HomeLine.Agency.Reports;

/// <summary>One entry of the list of people to tell, with its tick.</summary>
public sealed record ToTell
{
    public required string Id { get; init; }

    /// <summary>The report it follows from; empty when it follows from publishing.</summary>
    public string? Report { get; init; }

    /// <summary>First day of the week it belongs to.</summary>
    public required LocalDate Week { get; init; }
    public required PersonToTell Person { get; init; }
    public Instant? DoneAt { get; init; }
    public string DoneBy { get; init; } = "";

    /// <summary>Tries that did not reach them, in order.</summary>
    public ImmutableArray<ToldTry> Tries { get; init; } = [];
}

/// <summary>One try that did not reach somebody.</summary>
/// <param name="At">When, by the agency's now.</param>
/// <param name="By">Who tried.</param>
/// <param name="What">What came of it, for example <c>no answer</c>.</param>
public sealed record ToldTry(Instant At, string By, string What);
