using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace HomeLine.EndToEnd;

/// <summary>What a broken day leaves behind: answers looked for again, a closure that is lifted, a silent clinic, a lesson that moves, a referral. Desktop and phone.</summary>
public sealed class MendingWalk
{
    [Fact]
    public async Task What_waits_is_looked_at_again_and_what_opened_is_lifted()
    {
        Assert.SkipUnless(Browser.IsInstalled, Browser.Missing);
        await using AppUnderTest app = await AppUnderTest.StartAsync();
        await using Browser browser = await Browser.StartAsync();
        IPage page = await browser.OpenAsync();
        await DemoAgency.OpenAsync(page, app, decides: true);

        await AReportWaitsAsync(page, app);
        await AReferralIsAskedAboutAsync(page, app);
        await TheLessonMovesAsync(page, app);
        await ThePassClosesAndOpensAsync(page, app);
        await TheClinicIsSilentAsync(page, app);
        await OnAPhoneAsync(browser, page, app);
    }

    private static async Task AReportWaitsAsync(IPage page, AppUnderTest app)
    {
        await SetClockAsync(page, app, "2027-03-09T07:52");
        await page.GotoAsync(app.Address + "/report?patient=P03");
        await page.GetByLabel("Who is calling?").FillAsync("spouse");
        await page.GetByRole(AriaRole.Button, new() { Name = "Ask about symptoms" }).ClickAsync();
        ILocator no = page.GetByRole(AriaRole.Button, new() { Name = "No", Exact = true }), seen = page.GetByText("bead of moisture", new() { Exact = false }).First;
        while (true)
        {
            await Expect(no.Or(seen).First).ToBeVisibleAsync();
            if (await seen.IsVisibleAsync()) break;
            string question = await page.GetByRole(AriaRole.Heading, new() { Level = 1 }).InnerTextAsync();
            await no.ClickAsync();
            await Expect(page.GetByRole(AriaRole.Heading, new() { Level = 1 })).Not.ToHaveTextAsync(question);
        }

        await page.GetByText("An edge", new() { Exact = false }).First.ClickAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Look for answers" }).ClickAsync();
        await Expect(page.Locator(".answer")).ToHaveCountAsync(3);
        await Expect(page.Locator(".answer").First).ToContainTextAsync("next due Sun 14 Mar to Tue 16 Mar");
        await page.StandsUpAsync("mending-after-this");

        await page.GotoAsync(app.Address + "/today");
        await page.GetByRole(AriaRole.Link, new() { Name = "Clover Zigzagby: dressing reported" }).ClickAsync();
        await Expect(page.GetByRole(AriaRole.Heading, new() { Name = "Look again" })).ToBeVisibleAsync();
        await page.StandsUpAsync("mending-report-waits");
        await page.GetByRole(AriaRole.Button, new() { Name = "Look for answers again" }).ClickAsync();
        await Expect(page.Locator(".answer")).ToHaveCountAsync(3);
        await page.StandsUpAsync("mending-report-again");
    }

    private static async Task AReferralIsAskedAboutAsync(IPage page, AppUnderTest app)
    {
        await page.GotoAsync(app.Address + "/today/referral?name=Vervain%20Thistlecomb&x=24.5&y=13.2&home=2027-03-09T13:00&dose=2027-03-09T20:00&supplies=2027-03-09T16:30&line=Picc&placed=2027-03-08&dressing=GauzeUnderFilm&tip=yes&first=yes&orders=yes&learns=yes");
        await page.StandsUpAsync("mending-referral");
        await page.GetByRole(AriaRole.Button, new() { Name = "Can we take it?" }).ClickAsync();
        await Expect(page.GetByRole(AriaRole.Heading, new() { Level = 1, Name = "Can we take Vervain Thistlecomb?" })).ToBeVisibleAsync();
        await page.StandsUpAsync("mending-referral-answers");
        await page.GetByRole(AriaRole.Radio).Nth(1).CheckAsync();
        await page.GetByLabel("Who agreed", new() { Exact = false }).FillAsync("Juniper and the clinical manager");
        await page.GetByRole(AriaRole.Button, new() { Name = "Apply B:" }).ClickAsync();
        await Expect(page.GetByRole(AriaRole.Heading, new() { Name = "A place is held" })).ToBeVisibleAsync();
        await page.StandsUpAsync("mending-place-held");
        await page.GotoAsync(app.Address + "/week/2027-03-08/work");
        await page.GetByRole(AriaRole.Button, new() { Name = "Tue 9 Mar", Exact = true }).ClickAsync();
        await Expect(page.GetByText("Place held for Vervain Thistlecomb").First).ToBeVisibleAsync();
        await page.StandsUpAsync("mending-place-on-the-week");
    }

    private static async Task TheLessonMovesAsync(IPage page, AppUnderTest app)
    {
        await SetClockAsync(page, app, "2027-03-09T16:20");
        await page.GotoAsync(app.Address + "/today/lesson?patient=P54&why=his%20wife%20is%20ill");
        await page.StandsUpAsync("mending-lesson");
        await page.GetByRole(AriaRole.Button, new() { Name = "Move the lesson" }).ClickAsync();
        await Expect(page.GetByRole(AriaRole.Heading, new() { Level = 1, Name = "lesson off" })).ToBeVisibleAsync();
        await page.StandsUpAsync("mending-lesson-answers");
        // A trouble that waits: its answers are looked for again.
        await page.GetByRole(AriaRole.Button, new() { Name = "Look for answers again" }).ClickAsync();
        await Expect(page.GetByRole(AriaRole.Button, new() { Name = "Apply A:" })).ToBeVisibleAsync();
        await page.StandsUpAsync("mending-lesson-again");
        await page.GetByRole(AriaRole.Button, new() { Name = "Apply A:" }).ClickAsync();
        await Expect(page.GetByText("Answer A is applied.").Or(page.GetByText("Somebody has to agree first"))).ToBeVisibleAsync();
        await page.StandsUpAsync("mending-lesson-applied");
        await page.GotoAsync(app.Address + "/today");
        await page.GetByText("To be said, sentence by sentence").First.ClickAsync();
        await page.StandsUpAsync("mending-to-be-said");
    }

    private static async Task ThePassClosesAndOpensAsync(IPage page, AppUnderTest app)
    {
        await page.GotoAsync(app.Address + "/today/closure?crossings=Larch%20Pass&from=2027-03-10T12:00&to=2027-03-11T00:00&why=snow");
        await page.GetByRole(AriaRole.Button, new() { Name = "See who cannot be reached" }).ClickAsync();
        await Expect(page.GetByRole(AriaRole.Heading, new() { Name = "It holds until" })).ToBeVisibleAsync();
        await page.GetByLabel("Why this answer?", new() { Exact = false }).Or(page.GetByLabel("Who agreed", new() { Exact = false })).First.FillAsync("agreed by phone");
        await page.GetByRole(AriaRole.Button, new() { Name = "Apply A:" }).ClickAsync();
        await Expect(page.GetByText("Answer A is applied.")).ToBeVisibleAsync();
        await page.StandsUpAsync("mending-closure-stands");
        string closure = page.Url;

        await page.GotoAsync(app.Address + "/map/2027-03-10");
        await Expect(page.GetByText("Larch Pass, from Wed 10 Mar 12:00 to Thu 11 Mar 00:00: snow.")).ToBeVisibleAsync();
        await page.StandsUpAsync("mending-map-closed");
        await page.GotoAsync(app.Address + "/today");
        await Expect(page.GetByRole(AriaRole.Heading, new() { Name = "Closed roads" })).ToBeVisibleAsync();
        await page.StandsUpAsync("mending-today-closed");

        await page.GotoAsync(closure);
        await page.GetByRole(AriaRole.Button, new() { Name = "It is open again" }).ClickAsync();
        await Expect(page.GetByText("It is not said how you know that it is open.")).ToBeVisibleAsync();
        await page.GetByLabel("How do you know that it is open?").FillAsync("ploughed, the road service called");
        await page.GetByRole(AriaRole.Button, new() { Name = "It is open again" }).ClickAsync();
        await Expect(page.GetByRole(AriaRole.Heading, new() { Name = "Open again" })).ToBeVisibleAsync();
        await page.StandsUpAsync("mending-closure-lifted");
        await page.GetByRole(AriaRole.Button, new() { Name = "Look again at what was moved" }).ClickAsync();
        await Expect(page.GetByRole(AriaRole.Heading, new() { Level = 1, Name = "Open again" })).ToBeVisibleAsync();
        await page.StandsUpAsync("mending-open-again");
    }

    private static async Task TheClinicIsSilentAsync(IPage page, AppUnderTest app)
    {
        await SetClockAsync(page, app, "2027-03-11T18:00");
        await page.GotoAsync(app.Address + "/today");
        await page.GetByRole(AriaRole.Link, new() { Name = "Mallow Jinglefen: no report from the clinic" }).ClickAsync();
        await Expect(page.GetByRole(AriaRole.Heading, new() { Level = 1, Name = "no report from the clinic" })).ToBeVisibleAsync();
        await Expect(page.GetByRole(AriaRole.Button, new() { Name = "Apply A:" })).ToBeVisibleAsync();
        await page.StandsUpAsync("mending-clinic");
    }

    private static async Task OnAPhoneAsync(Browser browser, IPage page, AppUnderTest app)
    {
        IPage phone = await DemoAgency.OnAPhoneAsync(browser, page);
        foreach (int width in (int[])[390, 320])
        {
            await phone.SetViewportSizeAsync(width, 844);
            foreach ((string address, string name) in ((string, string)[])
                [("/today", "today"), ("/today/report/R1", "report-again"), ("/today/trouble/T1", "referral-answers"), ("/today/trouble/T3", "closure-lifted"), ("/today/trouble/T4", "open-again"), ("/today/lesson", "lesson"), ("/map/2027-03-10", "map")])
            {
                await phone.GotoAsync(app.Address + address);
                await phone.StandsUpAsync($"dark-mending-{name}");
            }
        }
    }

    private static async Task SetClockAsync(IPage page, AppUnderTest app, string local)
    {
        await page.GotoAsync(app.Address + "/due");
        await page.GetByText("Demo time").ClickAsync();
        await page.GetByLabel("Set the demo to").FillAsync(local);
        await page.RunAndWaitForResponseAsync(
            () => page.GetByRole(AriaRole.Button, new() { Name = "Move the demo's clock" }).ClickAsync(),
            response => response.Request.IsNavigationRequest && response.Request.Method == "GET");
        await page.WaitForLoadStateAsync(LoadState.Load);
        await Expect(page.Locator(".demo-banner summary")).ToContainTextAsync(local[11..]);
    }
}
