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
}
