using Bunit;
using HomeLine.Agency;
using HomeLine.Web.Pages.Today;
using NodaTime;

namespace HomeLine.Web.Tests.Pages.Today;

/// <summary>Answers that waited are looked for again from the trouble itself.</summary>
public sealed class LookAgainTests : BunitContext
{
    private static readonly Instant Asked = Instant.FromUtc(2027, 3, 9, 12, 52);

    private int pressed;

    [Fact]
    public void A_week_that_changed_is_said_and_one_press_looks_again()
    {
        var look = Show(isOld: true, askAgain: false);

        Assert.Contains("The week has changed", look.Markup, StringComparison.Ordinal);
        look.Find("button").Click();

        Assert.Equal(1, pressed);
        Assert.False(look.Find("button").HasAttribute("disabled"));
    }

    [Fact]
    public void After_a_call_it_says_when_the_symptom_questions_were_answered()
    {
        Assert.Contains("symptom questions were answered", Show(isOld: false, askAgain: true).Markup, StringComparison.Ordinal);
        Assert.DoesNotContain("symptom", Show(isOld: false, askAgain: false).Markup, StringComparison.Ordinal);
    }

    [Fact]
    public void A_red_flag_since_is_shown_as_the_reason_why_nothing_is_looked_for()
    {
        var look = Show(isOld: true, askAgain: true, new Refusal("stopped-since", "A red flag has stopped this patient's visits since.", "A licensed person decides."));

        Assert.Contains("red flag", look.Find("[role=alert]").TextContent, StringComparison.Ordinal);
    }

    private IRenderedComponent<LookAgain> Show(bool isOld, bool askAgain, Refusal? refusal = null) => Render<LookAgain>(with => with
        .Add(l => l.IsOld, isOld).Add(l => l.AskAgain, askAgain).Add(l => l.AskedAt, Asked).Add(l => l.Zone, DateTimeZone.Utc)
        .Add(l => l.Refusal, refusal).Add(l => l.Look, () => pressed++));
}
