using System.Reflection;
using System.Text.RegularExpressions;
using HomeLine.Agency.Decisions;
using HomeLine.LineCare;
using HomeLine.Planning.Plans;

namespace HomeLine.Architecture.Tests;

/// <summary>Every code a person can meet is explained in docs/reasons.md, with what somebody could do.</summary>
public partial class ReasonTests
{
    private static readonly HashSet<string> Explained =
        [.. Row().Matches(Repository.Read("docs/reasons.md")).Select(row => row.Groups["code"].Value)];

    [Fact]
    public void A_planning_reason_is_explained() => Expect.Nothing(ReasonCode.All.Except(Explained));

    [Fact]
    public void A_decision_is_explained() => Expect.Nothing(Constants(typeof(DecisionCodes)).Concat(Constants(typeof(AppDecisionCodes))).Except(Explained));

    [Fact]
    public void A_refusal_is_explained() => Expect.Nothing(Repository.WrittenCode("src/")
        .SelectMany(path => Refused().Matches(Repository.Read(path)))
        .Select(refusal => refusal.Groups["code"].Value)
        .Distinct()
        .Except(Explained));

    private static IEnumerable<string> Constants(Type codes) => codes
        .GetFields(BindingFlags.Public | BindingFlags.Static)
        .Where(field => field.IsLiteral)
        .Select(field => (string)field.GetRawConstantValue()!);

    // A table row with a code, a meaning and an action, none of them empty.
    [GeneratedRegex(@"^\| `(?<code>[a-z-]+)` \| [^|]*\w[^|]* \| [^|]*\w[^|]* \|$", RegexOptions.Multiline)]
    private static partial Regex Row();

    [GeneratedRegex(@"(?:new Refusal|Conflict)\([^"";]*""(?<code>[a-z-]+)""")]
    private static partial Regex Refused();
}
