using System.Collections.Immutable;
using HomeLine.Agency.WeekPlanning;
using HomeLine.LineCare.Ledger;
using HomeLine.LineCare.Lines;
using HomeLine.LineCare.RedFlags;
using HomeLine.Planning.Answers;
using NodaTime;

namespace HomeLine.Agency.Reports;

/// <summary>A problem told to the agency. The screen's answers come first; nothing is searched before they allow it.</summary>
public sealed record ProblemReport
{
    public required PatientId Patient { get; init; }
    public required LineId Line { get; init; }

    /// <summary>Who called, for example <c>spouse</c>.</summary>
    public required string Caller { get; init; }

    /// <summary>When it was seen, branch time.</summary>
    public required Instant SeenAt { get; init; }

    /// <summary>Answers by question id, in the order asked.</summary>
    public required ImmutableDictionary<string, ScreenAnswer> Answers { get; init; }

    /// <summary>What is wrong with the dressing.</summary>
    public required SealFinding Finding { get; init; }

    /// <summary>The caller's own words; screened for words that ask.</summary>
    public string InTheirWords { get; init; } = "";
}

/// <summary>What follows from a report: stopped with what to say and do, or answers to choose from.</summary>
public sealed record ReportResult
{
    public required string ReportId { get; init; }
    public required ScreenOutcome Screen { get; init; }

    /// <summary>Set when the flow stopped: what was locked, put on hold and who was alerted.</summary>
    public StoppedFlow? Stopped { get; init; }

    /// <summary>Set when scheduling is allowed.</summary>
    public OfferedAnswers? Offer { get; init; }
}

/// <summary>A stopped flow. There is deliberately no visit time in it.</summary>
public sealed record StoppedFlow(
    ImmutableArray<string> Wording,
    ImmutableArray<string> LinesLocked,
    ImmutableArray<string> VisitsHeld,
    ImmutableArray<PersonToTell> ToTell);

/// <summary>The answers offered for a same-day problem.</summary>
public sealed record OfferedAnswers(
    int SealClass,
    Instant TargetBy,
    Instant LastAcceptable,
    ImmutableArray<string> Bundle,
    ImmutableArray<string> InterimWording,
    ImmutableArray<AnswerInWords> Answers,
    ImmutableArray<AnswerInWords> Dominated,
    ImmutableArray<RuledOut> RuledOut);

/// <summary>One answer, ready to read and to apply.</summary>
public sealed record AnswerInWords(
    string Key,
    string Title,
    WeekVisit Visit,
    string NurseName,
    int DrivingDelta,
    bool MeetsTarget,
    int Disruption,
    ImmutableArray<string> Moves,
    ImmutableArray<string> Replaces,
    ImmutableArray<string> Frees,
    ImmutableArray<PersonToTell> ToTell,
    string NextWindow);

/// <summary>Somebody who must be told, how, and by when.</summary>
public sealed record PersonToTell(string Who, string Channel, string What, Instant By);
