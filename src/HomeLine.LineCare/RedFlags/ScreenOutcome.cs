using System.Collections.Immutable;

namespace HomeLine.LineCare.RedFlags;

/// <summary>Where the screen stands.</summary>
/// <param name="Class">The class that applies so far.</param>
/// <param name="Stopped">The question that stopped the flow, when one did. A stopped screen never leads to the planner.</param>
/// <param name="Next">The next question to ask; empty when stopped or complete.</param>
/// <param name="MaySchedule">True only when every emergency and urgent question was answered no.</param>
/// <param name="Wording">Lines to read aloud or act on, in order.</param>
public sealed record ScreenOutcome(
    ScreenClass Class,
    ScreenQuestion? Stopped,
    ScreenQuestion? Next,
    bool MaySchedule,
    ImmutableArray<string> Wording);
