using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace HomeLine.EndToEnd;

/// <summary>A supervisor is put on a visit of the practical nurse, and that it took place is recorded.</summary>
public sealed class RideAlongWalk
{
    [Fact]
    public async Task A_ride_along_is_put_on_a_visit_and_recorded()
    {
        Assert.SkipUnless(Browser.IsInstalled, Browser.Missing);
        await using AppUnderTest app = await AppUnderTest.StartAsync();
        await using Browser browser = await Browser.StartAsync();
        IPage page = await browser.OpenAsync(1280, 900);
        await DemoAgency.OpenAsync(page, app, decides: true);

        await PutOnAVisitAsync(page, app);
        await RecordAsync(page, app);
        foreach (int width in (int[])[390, 320]) await OnAPhoneAsync(browser, page, app, width);
    }

    private static async Task PutOnAVisitAsync(IPage page, AppUnderTest app)
    {
        await page.GotoAsync(app.Address + "/week/2027-03-08/work");
        await page.GetByRole(AriaRole.Button, new() { Name = "Thu 11 Mar", Exact = true }).ClickAsync();
        await Visit(page, "P35").ClickAsync();
        await page.GetByLabel("Who goes along to supervise Linden Pennywhirl").SelectOptionAsync("N4");
        await Expect(page.GetByRole(AriaRole.Heading, new() { Name = "People to tell" })).ToBeVisibleAsync();
        await Expect(page.GetByText("comes along with Linden Pennywhirl").First).ToBeVisibleAsync();
        await page.StandsUpAsync("ride-along-looked-at");
        await page.GetByRole(AriaRole.Button, new() { Name = "Send her along" }).ClickAsync();
        await Expect(page.GetByText("N4 goes along with N5 to P35 Thu 09:40").First).ToBeVisibleAsync();
        await page.Locator("summary").Filter(new() { HasTextString = "Ride-alongs" }).ClickAsync();
        await Expect(page.GetByRole(AriaRole.Cell, new() { NameRegex = new("Thu 11 Mar 9:40|Thu 11 Mar 09:40") })).ToBeVisibleAsync();
        await page.Locator("summary").Filter(new() { HasTextString = "Load of each nurse" }).ClickAsync();
        await Expect(page.GetByText("Between home and the first and last door, time is not paid")).ToBeVisibleAsync();
        await page.StandsUpAsync("ride-along-planned");
    }

    private static async Task RecordAsync(IPage page, AppUnderTest app)
    {
        await page.GotoAsync(app.Address + "/decisions");
        await page.GetByRole(AriaRole.Button, new() { Name = "Record the ride-along" }).ClickAsync();
        await Expect(page.GetByText("There is no such nurse.")).ToBeVisibleAsync();
        await page.StandsUpAsync("ride-along-refused");
        await page.GetByLabel("Who went along").SelectOptionAsync("N4");
        await page.GetByLabel("What was looked at").FillAsync("Hands, dressing, teaching.");
        await page.GetByRole(AriaRole.Button, new() { Name = "Record the ride-along" }).ClickAsync();
        await Expect(page.GetByText("Recorded. The next one with Linden Pennywhirl is due by")).ToBeVisibleAsync();
        await page.StandsUpAsync("ride-along-recorded");
        await page.Locator("summary").Filter(new() { HasTextString = "Recorded wrongly" }).ClickAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Take the record back" }).ClickAsync();
        await Expect(page.GetByText("It is not said what was wrong with it.")).ToBeVisibleAsync();
        await page.GetByLabel("What was wrong").FillAsync("It was Sorrel who went along.");
        await page.GetByRole(AriaRole.Button, new() { Name = "Take the record back" }).ClickAsync();
        await Expect(page.GetByText("taken back by Marrowby Dovetail: It was Sorrel who went along.")).ToBeVisibleAsync();
        await page.StandsUpAsync("ride-along-taken-back");
    }

    private static async Task OnAPhoneAsync(Browser browser, IPage page, AppUnderTest app, int width)
    {
        IPage phone = await browser.OpenAsync(width, 844, ColorScheme.Dark);
        await phone.Context.AddCookiesAsync((await page.Context.CookiesAsync()).Select(c => new Cookie
        {
            Name = c.Name,
            Value = c.Value,
            Domain = c.Domain,
            Path = c.Path,
            HttpOnly = c.HttpOnly,
            Secure = c.Secure,
        }));
        await phone.GotoAsync(app.Address + "/decisions");
        await phone.GetByRole(AriaRole.Heading, new() { Name = "Ride-alongs" }).ScrollIntoViewIfNeededAsync();
        await phone.StandsUpAsync("dark-ride-alongs");
        await phone.GotoAsync(app.Address + "/week/2027-03-08/work");
        await phone.GetByRole(AriaRole.Link, new() { NameRegex = new("^Thu 11 Mar[:,]") }).ClickAsync();
        await phone.Locator("summary").Filter(new() { HasTextString = "Load of each nurse" }).ClickAsync();
        await Visit(phone, "P36").ClickAsync();
        await Expect(phone.GetByLabel("Who goes along to supervise Linden Pennywhirl")).ToBeVisibleAsync();
        await phone.StandsUpAsync("dark-ride-along-in-hand");
    }

    private static ILocator Visit(IPage page, string patient) =>
        page.Locator("button[data-visit]").Filter(new() { Has = page.Locator(".code", new() { HasTextString = patient }) }).First;
}
