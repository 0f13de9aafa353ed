using System.Collections.Immutable;
using NodaTime;

namespace HomeLine.Agency.Visits;

/// <summary>Who reads a summary of a visit.</summary>
public enum SummaryReader
{
    /// <summary>Everything that was written down, in the trade's words.</summary>
    Prescriber,

    /// <summary>What was done and what comes next, in plain words.</summary>
    Patient,
}

/// <summary>A signed visit in words, section by section: the page and the paper read the same, because both are this.</summary>
public sealed record VisitSummaryContent
{
    public required string AgencyName { get; init; }
    public required string RecordId { get; init; }
    public required SummaryReader Reader { get; init; }
    public required string PatientName { get; init; }
    public required LocalDate Day { get; init; }
    public required ImmutableArray<SummarySection> Sections { get; init; }

    /// <summary>What a reader must see first: amended, waiting for a signature, a lock.</summary>
    public ImmutableArray<string> Warnings { get; init; } = [];
    public required LocalDateTime PrintedAt { get; init; }
    public string DayPhone { get; init; } = "";
    public string OnCallPhone { get; init; } = "";
    public string EmergencyNumber { get; init; } = "";
    public bool IsDemo { get; init; }
}

/// <summary>One section.</summary>
public sealed record SummarySection(string Title, ImmutableArray<SummaryLine> Lines);

/// <summary>A label and what was written; the label may be empty.</summary>
public sealed record SummaryLine(string Label, string Text);
