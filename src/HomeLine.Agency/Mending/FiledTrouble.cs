using HomeLine.Agency.Reports;
using HomeLine.LineCare.Lines;
using NodaTime;

namespace HomeLine.Agency.Mending;

/// <summary>Where a trouble stands.</summary>
public enum TroubleState
{
    /// <summary>Answers or a next step wait.</summary>
    Open,

    /// <summary>The symptom screen stopped it; a licensed person decides.</summary>
    Stopped,

    /// <summary>One answer was applied.</summary>
    Applied,

    /// <summary>Closed without changing the plan, with the reason.</summary>
    Closed,
}

/// <summary>A trouble as it is kept, with what was answered and why.</summary>
public sealed record FiledTrouble
{
    /// <summary>For example <c>T3</c>.</summary>
    public required string Id { get; init; }

    /// <summary>What it is in a line, for lists.</summary>
    public required string Title { get; init; }

    /// <summary>What was told.</summary>
    public required TroubleEntry Entry { get; init; }

    /// <summary>The patient it is about, when it is about one.</summary>
    public PatientId? Patient { get; init; }

    /// <summary>The agency's now when it was filed; the answers were looked for then.</summary>
    public required Instant FiledAt { get; init; }
    public required string FiledBy { get; init; }
    public TroubleState State { get; init; }

    /// <summary>First day of the week the answers change.</summary>
    public required LocalDate Week { get; init; }

    /// <summary>The published version they were found on.</summary>
    public required int WeekVersion { get; init; }

    /// <summary>What was answered; empty when the screen stopped.</summary>
    public MendOffer? Offer { get; init; }

    /// <summary>The report that holds the stop, when the screen stopped.</summary>
    public string? StoppedAs { get; init; }

    /// <summary>Key of the applied answer.</summary>
    public string? AppliedAnswer { get; init; }

    /// <summary>Why that answer, or why it was closed.</summary>
    public string Reason { get; init; } = "";

    /// <summary>When it was applied or closed.</summary>
    public Instant? EndedAt { get; init; }
}

/// <summary>What the person who filed a trouble sees: the stop, or what follows.</summary>
/// <param name="Filed">As kept.</param>
/// <param name="Stop">Set when the screen stopped; there is no visit time in it.</param>
public sealed record TroubleResult(FiledTrouble Filed, ReportResult? Stop);
