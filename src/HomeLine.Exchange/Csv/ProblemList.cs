using System.Collections.Immutable;

namespace HomeLine.Exchange.Csv;

/// <summary>Collects every problem of a reading, and the questions that must be put to the person once.</summary>
internal sealed class ProblemList
{
    private const int ShownCharacters = 80;
    private readonly List<RowProblem> problems = [];

    public bool AsksForDateOrder { get; set; }

    public char? AsksForSeparator { get; set; }

    public bool Any => problems.Count > 0;

    public void Add(string file, int line, string column, string value, string reason) =>
        problems.Add(new RowProblem(file, line, column, value.Length <= ShownCharacters ? value : value[..ShownCharacters] + "…", reason));

    public ImmutableArray<RowProblem> InOrder() =>
        [.. problems.OrderBy(problem => problem.File, StringComparer.Ordinal).ThenBy(problem => problem.Line)];
}
