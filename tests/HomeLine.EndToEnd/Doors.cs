using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace HomeLine.EndToEnd;

/// <summary>The short way in for walks that begin with the demonstration agency open.</summary>
internal static class Doors
{
    private const string Password = "a long line of gentle words";

    /// <summary>First administrator, who is also a clinical manager; demonstration agency; and there you are.</summary>
    public static async Task OpenDemoAsync(this IPage page, AppUnderTest app)
    {
        await page.GotoAsync(app.FirstRunAddress);
        await page.GetByLabel("Your name").FillAsync("Hyssop Lanternlow");
        await page.GetByLabel("User name").FillAsync("hyssop@agency.example");
        await page.GetByLabel("Password", new() { Exact = true }).FillAsync(Password);
        await page.GetByRole(AriaRole.Checkbox, new() { Name = "I hold a licence" }).CheckAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Make the administrator" }).ClickAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Open the demonstration agency" }).ClickAsync();
        await Expect(page.GetByRole(AriaRole.Heading, new() { Level = 1, Name = "Due" })).ToBeVisibleAsync();
    }

    /// <summary>A phone in the dark, signed in as the page is.</summary>
    public static async Task<IPage> OpenPhoneAsync(this Browser browser, IPage page)
    {
        IPage phone = await browser.OpenAsync(390, 844, ColorScheme.Dark);
        await phone.Context.AddCookiesAsync((await page.Context.CookiesAsync()).Select(c => new Cookie
        {
            Name = c.Name,
            Value = c.Value,
            Domain = c.Domain,
            Path = c.Path,
            HttpOnly = c.HttpOnly,
            Secure = c.Secure,
        }));
        return phone;
    }
}
