using System.Collections.Immutable;
using HomeLine.Agency.Mending;
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

    /// <summary>When the answers were worked out anew; empty while they are those of the report itself.</summary>
    public Instant? AnsweredAt { get; init; }
}

/// <summary>A stopped flow. There is deliberately no visit time in it.</summary>
public sealed record StoppedFlow(
    ImmutableArray<string> Wording,
    ImmutableArray<string> LinesLocked,
    ImmutableArray<string> VisitsHeld,
    ImmutableArray<PersonToTell> ToTell);

/// <summary>The answers offered for a same-day problem.</summary>
/// <param name="SealClass">1, 2 or 3 after raising; 1 is the most urgent.</param>
/// <param name="TargetBy">When the visit should have started.</param>
/// <param name="LastAcceptable">When it must have started.</param>
/// <param name="Bundle">What is done in the visit.</param>
/// <param name="InterimWording">What to read to the caller until the nurse comes.</param>
/// <param name="CaregiverMay">Set when a validated caregiver may change the dressing at once.</param>
/// <param name="Answers">At most three, best first.</param>
/// <param name="Dominated">Workable, but another answer is better on every count.</param>
/// <param name="RuledOut">Nurses who cannot, and why.</param>
public sealed record OfferedAnswers(
    int SealClass,
    Instant TargetBy,
    Instant LastAcceptable,
    ImmutableArray<string> Bundle,
    ImmutableArray<string> InterimWording,
    string? CaregiverMay,
    ImmutableArray<AnswerInWords> Answers,
    ImmutableArray<AnswerInWords> Dominated,
    ImmutableArray<RuledOut> RuledOut);

/// <summary>One answer, ready to read and to apply.</summary>
/// <param name="Key">Names the answer within its report: <c>A</c>, <c>B</c> …</param>
/// <param name="Title">Who comes and when.</param>
/// <param name="Visit">The new visit.</param>
/// <param name="NurseName">Who comes.</param>
/// <param name="DrivingDelta">Minutes of driving added that day.</param>
/// <param name="MeetsTarget">Whether the visit starts within the target.</param>
/// <param name="Disruption">Points of the disruption table.</param>
/// <param name="Moves">Families whose told range is left, with by how much.</param>
/// <param name="Replaces">Visits no longer needed.</param>
/// <param name="Frees">Time nurses get back.</param>
/// <param name="ToTell">Everybody who must be told, and nobody else.</param>
/// <param name="NextWindow">When the dressing is next due once this visit is made.</param>
/// <param name="OrderLedger">What the visit does to the as-needed visits ordered.</param>
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
    string NextWindow,
    string OrderLedger)
{
    /// <summary>Length of the arrival range a family is told, minutes; the agency's policy.</summary>
    public int ToldMinutes { get; init; }

    /// <summary>What follows in the days after, once it is done: next due dates, visits no longer needed.</summary>
    public ImmutableArray<string> After { get; init; } = [];

    /// <summary>The new visit, those that move for it and those it replaces or shortens, each before and after. Empty in reports kept before this was.</summary>
    public ImmutableArray<VisitChange> Changes { get; init; } = [];
}

/// <summary>Somebody who must be told, how, and by when.</summary>
public sealed record PersonToTell(string Who, string Channel, string What, Instant By)
{
    /// <summary>Telephone number to dial; empty when none is known or it is no call.</summary>
    public string Number { get; init; } = "";

    /// <summary>The nurse, when it is one of ours: a message without any clinical content can go to her as well.</summary>
    public string? Nurse { get; init; }

    /// <summary>By the published times she is on the road until then: nothing is sent to her, and she is called after it. Empty when she is not.</summary>
    public Instant? NotBefore { get; init; }
}
