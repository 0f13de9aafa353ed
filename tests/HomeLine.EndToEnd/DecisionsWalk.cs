using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace HomeLine.EndToEnd;

/// <summary>A clinical manager decides what waits: refused without a reason, kept with one, gone from the list.</summary>
public sealed class DecisionsWalk
{
    [Fact]
    public async Task A_question_is_decided_by_name_and_with_a_reason_and_leaves_the_list()
    {
        Assert.SkipUnless(Browser.IsInstalled, Browser.Missing);
        await using AppUnderTest app = await AppUnderTest.StartAsync();
        await using Browser browser = await Browser.StartAsync();
        IPage page = await browser.OpenAsync();
        await DemoAgency.OpenAsync(page, app, decides: true);

        await page.GotoAsync(app.Address + "/decisions");
        await Expect(page.GetByRole(AriaRole.Heading, new() { Name = "Cannot wait" })).ToBeVisibleAsync();
        await Expect(page.Locator(".waits")).ToBeVisibleAsync();
        int before = await page.Locator("li.question").CountAsync();
        await page.StandsUpAsync("decisions");

        ILocator card = page.Locator("li.question").Filter(new() { HasText = "longer outside" }).First;
        await card.GetByRole(AriaRole.Button, new() { Name = "Decide" }).ClickAsync();
        await card.GetByRole(AriaRole.Radio, new() { Name = "Accept as it is" }).CheckAsync();
        await card.GetByRole(AriaRole.Button, new() { Name = "Keep this decision" }).ClickAsync();
        await Expect(card.GetByText("No reason is given.")).ToBeVisibleAsync();
        await page.StandsUpAsync("decision-refused");
        await card.GetByLabel("Why?").FillAsync("imaging is arranged for Wednesday");
        await card.GetByRole(AriaRole.Button, new() { Name = "Keep this decision" }).ClickAsync();

        await Expect(page.GetByRole(AriaRole.Heading, new() { Name = "Kept: Accept as it is" })).ToBeVisibleAsync();
        await Expect(page.Locator("li.question")).ToHaveCountAsync(before - 1);
        await page.StandsUpAsync("decision-kept");

        IPage phone = await DemoAgency.OnAPhoneAsync(browser, page);
        await phone.GotoAsync(app.Address + "/decisions");
        await Expect(phone.Locator("li.question").First).ToBeVisibleAsync();
        await phone.Locator("li.question").First.GetByRole(AriaRole.Button, new() { Name = "Decide" }).ClickAsync();
        await phone.StandsUpAsync("dark-decisions");
    }
}
