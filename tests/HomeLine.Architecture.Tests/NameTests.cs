using System.Reflection;
using System.Runtime.CompilerServices;
using System.Text.RegularExpressions;

namespace HomeLine.Architecture.Tests;

/// <summary>A name that refuses nothing collects everything.</summary>
public partial class NameTests
{
    [Theory]
    [InlineData("LineCare")]
    [InlineData("Planning")]
    [InlineData("Agency")]
    [InlineData("Paper")]
    [InlineData("Exchange")]
    [InlineData("Web")]
    public void A_type_is_named_after_what_it_is(string room)
    {
        IEnumerable<string> vague = new Room(room).Assembly.GetTypes()
            .Where(type => type.GetCustomAttribute<CompilerGeneratedAttribute>() is null && type.Namespace?.StartsWith("HomeLine", StringComparison.Ordinal) == true)
            .Select(type => type.Name)
            .Where(name => VagueEnding().IsMatch(name));

        Expect.Nothing(vague);
    }

    [Fact]
    public void A_folder_is_named_after_a_capability()
    {
        IEnumerable<string> vague = Repository.Files
            .Where(path => path.StartsWith("src/", StringComparison.Ordinal))
            .SelectMany(path => path.Split('/').SkipLast(1))
            .Distinct()
            .Where(folder => VagueFolder().IsMatch(folder));

        Expect.Nothing(vague);
    }

    [GeneratedRegex("(Helpers?|Util(s|ity|ities)?|Manager|Processor|Common|Services?|Base|Info)(`\\d+)?$")]
    private static partial Regex VagueEnding();

    [GeneratedRegex("^(Helpers?|Utils?|Managers?|Common|Shared|Core|Services?|Misc)$")]
    private static partial Regex VagueFolder();
}
