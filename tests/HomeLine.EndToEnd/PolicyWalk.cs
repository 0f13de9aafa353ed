using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace HomeLine.EndToEnd;

/// <summary>A clinical manager drafts a policy, sees what would move, approves it, and the due list says so.</summary>
public sealed class PolicyWalk
{
    [Fact]
    public async Task A_policy_is_drafted_previewed_and_approved()
    {
        Assert.SkipUnless(Browser.IsInstalled, Browser.Missing);
        await using AppUnderTest app = await AppUnderTest.StartAsync();
        await using Browser browser = await Browser.StartAsync();
        IPage page = await browser.OpenAsync();
        await DemoAgency.OpenAsync(page, app, decides: true);

        await page.GotoAsync(app.Address + "/policy");
        await page.StandsUpAsync("policy");
        await page.GetByLabel("Find a rule").FillAsync("dressing.film.max");
        await page.GetByRole(AriaRole.Button, new() { Name = "Change dressing.film.max", Exact = true }).ClickAsync();
        await page.GetByLabel("New value").FillAsync("4");
        await page.GetByLabel("Source").FillAsync("Agency paper 7");
        await page.GetByLabel("Why?").FillAsync("agreed in the case conference");
        await page.GetByRole(AriaRole.Button, new() { Name = "Keep the draft" }).ClickAsync();
        await Expect(page.GetByText("dressing.film.min (5 days) is above dressing.film.max (4 days)")).ToBeVisibleAsync();
        await page.StandsUpAsync("policy-refused");
        await page.GetByLabel("New value").FillAsync("6");
        await page.GetByRole(AriaRole.Button, new() { Name = "Keep the draft" }).ClickAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "See what would move" }).ClickAsync();
        await Expect(page.GetByRole(AriaRole.Heading, new() { Name = "due dates would move" })).ToBeVisibleAsync();
        await page.StandsUpAsync("policy-preview");
        await page.GetByRole(AriaRole.Button, new() { Name = "Approve draft 1" }).ClickAsync();
        await Expect(page.GetByText("Version 1 is approved")).ToBeVisibleAsync();
        await page.StandsUpAsync("policy-approved");

        IPage phone = await DemoAgency.OnAPhoneAsync(browser, page);
        await phone.GotoAsync(app.Address + "/policy");
        await phone.StandsUpAsync("dark-policy");

        await page.GotoAsync(app.Address + "/quality");
        await page.Locator(".case summary").First.ClickAsync();
        await page.GetByRole(AriaRole.Radio, new() { Name = "It counts" }).CheckAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Keep the review" }).ClickAsync();
        await Expect(page.GetByText("The reason is missing.")).ToBeVisibleAsync();
        await page.GetByLabel("Definition it is judged by").FillAsync("The agency's definition of 2026");
        await page.GetByLabel("Why").FillAsync("culture positive, no other source");
        await page.StandsUpAsync("quality-review");
        await page.GetByRole(AriaRole.Button, new() { Name = "Keep the review" }).ClickAsync();
        await Expect(page.GetByRole(AriaRole.Heading, new() { Name = "1 infection in" })).ToBeVisibleAsync();
        await page.StandsUpAsync("quality-reviewed");
        await phone.SetViewportSizeAsync(320, 844);
        await phone.GotoAsync(app.Address + "/quality");
        await phone.StandsUpAsync("dark-quality");
    }
}
