using Bunit;
using HomeLine.Agency.Due;
using HomeLine.Web.Parts;

namespace HomeLine.Web.Tests.Parts;

public sealed class UrgencyWordsTests : BunitContext
{
    public static TheoryData<Urgency> EveryUrgency { get; } = [.. Enum.GetValues<Urgency>()];

    [Theory]
    [MemberData(nameof(EveryUrgency))]
    public void An_urgency_is_a_sign_and_a_word_and_never_a_colour_alone(Urgency urgency)
    {
        var badge = Render<DueBadge>(with => with.Add(b => b.Of, urgency));

        Assert.Equal(urgency.Word(), badge.Find(".due-badge").TextContent.Trim());
        Assert.NotEmpty(badge.FindAll("svg[aria-hidden=true] path, svg[aria-hidden=true] circle"));
    }

    [Fact]
    public void No_two_urgencies_share_a_word_or_a_drawing()
    {
        string[] drawings = [.. Enum.GetValues<Urgency>().Select(u => Render<UrgencySign>(with => with.Add(s => s.Of, u)).Find("svg").InnerHtml)];

        Assert.Equal(drawings.Length, drawings.Distinct().Count());
        Assert.Equal(drawings.Length, Enum.GetValues<Urgency>().Select(u => u.Word()).Distinct().Count());
    }

    [Fact]
    public void No_urgency_promises_that_all_is_well()
    {
        foreach (Urgency urgency in Enum.GetValues<Urgency>())
        {
            Assert.DoesNotContain("safe", urgency.Word() + urgency.Meaning(), StringComparison.OrdinalIgnoreCase);
            Assert.DoesNotContain("OK", urgency.Word() + urgency.Meaning(), StringComparison.Ordinal);
        }
    }
}
