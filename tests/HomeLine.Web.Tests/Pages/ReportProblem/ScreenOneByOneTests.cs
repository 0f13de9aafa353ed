using System.Text.RegularExpressions;
using Bunit;
using HomeLine.LineCare.Lines;
using HomeLine.LineCare.RedFlags;
using HomeLine.Web.Pages.ReportProblem;

namespace HomeLine.Web.Tests.Pages.ReportProblem;

/// <summary>Every emergency and urgent question, answered with yes and with don't know: the page stops, and offers no time.</summary>
public sealed partial class ScreenOneByOneTests : BunitContext
{
    private readonly List<ScreenAnswers> stopped = [];
    private readonly List<ScreenAnswers> passed = [];

    public static TheoryData<string> StoppingQuestions { get; } =
        [.. SymptomScreen.Questions(ScreenContext.Unknown).Where(Stops).Select(question => question.Id)];

    [Theory]
    [MemberData(nameof(StoppingQuestions))]
    public void A_yes_stops_at_once_and_nothing_offers_a_visit(string id) => StopsAt(id, "Yes");

    [Theory]
    [MemberData(nameof(StoppingQuestions))]
    public void Not_knowing_stops_like_a_yes(string id) => StopsAt(id, "Don’t know");

    [Fact]
    public void One_question_is_asked_at_a_time()
    {
        var screen = Show();

        Assert.Single(screen.FindAll("h1"));
        Assert.Equal(SymptomScreen.Questions(ScreenContext.Unknown)[0].Text, screen.Find("h1").TextContent);
    }

    [Fact]
    public void Only_when_every_red_flag_was_answered_no_does_the_page_go_on()
    {
        var screen = Show();
        int asked = 0;
        while (passed.Count == 0 && asked < 100)
        {
            asked++;
            Press(screen, "No");
        }

        Assert.Equal(StoppingQuestions.Count, asked);
        Assert.True(passed.Single().Outcome.MaySchedule);
        Assert.Empty(stopped);
    }

    [Fact]
    public void An_answer_can_be_taken_back()
    {
        var screen = Show();
        string first = screen.Find("h1").TextContent;
        Press(screen, "No");
        Assert.NotEqual(first, screen.Find("h1").TextContent);

        Press(screen, "Take back the last answer");

        Assert.Equal(first, screen.Find("h1").TextContent);
    }

    [Fact]
    public void The_callers_own_words_ask_and_never_answer()
    {
        var screen = Show(words: "he is short of breath");

        Assert.Contains("own words point to this", screen.Markup, StringComparison.Ordinal);
        Assert.Empty(stopped);
    }

    private void StopsAt(string id, string answer)
    {
        var screen = Show();
        while (SymptomScreen.Questions(ScreenContext.Unknown).First(q => q.Text == screen.Find("h1").TextContent).Id != id)
            Press(screen, "No");

        Press(screen, answer);

        ScreenAnswers stop = Assert.Single(stopped);
        Assert.Empty(passed);
        Assert.Empty(screen.FindAll("button"));
        var page = Render<StoppedCall>(with => with
            .Add(p => p.Screen, stop.Outcome).Add(p => p.Patient, new PatientId("P44")).Add(p => p.Zone, Arrangement.Zone));
        Assert.NotEmpty(page.FindAll(".aloud li"));
        Assert.DoesNotMatch(ATime(), page.Markup);
        Assert.Empty(page.FindAll("form, button, input, select, a[href^='/plan'], a[href^='/week'], a[href^='/report']"));
    }

    private IRenderedComponent<ScreenOneByOne> Show(string words = "")
    {
        JSInterop.Mode = JSRuntimeMode.Loose;
        return Render<ScreenOneByOne>(with => with
            .Add(s => s.Context, ScreenContext.Unknown).Add(s => s.MentionedIn, words)
            .Add(s => s.Stopped, stopped.Add).Add(s => s.Passed, passed.Add));
    }

    private static bool Stops(ScreenQuestion question) => question.Class is ScreenClass.Emergency or ScreenClass.UrgentClinician;

    private static void Press(IRenderedComponent<ScreenOneByOne> screen, string words) =>
        screen.FindAll("button").First(button => button.TextContent == words).Click();

    [GeneratedRegex(@"\b\d{1,2}:\d{2}\b")]
    private static partial Regex ATime();
}
