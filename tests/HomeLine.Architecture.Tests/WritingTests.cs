using System.Text.RegularExpressions;

namespace HomeLine.Architecture.Tests;

/// <summary>What holds for everything written in the repository.</summary>
public partial class WritingTests
{
    /// <summary>Our own limit: a longer file is more than one thing.</summary>
    private const int MostLines = 400;

    [Fact]
    public void A_source_file_stays_short_enough_to_be_one_thing()
    {
        IEnumerable<string> tooLong = Repository.WrittenCode("src/")
            .Select(path => (Path: path, Lines: Repository.Read(path).Count(letter => letter == '\n')))
            .Where(file => file.Lines > MostLines)
            .Select(file => $"{file.Path}: {file.Lines} lines");

        Expect.Nothing(tooLong);
    }

    [Fact]
    public void No_text_names_a_path_of_somebodys_machine() => Expect.Nothing(Found(MachinePath(), Repository.TextFiles));

    [Fact]
    public void Nothing_is_left_for_later() =>
        Expect.Nothing(Found(LeftForLater(), Repository.WrittenCode("src/").Concat(Repository.WrittenCode("tests/"))));

    private static IEnumerable<string> Found(Regex pattern, IEnumerable<string> paths) =>
        from path in paths
        let lines = Repository.Read(path).Split('\n')
        from number in Enumerable.Range(0, lines.Length)
        where pattern.IsMatch(lines[number])
        select $"{path}:{number + 1}: {lines[number].Trim()}";

    // An absolute path into a home, a user's or a working folder; addresses on the web have a letter before the slash.
    [GeneratedRegex(@"(?<![\w.\-])/(?:home|Users|root|work|tmp/wt)/\w|[A-Za-z]:\\Users\\")]
    private static partial Regex MachinePath();

    [GeneratedRegex(@"\b(?:TO[D]O|FIX[M]E|HAC[K])\b|NotImplemented[E]xception")]
    private static partial Regex LeftForLater();
}
