using Bunit;
using HomeLine.Agency.Mending;
using HomeLine.Agency.Reports;
using HomeLine.Agency.WeekPlanning;
using HomeLine.Web.Pages.ReportProblem;

namespace HomeLine.Web.Tests.Pages.ReportProblem;

public sealed class AnswerCardTests : BunitContext
{
    private static readonly AnswerInWords Answer = new(
        "A", "Sorrel Mudlark, Tue 9 Mar 10:08", Arrangement.Visit(hour: 10, minute: 8), "Sorrel Mudlark", 55, true, 0, [],
        ["Wed 10 Mar 13:12 with Juniper Brasslock is no longer needed."], [],
        [new PersonToTell("spouse, Clover Zigzagby", "phone 555-0103", "A nurse comes today.", Arrangement.At(Arrangement.Monday))],
        "After this visit the dressing is next due Sun 14 Mar to Tue 16 Mar.", "As-needed visits: 2 of 3 used.")
    {
        ToldMinutes = 60,
    };

    [Fact]
    public void An_answer_names_nurse_start_range_cost_and_who_is_told()
    {
        string card = Show(Answer).Markup;

        foreach (string needed in (string[])
            ["Sorrel Mudlark", "10:08", "10:08 to 11:08", "Meets the target", "55 min of driving added", "Nobody is moved", "Wed 10 Mar 13:12", "spouse, Clover Zigzagby", "Sun 14 Mar to Tue 16 Mar"])
            Assert.Contains(needed, card, StringComparison.Ordinal);
    }

    [Fact]
    public void The_range_a_family_is_told_is_as_long_as_the_agencys_policy_says() =>
        Assert.Contains("10:08 to 11:38", Show(Answer with { ToldMinutes = 90 }).Markup, StringComparison.Ordinal);

    [Fact]
    public void A_missed_target_is_said_in_words() =>
        Assert.Contains("Misses the target", Show(Answer with { MeetsTarget = false }).Markup, StringComparison.Ordinal);

    [Fact]
    public void A_visit_that_makes_room_is_drawn_where_it_goes_and_the_replaced_one_crossed_out()
    {
        WeekVisit moves = Arrangement.Visit("V2", "P01", 12), replaced = Arrangement.Visit("V3", "P03", 14);
        NurseRow nurse = Arrangement.Nurse(Arrangement.Stop(moves), Arrangement.Stop(replaced));
        var board = new WeekBoard(
            new PlannedWeek { FirstDay = Arrangement.Monday, Visits = [] }, false, [Arrangement.Monday], [nurse], [], null!, Arrangement.At(Arrangement.Monday));
        AnswerInWords answer = Answer with
        {
            Changes =
            [
                new VisitChange(null, Answer.Visit, "New.", 0),
                new VisitChange(moves, moves with { Start = new(13, 45) }, "Moves.", 105),
                new VisitChange(replaced, null, "No longer needed.", 0),
            ],
        };

        var card = Render<AnswerCard>(with => with.Add(c => c.Answer, answer).Add(c => c.Board, board));

        Assert.Contains("10:08 P03 comes, 13:45 P01 instead of 12:00, 14:00 P03 goes", card.Find("figcaption").TextContent, StringComparison.Ordinal);
        Assert.Equal(2, card.FindAll(".strip-new").Count);
    }

    private IRenderedComponent<AnswerCard> Show(AnswerInWords answer) => Render<AnswerCard>(with => with.Add(c => c.Answer, answer));
}
