using System.Collections.Immutable;

namespace HomeLine.Exchange.Csv;

/// <summary>Collects every problem of a reading, and the questions that must be put to the person once.</summary>
internal sealed class ProblemList
{
    private const int ShownCharacters = 80;

    // Beyond this a person starts over from the file's beginning anyway, and a hostile file must not fill the memory.
    private const int MostListed = 50_000;
    private readonly List<RowProblem> problems = [];
    private int unlisted;

    public bool AsksForDateOrder { get; set; }

    public char? AsksForSeparator { get; set; }

    public bool Any => problems.Count > 0;

    public void Add(string file, int line, string column, string value, string reason)
    {
        if (problems.Count == MostListed) unlisted++;
        else problems.Add(new RowProblem(file, line, column, value.Length <= ShownCharacters ? value : value[..ShownCharacters] + "…", reason));
    }

    public ImmutableArray<RowProblem> InOrder()
    {
        IEnumerable<RowProblem> ordered = problems.OrderBy(problem => problem.File, StringComparer.Ordinal).ThenBy(problem => problem.Line);
        return unlisted == 0
            ? [.. ordered]
            : [.. ordered, new RowProblem(problems[^1].File, problems[^1].Line, "", "", $"From here on {unlisted} more problems are not listed.")];
    }
}
