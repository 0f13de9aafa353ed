using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace HomeLine.EndToEnd;

/// <summary>A reviewer looks at a patient's clocks on a time scale, then tries the rules on histories of their own.</summary>
public sealed class ClocksWalk
{
    [Fact]
    public async Task Every_date_opens_to_its_entry_and_rule_and_a_typed_history_is_answered_at_once()
    {
        Assert.SkipUnless(Browser.IsInstalled, Browser.Missing);
        await using AppUnderTest app = await AppUnderTest.StartAsync();
        await using Browser browser = await Browser.StartAsync();
        IPage page = await browser.OpenAsync();
        await DemoAgency.OpenAsync(page, app);

        await LookAtTheTimelineAsync(page, app);
        await TryTheRulesAsync(page, app);
        IPage phone = await DemoAgency.OnAPhoneAsync(browser, page);
        foreach ((string address, string name) in ((string, string)[])[("/patients/P03/timeline", "timeline"), ("/try-the-rules", "try")])
        {
            await phone.GotoAsync(app.Address + address);
            await Expect(phone.Locator(".timeline-clock").First).ToBeVisibleAsync();
            await phone.StandsUpAsync($"dark-{name}");
        }
    }

    private static async Task LookAtTheTimelineAsync(IPage page, AppUnderTest app)
    {
        await page.GotoAsync(app.Address + "/patients/P03");
        await page.GetByRole(AriaRole.Link, new() { Name = "Timeline" }).ClickAsync();
        await Expect(page.GetByRole(AriaRole.Heading, new() { Level = 1 })).ToContainTextAsync("timeline");
        await page.StandsUpAsync("timeline");
        ILocator dressing = page.Locator(".timeline-clock").First;
        await dressing.Locator("summary").First.FocusAsync();
        await page.Keyboard.PressAsync("Enter");
        await Expect(dressing.GetByText("Mon 8 Mar to Wed 10 Mar").First).ToBeVisibleAsync();
        await dressing.GetByText("Why").First.ClickAsync();
        await Expect(dressing.GetByText("at least every").First).ToBeVisibleAsync();
        await page.StandsUpAsync("timeline-open");
        await dressing.GetByRole(AriaRole.Link, new() { Name = "See the ledger entry" }).First.ClickAsync();
        await Expect(page.GetByText("This entry:")).ToBeVisibleAsync();
    }

    private static async Task TryTheRulesAsync(IPage page, AppUnderTest app)
    {
        await page.GotoAsync(app.Address + "/try-the-rules");
        ILocator due = page.Locator("section[aria-labelledby=due]");
        await Expect(due).ToContainTextAsync("Mon 8 Mar to Wed 10 Mar");
        await page.StandsUpAsync("try");
        await page.GetByLabel("Begin with an example").SelectOptionAsync("lifting-edge");
        await Expect(due).ToContainTextAsync("cut short: best by Tue 9 Mar 2027, 11:52");

        ILocator rows = page.GetByLabel("Rows", new() { Exact = true });
        await rows.FillAsync("now 2027-03-08 06:00\nline PICC, lumens A\n2027-03-07 dressing gauze\n");
        await Expect(due).ToContainTextAsync("Mon 8 Mar to Tue 9 Mar");
        await page.GetByRole(AriaRole.Button, new() { Name = "One day on" }).ClickAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "One day on" }).ClickAsync();
        await Expect(due).ToContainTextAsync("late; Mon 8 Mar to Tue 9 Mar");
        await Expect(rows).ToHaveValueAsync(new System.Text.RegularExpressions.Regex("now 2027-03-10 06:00"));

        await rows.PressAsync("End");
        await rows.PressSequentiallyAsync("2027-02-30 dressing film");
        await Expect(page.GetByText("is no date")).ToBeVisibleAsync();
        await Expect(due).ToContainTextAsync("Mon 8 Mar to Tue 9 Mar");
        await page.StandsUpAsync("try-fault");
    }
}
