using System.Collections.Immutable;
using HomeLine.LineCare.RedFlags;

namespace HomeLine.Web.Pages.ReportProblem;

/// <summary>The answers given so far and what the screen makes of them.</summary>
public sealed record ScreenAnswers(ImmutableDictionary<string, ScreenAnswer> Given, ScreenOutcome Outcome);
