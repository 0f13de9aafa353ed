using HomeLine.LineCare.Lines;
using HomeLine.LineCare.Windows;
using NodaTime;

namespace HomeLine.LineCare.Tests.Naive;

/// <summary>One line of the answer, stripped to what two readers of the same rules have to agree on.</summary>
internal sealed record Finding(
    CareItem Item, string? Line, string? Lumen, string? Order, WindowStanding Standing, Instant Opens, Instant Target, Instant LateFrom,
    LocalDate OpensOn, LocalDate LastDay, PerformerKind Owner, int SealClass, string? Anchor, string Rule)
{
    public static Finding Of(DueWindow window) => new(
        window.Item, window.Line?.Value, window.Lumen, window.Order, window.Standing, window.Opens, window.Target, window.LateFrom,
        window.OpensOn, window.LastDay, window.Owner, window.SealClass, window.Because.Anchor?.Value, window.Because.RuleId);
}

/// <summary>The whole answer for one patient: windows, what was left out on purpose, locks, questions, and whether planning pauses.</summary>
internal sealed record Findings(List<string> Windows, List<string> Waived, List<string> Locks, List<string> Questions, bool OnHold)
{
    public static Findings Of(CareAnswer answer) => new(
        Sorted(answer.Windows.Select(window => Finding.Of(window).ToString())),
        Sorted(answer.Waived.Select(waived => Finding.Of(waived.Window).ToString())),
        Sorted(answer.Locks.Select(locked => $"{locked.Line} {locked.Lumen}")),
        Sorted(answer.Decisions.Select(decision => $"{decision.Line} {decision.Code}").Distinct()),
        answer.OnHold is not null);

    public static List<string> Sorted(IEnumerable<string> lines) => [.. lines.Order(StringComparer.Ordinal)];

    /// <summary>What one says and the other does not; empty when they agree.</summary>
    public string Against(Findings other) => string.Join('\n',
        Lines().Except(other.Lines(), StringComparer.Ordinal).Select(line => $"engine only: {line}")
            .Concat(other.Lines().Except(Lines(), StringComparer.Ordinal).Select(line => $"naive only:  {line}")));

    private IEnumerable<string> Lines() => Numbered("due", Windows).Concat(Numbered("waived", Waived)).Concat(Numbered("lock", Locks))
        .Concat(Numbered("question", Questions)).Append($"on hold {OnHold}");

    private static IEnumerable<string> Numbered(string what, List<string> lines) =>
        lines.GroupBy(line => line).SelectMany(group => group.Select((line, i) => $"{what} {line}{(i > 0 ? $" again {i}" : "")}"));
}
