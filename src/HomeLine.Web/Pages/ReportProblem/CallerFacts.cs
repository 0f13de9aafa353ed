using System.Collections.Immutable;
using HomeLine.Agency.Reports;
using HomeLine.LineCare.Ledger;
using HomeLine.LineCare.Lines;
using HomeLine.LineCare.RedFlags;
using NodaTime;

namespace HomeLine.Web.Pages.ReportProblem;

/// <summary>Who calls about which line, when it was seen, and their own words.</summary>
public sealed record CallerFacts(LineId Line, string LineWords, string Caller, Instant SeenAt, string InTheirWords)
{
    public ProblemReport ToReport(PatientId patient, ImmutableDictionary<string, ScreenAnswer> answers, SealFinding finding) => new()
    {
        Patient = patient,
        Line = Line,
        Caller = Caller,
        SeenAt = SeenAt,
        Answers = answers,
        Finding = finding,
        InTheirWords = InTheirWords,
    };
}
