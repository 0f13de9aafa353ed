using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace HomeLine.EndToEnd;

/// <summary>The week as people look at it, and a day on our own map: zoomed by buttons and keys, with everything said in the list beside it.</summary>
public sealed class MapWalk
{
    [Fact]
    public async Task A_day_is_looked_at_on_the_map()
    {
        Assert.SkipUnless(Browser.IsInstalled, Browser.Missing);
        await using AppUnderTest app = await AppUnderTest.StartAsync();
        await using Browser browser = await Browser.StartAsync();
        IPage page = await browser.OpenAsync(1440, 900);
        await DemoAgency.OpenAsync(page, app);

        await page.GotoAsync(app.Address + "/week/2027-03-08");
        await page.StandsUpAsync("week");
        await page.GetByRole(AriaRole.Link, new() { Name = "map of Tue 9 Mar" }).ClickAsync();
        await Expect(page.GetByRole(AriaRole.Heading, new() { Name = "Map of Tuesday 9 March 2027" })).ToBeVisibleAsync();
        await page.StandsUpAsync("map");
        await page.GetByRole(AriaRole.Link, new() { Name = "Bramble Quickstile" }).ClickAsync();
        await Expect(page.GetByRole(AriaRole.Img, new() { NameRegex = new("Bramble Quickstile, 4 stops") })).ToBeVisibleAsync();
        await Expect(page.Locator(".way-list li")).ToHaveCountAsync(4);
        await page.StandsUpAsync("map-one-nurse");
        string? before = await page.Locator("svg.map").GetAttributeAsync("viewBox");
        await page.GetByRole(AriaRole.Group, new() { NameRegex = new("^Map;") }).FocusAsync();
        await page.Keyboard.PressAsync("+");
        await Expect(page.Locator("svg.map")).Not.ToHaveAttributeAsync("viewBox", before!);
        await page.GetByRole(AriaRole.Button, new() { Name = "Whole map" }).ClickAsync();
        await Expect(page.Locator("svg.map")).ToHaveAttributeAsync("viewBox", "0 0 1200 880");

        foreach (int width in (int[])[390, 320])
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
            await phone.GotoAsync(app.Address + "/map/2027-03-09?nurse=N2");
            await phone.StandsUpAsync("dark-map");
            await phone.GotoAsync(app.Address + "/week/2027-03-08");
            await phone.StandsUpAsync("dark-week");
            await OneDayAtATimeAsync(phone);
        }
    }

    /// <summary>A phone shows one day: by pressing and by arrow keys the next stands there, the keyboard stays where it was, the address keeps the day.</summary>
    private static async Task OneDayAtATimeAsync(IPage phone)
    {
        await phone.GetByRole(AriaRole.Link, new() { NameRegex = new("^Day after, Tue 9 Mar") }).ClickAsync();
        await Expect(phone.GetByRole(AriaRole.Heading, new() { Name = "Tuesday 9 March 2027" })).ToBeVisibleAsync();
        await Expect(phone.GetByRole(AriaRole.Link, new() { NameRegex = new("^Day after, Wed 10 Mar") })).ToBeFocusedAsync();
        await phone.GetByRole(AriaRole.Link, new() { NameRegex = new("^Tue 9 Mar.*visits") }).FocusAsync();
        await phone.Keyboard.PressAsync("ArrowRight");
        await Expect(phone.GetByRole(AriaRole.Link, new() { NameRegex = new("^Wed 10 Mar.*visits") })).ToBeFocusedAsync();
        await Expect(phone.GetByRole(AriaRole.Heading, new() { Name = "Wednesday 10 March 2027" })).ToBeVisibleAsync();
        await phone.ReloadAsync();
        await Expect(phone.GetByRole(AriaRole.Heading, new() { Name = "Wednesday 10 March 2027" })).ToBeVisibleAsync();
        await phone.StandsUpAsync("dark-week-one-day");
    }
}
