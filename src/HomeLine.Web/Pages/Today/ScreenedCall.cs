using System.Collections.Immutable;
using HomeLine.Agency.Due;
using HomeLine.LineCare.RedFlags;
using HomeLine.Web.Pages.ReportProblem;

namespace HomeLine.Web.Pages.Today;

/// <summary>A call whose symptom questions were asked.</summary>
/// <param name="Patient">About whom.</param>
/// <param name="Facts">Which line, who calls.</param>
/// <param name="Answers">The screen's answers.</param>
public sealed record ScreenedCall(PatientOverview Patient, CallerFacts Facts, ImmutableDictionary<string, ScreenAnswer> Answers);
