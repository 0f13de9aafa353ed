using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace HomeLine.EndToEnd;

/// <summary>The shortest way from an empty database to the demonstration agency, signed in.</summary>
internal static class DemoAgency
{
    private const string Password = "a long line of gentle words";

    public static async Task OpenAsync(IPage page, AppUnderTest app, bool decides = false)
    {
        await page.GotoAsync(app.FirstRunAddress);
        await page.GetByLabel("Your name").FillAsync("Marrowby Dovetail");
        await page.GetByLabel("User name").FillAsync("marrowby@agency.example");
        await page.GetByLabel("Password", new() { Exact = true }).FillAsync(Password);
        if (decides) await page.GetByRole(AriaRole.Checkbox, new() { Name = "I hold a licence" }).CheckAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Make the administrator" }).ClickAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Open the demonstration agency" }).ClickAsync();
        await Expect(page.GetByRole(AriaRole.Heading, new() { Level = 1, Name = "Due" })).ToBeVisibleAsync();
    }

    /// <summary>An account for a nurse of the roster.</summary>
    /// <returns>The link with which its person sets the password.</returns>
    public static async Task<string> AddNurseAsync(IPage office, AppUnderTest app, string name, string user, string number)
    {
        await office.GotoAsync(app.Address + "/accounts");
        await office.GetByLabel("Name", new() { Exact = true }).FillAsync(name);
        await office.GetByLabel("User name").FillAsync(user);
        await office.GetByRole(AriaRole.Checkbox, new() { Name = "nurse", Exact = true }).CheckAsync();
        await office.GetByLabel("Number of the nurse").FillAsync(number);
        await office.GetByRole(AriaRole.Button, new() { Name = "Add and make a link" }).ClickAsync();
        return await office.Locator("code").Filter(new() { HasText = "/activate" }).InnerTextAsync();
    }

    /// <summary>Sets the password through a link and signs in.</summary>
    public static async Task ActivateAsync(IPage phone, string link)
    {
        await phone.GotoAsync(link);
        await phone.Locator("#password").FillAsync(Password);
        await phone.GetByRole(AriaRole.Button, new() { Name = "Set the password and sign in" }).ClickAsync();
        await Expect(phone.GetByRole(AriaRole.Heading, new() { Level = 1, Name = "Due" })).ToBeVisibleAsync();
    }

    /// <summary>Signs the same person in where the page was sent to the sign-in.</summary>
    public static async Task SignInAsync(IPage page)
    {
        await page.GetByLabel("User name").FillAsync("marrowby@agency.example");
        await page.GetByLabel("Password", new() { Exact = true }).FillAsync(Password);
        await page.GetByRole(AriaRole.Button, new() { Name = "Sign in" }).ClickAsync();
        await Expect(page.GetByRole(AriaRole.Heading, new() { Name = "Something happened" })).ToBeVisibleAsync();
    }

    /// <summary>A second window on the same sign-in, in another size and light.</summary>
    public static async Task<IPage> OnAPhoneAsync(Browser browser, IPage signedIn)
    {
        IPage phone = await browser.OpenAsync(390, 844, ColorScheme.Dark);
        await phone.Context.AddCookiesAsync((await signedIn.Context.CookiesAsync()).Select(c => new Cookie
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

    /// <summary>
    /// Moves the demo's clock to a local time ("2027-03-09T06:45") on the Due page, which the app then loads anew. The old document is marked, and gone when
    /// the new one stands: waiting for a load event instead can miss one that came in between, going on at once would break off the reload.
    /// </summary>
    public static async Task MoveClockAsync(IPage page, AppUnderTest app, string local)
    {
        await page.GotoAsync(app.Address + "/due");
        await page.GetByText("Demo time").ClickAsync();
        await page.GetByLabel("Set the demo to").FillAsync(local);
        await page.EvaluateAsync("() => document.documentElement.setAttribute('data-before', '')");
        await page.GetByRole(AriaRole.Button, new() { Name = "Move the demo's clock" }).ClickAsync();
        await Expect(page.Locator("html[data-before]")).ToHaveCountAsync(0);
        await Expect(page.Locator(".demo-banner summary")).ToContainTextAsync(local[11..]);
        await Expect(page.Locator(".waiting")).ToHaveCountAsync(0);
    }
}
