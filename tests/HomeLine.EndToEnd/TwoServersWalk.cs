using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace HomeLine.EndToEnd;

/// <summary>Two browsers on one draft, each at a server of its own: the second's stale change is refused with what changed. And a practice copy beside them.</summary>
public sealed class TwoServersWalk
{
    private const string Work = "/week/2027-03-08/work";

    [Fact]
    public async Task A_stale_change_is_refused_in_the_browser_and_practice_reaches_nobody()
    {
        Assert.SkipUnless(Browser.IsInstalled, Browser.Missing);
        await using AppUnderTest app = await AppUnderTest.StartAsync();
        await using Browser browser = await Browser.StartAsync();
        IPage page = await browser.OpenAsync();
        await DemoAgency.OpenAsync(page, app, decides: true);

        await TheSecondIsRefusedAsync(browser, page, app);
        await PracticeAsync(browser, page, app);
    }

    private static async Task TheSecondIsRefusedAsync(Browser browser, IPage page, AppUnderTest app)
    {
        await using AppUnderTest other = await app.StartBesideAsync();
        IPage second = await DemoAgency.OnAPhoneAsync(browser, page);
        await page.GotoAsync(app.Address + Work);
        await page.GetByRole(AriaRole.Button, new() { Name = "Wed 10 Mar", Exact = true }).ClickAsync();
        ILocator refused = second.GetByText("The draft changed meanwhile: Marrowby Dovetail: P42");
        // The second page looks for itself every twenty seconds; when it did just then nothing is stale, and both try again.
        for (int tries = 0; tries < 4 && !await refused.First.IsVisibleAsync(); tries++)
        {
            await second.GotoAsync(other.Address + Work);
            await second.GetByRole(AriaRole.Link, new() { NameRegex = new("^Thu 11 Mar[:,]") }).ClickAsync();
            await Visit(second, "P35").ClickAsync();
            ILocator press = second.GetByRole(AriaRole.Button, new() { NameRegex = new("Pin it here|Take the pin out") });
            await Expect(press).ToBeVisibleAsync();
            await Visit(page, "P42").ClickAsync();
            await page.GetByRole(AriaRole.Button, new() { NameRegex = new("Pin it here|Take the pin out") }).ClickAsync();
            await Expect(page.GetByText("Done: P42").First).ToBeAttachedAsync();
            await press.ClickAsync();
            await Expect(refused.Or(second.GetByText("Done: P35")).First).ToBeAttachedAsync();
        }

        await Expect(refused.First).ToBeVisibleAsync();
        await Expect(second.GetByText("Nothing of yours was lost or stored.").First).ToBeVisibleAsync();
        await second.StandsUpAsync("dark-stale-draft");
        await second.SetViewportSizeAsync(320, 844);
        await second.StandsUpAsync("dark-stale-draft");
    }

    private static async Task PracticeAsync(Browser browser, IPage page, AppUnderTest app)
    {
        await using AppUnderTest practice = await app.StartBesideAsync("practice");
        IPage there = await browser.OpenAsync();
        await there.GotoAsync(practice.Address + "/today");
        await DemoAgency.SignInAsync(there);
        await Expect(there.GetByText("Practice copy.")).ToBeVisibleAsync();
        await there.GotoAsync(practice.Address + "/today/nurse-out?nurse=N7&from=2027-03-10T00:00&through=2027-03-10&why=ill");
        await there.GetByRole(AriaRole.Button, new() { Name = "See who takes her visits" }).ClickAsync();
        await there.GetByRole(AriaRole.Button, new() { Name = "Apply A:" }).ClickAsync();
        await Expect(there.GetByText("Answer A is applied.")).ToBeVisibleAsync();
        await there.StandsUpAsync("practice");
        await there.SetViewportSizeAsync(320, 844);
        await there.GotoAsync(practice.Address + "/today");
        await there.StandsUpAsync("practice-today");

        // The real agency knows nothing of it.
        await page.GotoAsync(app.Address + "/today");
        await Expect(page.GetByRole(AriaRole.Heading, new() { Name = "Something happened" })).ToBeVisibleAsync();
        await Expect(page.GetByText("Practice copy.")).ToHaveCountAsync(0);
        await Expect(page.GetByText("Everybody has been told.")).ToBeVisibleAsync();
    }

    private static ILocator Visit(IPage page, string patient) =>
        page.Locator("button[data-visit]").Filter(new() { Has = page.Locator(".code", new() { HasTextString = patient }) }).First;
}
