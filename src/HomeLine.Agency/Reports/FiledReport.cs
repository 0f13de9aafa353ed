using HomeLine.LineCare.Lines;
using NodaTime;

namespace HomeLine.Agency.Reports;

/// <summary>What became of a report.</summary>
public enum ReportOutcome
{
    /// <summary>Taken down, not answered yet.</summary>
    Open,

    /// <summary>The screen stopped the flow; a licensed person decides.</summary>
    Stopped,

    /// <summary>Answers were offered.</summary>
    Offered,

    /// <summary>One of them was applied.</summary>
    Applied,

    /// <summary>The screen had stopped the flow, and a licensed person has decided.</summary>
    Decided,

    /// <summary>Closed without a visit, with the reason.</summary>
    Closed,
}

/// <summary>A problem report as it is kept, with what was answered and why.</summary>
public sealed record FiledReport
{
    public required string Id { get; init; }
    public required PatientId Patient { get; init; }
    public required LineId Line { get; init; }
    public required Instant FiledAt { get; init; }
    public required string FiledBy { get; init; }

    /// <summary>The report itself, with the screen's answers.</summary>
    public required ProblemReport Report { get; init; }
    public ReportOutcome Outcome { get; init; }

    /// <summary>What the program answered: stopped, or the offers as they were shown.</summary>
    public ReportResult? Result { get; init; }

    /// <summary>Key of the applied answer.</summary>
    public string? AppliedAnswer { get; init; }

    /// <summary>Why that answer, or why none.</summary>
    public string Reason { get; init; } = "";
}
