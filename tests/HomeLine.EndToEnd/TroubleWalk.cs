using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace HomeLine.EndToEnd;

/// <summary>A coordinator mends the day: a nurse is out, a pass closes, nobody is home, a patient goes to hospital, a pump sounds. Desktop and phone.</summary>
public sealed class TroubleWalk
{
    [Fact]
    public async Task A_broken_day_is_mended_trouble_by_trouble()
    {
        Assert.SkipUnless(Browser.IsInstalled, Browser.Missing);
        await using AppUnderTest app = await AppUnderTest.StartAsync();
        await using Browser browser = await Browser.StartAsync();
        IPage page = await browser.OpenAsync();
        await DemoAgency.OpenAsync(page, app, decides: true);

        await DemoAgency.MoveClockAsync(page, app, "2027-03-09T06:45");
        await page.GotoAsync(app.Address + "/today");
        await Expect(page.GetByRole(AriaRole.Heading, new() { Name = "Something happened" })).ToBeVisibleAsync();
        await page.StandsUpAsync("today-empty");

        await ANurseIsOutAsync(page);
        await TheNextEventIsPlayedAsync(page, app);
        await NobodyIsHomeAsync(page, app);
        await APatientGoesToHospitalAsync(page, app);
        await APumpSoundsAsync(page, app);
        await OnAPhoneAsync(browser, page, app);
    }

    private static async Task ANurseIsOutAsync(IPage page)
    {
        await page.GetByRole(AriaRole.Link, new() { Name = "A nurse is out" }).ClickAsync();
        await page.GetByRole(AriaRole.Combobox, new() { Name = "Which nurse?" }).PressSequentiallyAsync("Ju");
        await Expect(page.GetByRole(AriaRole.Option, new() { Name = "Juniper Brasslock" })).ToBeVisibleAsync();
        await page.GetByRole(AriaRole.Combobox, new() { Name = "Which nurse?" }).PressAsync("Enter");
        await page.GetByLabel("Why, in a word").FillAsync("ill");
        await page.StandsUpAsync("nurse-out");
        await page.GetByRole(AriaRole.Button, new() { Name = "See who takes her visits" }).ClickAsync();

        await Expect(page.GetByRole(AriaRole.Heading, new() { Level = 1, Name = "Juniper Brasslock is out" })).ToBeVisibleAsync();
        await Expect(page.Locator(".ranked li").First).ToContainTextAsync("Dittany Gigglesby");
        await page.StandsUpAsync("nurse-out-answers");
        await page.GetByRole(AriaRole.Button, new() { Name = "Apply A:" }).ClickAsync();
        await Expect(page.GetByText("Answer A is applied.")).ToBeVisibleAsync();
        await page.GetByRole(AriaRole.Checkbox).First.CheckAsync();
        await Expect(page.GetByText("Told by Marrowby Dovetail.").First).ToBeVisibleAsync();
        await page.StandsUpAsync("nurse-out-applied");
    }

    private static async Task TheNextEventIsPlayedAsync(IPage page, AppUnderTest app)
    {
        await DemoAgency.MoveClockAsync(page, app, "2027-03-09T13:40");
        await page.GetByRole(AriaRole.Button, new() { Name = "Play the next event" }).ClickAsync();
        await Expect(page.GetByRole(AriaRole.Heading, new() { Level = 1, Name = "A road is closed" })).ToBeVisibleAsync();
        await Expect(page.GetByRole(AriaRole.Checkbox, new() { Name = "Larch Pass" })).ToBeCheckedAsync();
        await page.StandsUpAsync("closure");
        await page.GetByRole(AriaRole.Button, new() { Name = "See who cannot be reached" }).ClickAsync();
        await Expect(page.GetByRole(AriaRole.Heading, new() { Name = "Who can wait least" })).ToBeVisibleAsync();
        await Expect(page.Locator("main").GetByText("14:00 courier")).ToBeVisibleAsync();
        await page.StandsUpAsync("closure-answers");
    }

    private static async Task NobodyIsHomeAsync(IPage page, AppUnderTest app)
    {
        await DemoAgency.MoveClockAsync(page, app, "2027-03-09T12:50");
        await page.GotoAsync(app.Address + "/today/door");
        await page.GetByLabel("Which visit?").SelectOptionAsync(new SelectOptionValue { Index = 5 });
        await page.GetByRole(AriaRole.Button, new() { Name = "Another try" }).ClickAsync();
        await page.GetByLabel("How").Nth(1).FillAsync("phoned, no answer");
        await page.StandsUpAsync("door");
        await page.GetByRole(AriaRole.Button, new() { Name = "See what follows" }).ClickAsync();
        await Expect(page.GetByRole(AriaRole.Heading, new() { Name = "Tell these people" })).ToBeVisibleAsync();
        await Expect(page.GetByText("Recorded as missed.")).ToBeVisibleAsync();
        await page.StandsUpAsync("door-answers");
    }

    private static async Task APatientGoesToHospitalAsync(IPage page, AppUnderTest app)
    {
        await page.GotoAsync(app.Address + "/today/hospital");
        await page.GetByRole(AriaRole.Combobox).PressSequentiallyAsync("Qu");
        await Expect(page.GetByRole(AriaRole.Option).First).ToBeVisibleAsync();
        await page.GetByRole(AriaRole.Combobox).PressAsync("Enter");
        await page.StandsUpAsync("hospital");
        await page.GetByRole(AriaRole.Button, new() { Name = "Put on hold" }).ClickAsync();
        await Expect(page.GetByRole(AriaRole.Heading, new() { Level = 1 })).ToContainTextAsync("is in hospital");
        await page.StandsUpAsync("hospital-freed");
    }

    private static async Task APumpSoundsAsync(IPage page, AppUnderTest app)
    {
        await page.GotoAsync(app.Address + "/today/alarm?patient=P23");
        await page.GetByLabel("Who is calling?").FillAsync("spouse");
        await page.GetByRole(AriaRole.Button, new() { Name = "Ask about symptoms" }).ClickAsync();
        ILocator no = page.GetByRole(AriaRole.Button, new() { Name = "No", Exact = true });
        ILocator script = page.GetByRole(AriaRole.Heading, new() { Name = "The pump" });
        while (true)
        {
            await Expect(no.Or(script)).ToBeVisibleAsync();
            if (await script.IsVisibleAsync()) break;
            string question = await page.Locator("#question").InnerTextAsync();
            await no.ClickAsync();
            await Expect(page.Locator("#question").Filter(new() { HasText = question })).ToHaveCountAsync(0);
        }

        await page.StandsUpAsync("alarm-script");
        await page.GetByRole(AriaRole.Button, new() { Name = "It goes on" }).ClickAsync();
        await Expect(page.GetByRole(AriaRole.Heading, new() { Level = 1, Name = "Stop." })).ToBeVisibleAsync();
        await Expect(page.GetByRole(AriaRole.Button, new() { Name = "Apply" })).ToHaveCountAsync(0);
        await page.StandsUpAsync("alarm-stopped");
        await page.GotoAsync(app.Address + "/today");
        await Expect(page.GetByRole(AriaRole.Heading, new() { Name = "A licensed person has to decide" })).ToBeVisibleAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "No answer:" }).First.ClickAsync();
        await Expect(page.GetByText("Tried 1 time")).ToBeVisibleAsync();
        await page.StandsUpAsync("today");
    }

    private static async Task OnAPhoneAsync(Browser browser, IPage page, AppUnderTest app)
    {
        IPage phone = await DemoAgency.OnAPhoneAsync(browser, page);
        await phone.GotoAsync(app.Address + "/today");
        await Expect(phone.GetByRole(AriaRole.Heading, new() { Name = "Hand-over card" })).ToBeVisibleAsync();
        await phone.StandsUpAsync("dark-today");
        await phone.GetByRole(AriaRole.Link, new() { Name = "Closed: Larch Pass" }).ClickAsync();
        await Expect(phone.GetByRole(AriaRole.Heading, new() { Name = "Who can wait least" })).ToBeVisibleAsync();
        await phone.StandsUpAsync("dark-closure-answers");
        await phone.GotoAsync(app.Address + "/today/referral");
        await Expect(phone.GetByLabel("Name", new() { Exact = true })).ToBeVisibleAsync();
        await phone.SetViewportSizeAsync(320, 700);
        await phone.StandsUpAsync("dark-referral");
    }
}
