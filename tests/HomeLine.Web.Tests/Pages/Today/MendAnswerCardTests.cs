using Bunit;
using HomeLine.Agency.Mending;
using HomeLine.Agency.Reports;
using HomeLine.Agency.WeekPlanning;
using HomeLine.Web.Pages.Today;

namespace HomeLine.Web.Tests.Pages.Today;

public sealed class MendAnswerCardTests : BunitContext
{
    private static readonly WeekVisit Before = Arrangement.Visit(hour: 9, minute: 30);

    private static readonly MendAnswer Answer = new()
    {
        Key = "B",
        Title = "1 visit the same day with another nurse",
        Changes = [new VisitChange(Before, Before with { Nurse = "N2", Start = new(10, 15) }, "Clover Zigzagby moves from 09:30 to 10:15 with Rowan Thistlequay, 45 min later.", 45)],
        Price = new MendPrice { Families = 1, Nurses = 2, Waiting = 45, DrivingDelta = 22, Overtime = 20 },
        ToTell = [new PersonToTell("Clover Zigzagby", "phone 555-0103", "Rowan comes.", Arrangement.At(Arrangement.Monday))],
    };

    [Fact]
    public void An_answer_says_who_moves_by_how_much_what_it_costs_and_who_is_told()
    {
        string card = Show(Answer).Markup;

        foreach (string needed in (string[])["Answer B", "45 min later", "1 family hears", "2 nurses’ days change", "22 min of driving added", "20 min of overtime", "45 min later than told or published", "Told: Clover Zigzagby"])
            Assert.Contains(needed, card, StringComparison.Ordinal);
    }

    [Fact]
    public void What_is_left_undone_is_said_with_its_reason_and_what_would_help() =>
        Assert.Contains("Nobody for Teasel Yonderbell: immunoglobulin. No nurse has the skill. Would help: N8 works Wednesday", Show(Answer with
        {
            Unmet = [new LeftUnmet("Teasel Yonderbell", "immunoglobulin", "No nurse has the skill.", ["N8 works Wednesday"])],
        }).Markup, StringComparison.Ordinal);

    [Fact]
    public void Who_has_to_agree_stands_on_the_card() =>
        Assert.Contains("The clinical manager takes the referral.", Show(Answer with { Decider = "The clinical manager takes the referral." }).Find(".decider").TextContent, StringComparison.Ordinal);

    [Fact]
    public void The_days_it_changes_are_drawn_and_said_in_words()
    {
        NurseRow nurse = Arrangement.Nurse(Arrangement.Stop(Before), Arrangement.Stop(Arrangement.Visit("V2", "P01", 12)));
        var board = new WeekBoard(
            new PlannedWeek { FirstDay = Arrangement.Monday, Visits = [] }, false, [Arrangement.Monday], [nurse], [], null!, Arrangement.At(Arrangement.Monday));

        var card = Render<MendAnswerCard>(with => with.Add(c => c.Answer, Answer).Add(c => c.Board, board));

        Assert.Single(card.FindAll("svg"));
        Assert.Contains("09:30 P03 goes, 12:00 P01", card.Find("figcaption").TextContent, StringComparison.Ordinal);
    }

    private IRenderedComponent<MendAnswerCard> Show(MendAnswer answer) => Render<MendAnswerCard>(with => with.Add(c => c.Answer, answer));
}
