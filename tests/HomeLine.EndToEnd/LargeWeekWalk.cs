using System.Text.RegularExpressions;
using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace HomeLine.EndToEnd;

/// <summary>
/// The week of a large invented agency in a browser. Runs only where HOMELINE_LARGE_AGENCY names the address of one that is served
/// (<c>HomeLine.Benchmarks serve --size 60x700 --minutes 10</c>), since filling and planning it takes minutes.
/// </summary>
public sealed class LargeWeekWalk
{
    private const string Named = "HOMELINE_LARGE_AGENCY";

    [Fact]
    public async Task Sixty_nurses_can_be_looked_at_and_worked_on()
    {
        string? address = Environment.GetEnvironmentVariable(Named);
        Assert.SkipUnless(Browser.IsInstalled, Browser.Missing);
        Assert.SkipUnless(address is { Length: > 0 }, $"{Named} names no served agency.");
        await using Browser browser = await Browser.StartAsync();
        foreach (int width in (int[])[1440, 390])
        {
            IPage page = await browser.OpenAsync(width, 900);
            await page.GotoAsync(address + "/sign-in");
            await page.GetByLabel("User name").FillAsync("bench@agency.example");
            await page.GetByLabel("Password", new() { Exact = true }).FillAsync("a long line of gentle words");
            await page.Keyboard.PressAsync("Enter");
            await Expect(page).Not.ToHaveURLAsync(new Regex("sign-in"));
            await page.GotoAsync(address + "/week/2027-03-08");
            await Expect(page.GetByText("60 nurses are shown.")).ToBeVisibleAsync();
            await page.KeepPictureAsync("large-week");
            await page.GetByLabel("Lives near or visits").SelectOptionAsync("Cawsey");
            await page.GetByRole(AriaRole.Button, new() { Name = "Show", Exact = true }).ClickAsync();
            await Expect(page.GetByText("of 60 nurses are shown.")).ToBeVisibleAsync();
            await page.StandsUpAsync("large-week-area");
            await page.GetByRole(AriaRole.Link, new() { Name = "Work on this week" }).ClickAsync();
            await Expect(page.GetByText("of 60 nurses are shown.")).ToBeVisibleAsync();
            await page.KeepPictureAsync("large-work-area");
            await page.GetByRole(AriaRole.Link, new() { Name = "Show everybody" }).ClickAsync();
            await Expect(page.GetByText("All 60 nurses are shown.")).ToBeVisibleAsync();
            await page.KeepPictureAsync("large-work");
        }
    }
}
