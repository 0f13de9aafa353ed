using Bunit;
using HomeLine.Agency.Access;
using HomeLine.Agency.Decisions;
using HomeLine.LineCare;
using HomeLine.LineCare.Lines;
using HomeLine.Web.Pages.Decisions;

namespace HomeLine.Web.Tests.Pages.Decisions;

public sealed class QuestionCardTests : BunitContext
{
    private static readonly OpenDecision Locked = OpenDecision.Of(
        new PatientId("P44"), new LineId("P44-1"), DecisionCodes.UseLocked, "Locked on Tue 9 Mar until a licensed person releases it.", "R1-lock", Arrangement.Monday);

    [Fact]
    public void A_question_says_whose_what_since_when_and_who_decides()
    {
        string card = Show(isYours: true).Markup;

        foreach (string needed in (string[])["A line is locked for use", "Sedge", "PICC, 1 lumen", "P44-1", "Locked on Tue 9 Mar", "Mon 8 Mar", "A clinical manager"])
            Assert.Contains(needed, card, StringComparison.Ordinal);
    }

    [Fact]
    public void Who_may_not_decide_is_shown_no_way_to()
    {
        Assert.Empty(Show(isYours: false).FindAll("button"));
        Assert.Single(Show(isYours: true).FindAll("button"));
    }

    [Fact]
    public void Every_choice_is_named_and_says_what_follows() => Assert.All(Enum.GetValues<DecisionChoice>(), choice =>
    {
        Assert.NotEmpty(choice.InWords());
        Assert.EndsWith(".", choice.Follows(), StringComparison.Ordinal);
    });

    private IRenderedComponent<QuestionCard> Show(bool isYours) => Render<QuestionCard>(with => with
        .Add(c => c.Row, new DecisionRow(Locked, "Sedge Invented", "PICC, 1 lumen", isYours))
        .Add(c => c.Actor, new Actor("u", "H. Educator RN", [AgencyRole.ClinicalManager]))
        .Add(c => c.LongestEnd, Arrangement.Monday.PlusDays(90)));
}
