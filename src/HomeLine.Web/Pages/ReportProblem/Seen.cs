using System.Collections.Immutable;
using HomeLine.LineCare.Ledger;
using HomeLine.LineCare.RedFlags;

namespace HomeLine.Web.Pages.ReportProblem;

/// <summary>What the caller sees: at the dressing, and the screen's same-day answers that follow from it.</summary>
public sealed record Seen(SealFinding Finding, ImmutableDictionary<string, ScreenAnswer> SameDay);
