using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace HomeLine.EndToEnd;

/// <summary>A holiday is put down over a published week: listed first, planning anew is offered, nothing is forced; on the calendar it is taken back.</summary>
public sealed class HolidayWalk
{
    [Fact]
    public async Task A_late_holiday_lists_its_visits_and_offers_to_plan_anew()
    {
        Assert.SkipUnless(Browser.IsInstalled, Browser.Missing);
        await using AppUnderTest app = await AppUnderTest.StartAsync();
        await using Browser browser = await Browser.StartAsync();
        IPage page = await browser.OpenAsync(1280, 900);
        await DemoAgency.OpenAsync(page, app);
        IPage phone = await DemoAgency.OnAPhoneAsync(browser, page);

        await LookAsync(page, app, "2027-03-11");
        await page.StandsUpAsync("holiday-looked-at");
        await LookAsync(phone, app, "2027-03-12");
        await phone.StandsUpAsync("dark-holiday-looked-at");
        await phone.SetViewportSizeAsync(320, 844);
        await phone.StandsUpAsync("dark-holiday-looked-at");
        await page.GetByRole(AriaRole.Button, new() { Name = "Keep the holiday" }).ClickAsync();
        await Expect(page.GetByText("Kept: Thu 11 Mar is a holiday")).ToBeVisibleAsync();
        await Expect(page.GetByText("Nothing was moved.")).ToBeVisibleAsync();
        await page.StandsUpAsync("holiday-kept");
        await TakeBackAsync(page, phone);
        await page.GetByRole(AriaRole.Link, new() { Name = "Plan that week anew" }).ClickAsync();
        await Expect(page).ToHaveURLAsync(new System.Text.RegularExpressions.Regex("/plan/2027-03-08"));
    }

    /// <summary>On the calendar: who works, what lies on it; taken back with a reason, the hours are there again.</summary>
    private static async Task TakeBackAsync(IPage page, IPage phone)
    {
        await page.GetByRole(AriaRole.Link, new() { Name = "All holidays" }).ClickAsync();
        await Expect(page.GetByRole(AriaRole.Heading, new() { Name = "Thursday 11 March 2027: Founders’ day" })).ToBeVisibleAsync();
        await page.StandsUpAsync("holidays");
        foreach (int width in (int[])[390, 320])
        {
            await phone.SetViewportSizeAsync(width, 844);
            await phone.GotoAsync(page.Url);
            await phone.GetByText("Take it back", new() { Exact = false }).First.ClickAsync();
            await phone.StandsUpAsync("dark-holidays");
        }

        await page.Locator("summary").Filter(new() { HasTextString = "Take it back" }).ClickAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Take it back" }).ClickAsync();
        await Expect(page.GetByText("It is not said why it is taken back.")).ToBeVisibleAsync();
        await page.GetByLabel("Why").FillAsync("entered for the wrong week");
        await page.GetByRole(AriaRole.Button, new() { Name = "Take it back" }).ClickAsync();
        await Expect(page.GetByText("is no longer a holiday.")).ToBeVisibleAsync();
        await page.StandsUpAsync("holiday-taken-back");
    }

    private static async Task LookAsync(IPage page, AppUnderTest app, string day)
    {
        await page.GotoAsync(app.Address + "/week/2027-03-08/work");
        await page.GetByText("Put a holiday down").ClickAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "See which visits it touches" }).ClickAsync();
        await Expect(page.GetByText("The day is missing.")).ToBeVisibleAsync();
        await page.Locator("#holiday-day").FillAsync(day);
        await page.GetByLabel("What it is called").FillAsync("Founders’ day");
        await page.GetByRole(AriaRole.Button, new() { Name = "See which visits it touches" }).ClickAsync();
        await Expect(page.GetByRole(AriaRole.Button, new() { Name = "Keep the holiday" })).ToBeVisibleAsync();
        await Expect(page.GetByText("They stay published until somebody plans the week anew")).ToBeVisibleAsync();
    }
}
