using System.Text.RegularExpressions;

namespace HomeLine.Architecture.Tests;

/// <summary>What the documents point at is there.</summary>
public partial class DocumentTests
{
    public static TheoryData<string> Documents =>
        [.. Repository.Files.Where(path => path.EndsWith(".md", StringComparison.Ordinal))];

    [Theory]
    [MemberData(nameof(Documents))]
    public void A_link_leads_to_a_file_of_the_repository(string document)
    {
        string folder = Path.GetDirectoryName(document)!;
        IEnumerable<string> broken = Link().Matches(Repository.Read(document))
            .Select(link => link.Groups["target"].Value)
            .Where(target => !target.Contains(':', StringComparison.Ordinal))
            .Where(target => !Repository.Has(Path.Combine(folder, target)));

        Expect.Nothing(broken);
    }

    [Theory]
    [MemberData(nameof(Documents))]
    public void A_path_in_the_text_is_there(string document)
    {
        IEnumerable<string> missing = PathInText().Matches(Repository.Read(document))
            .Select(path => path.Groups["path"].Value)
            .Where(path => !Repository.Has(path));

        Expect.Nothing(missing);
    }

    [GeneratedRegex(@"\]\((?<target>[^)#\s]+)")]
    private static partial Regex Link();

    // A path between backticks; an ellipsis, a star or a placeholder in capitals makes it an example.
    [GeneratedRegex(@"`(?<path>(?:src|tests|docs|seed|deploy)/[\w./\-]+)`")]
    private static partial Regex PathInText();
}
