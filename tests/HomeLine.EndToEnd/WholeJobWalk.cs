using Microsoft.Playwright;
using UglyToad.PdfPig;
using static Microsoft.Playwright.Assertions;

namespace HomeLine.EndToEnd;

/// <summary>
/// One walk through the whole job as a new user: first run, what is due, a planned week, a mended Tuesday, a stopped call, printed sheets.
/// </summary>
public sealed class WholeJobWalk
{
    private const string Password = "a long line of gentle words";

    [Fact]
    public async Task From_an_empty_database_to_a_planned_week_a_mended_Tuesday_and_a_printed_sheet()
    {
        Assert.SkipUnless(Browser.IsInstalled, Browser.Missing);
        await using AppUnderTest app = await AppUnderTest.StartAsync();
        await using Browser browser = await Browser.StartAsync();
        IPage page = await browser.OpenAsync();

        await FirstRunAsync(page, app);
        await LookAtWhatIsDueAsync(page, app);
        await LookAtPublishedWeekAsync(page, app);
        await ReportLiftingDressingAsync(page, app);
        await ReportChillsAsync(page, app);
        await PrintAsync(page, app);
        await PlanTheWeekAsync(page, app);
        await ImportAsync(page, app);
        await OnAPhoneAsync(browser, page, app);
    }

    private static async Task FirstRunAsync(IPage page, AppUnderTest app)
    {
        await page.GotoAsync(app.FirstRunAddress);
        await page.StandsUpAsync("first-run");
        await page.GetByLabel("Your name").FillAsync("Marrowby Dovetail");
        await page.GetByLabel("User name").FillAsync("marrowby@agency.example");
        await page.GetByLabel("Password", new() { Exact = true }).FillAsync("short");
        await page.GetByRole(AriaRole.Button, new() { Name = "Make the administrator" }).ClickAsync();
        await Expect(page.GetByText("15").First).ToBeVisibleAsync();
        await page.GetByLabel("Your name").FillAsync("Marrowby Dovetail");
        await page.GetByLabel("User name").FillAsync("marrowby@agency.example");
        await page.GetByLabel("Password", new() { Exact = true }).FillAsync(Password);
        await page.GetByRole(AriaRole.Button, new() { Name = "Make the administrator" }).ClickAsync();
        await page.StandsUpAsync("open-an-agency");
        await page.GetByRole(AriaRole.Button, new() { Name = "Open the demonstration agency" }).ClickAsync();
        await Expect(page.GetByRole(AriaRole.Heading, new() { Level = 1, Name = "Due" })).ToBeVisibleAsync();
    }

    private static async Task LookAtWhatIsDueAsync(IPage page, AppUnderTest app)
    {
        await page.GotoAsync(app.Address + "/due");
        await Expect(page.GetByText("All people here are invented")).ToBeVisibleAsync();
        await Expect(page.GetByText("late by 5 days").First).ToBeVisibleAsync();
        await page.GetByText("Why").First.ClickAsync();
        await Expect(page.GetByText("at least every").First).ToBeVisibleAsync();
        await page.StandsUpAsync("due");
        await page.GotoAsync(app.Address + "/patients/P03");
        await Expect(page.GetByRole(AriaRole.Heading, new() { Level = 1 })).ToContainTextAsync("Clover Zigzagby");
        await page.StandsUpAsync("patient");
    }

    private static async Task LookAtPublishedWeekAsync(IPage page, AppUnderTest app)
    {
        await page.GotoAsync(app.Address + "/week/2027-03-08");
        await Expect(page.GetByText("The checker holds nothing against this week")).ToBeVisibleAsync();
        await page.StandsUpAsync("week");
    }

    private static async Task ReportLiftingDressingAsync(IPage page, AppUnderTest app)
    {
        await DemoAgency.MoveClockAsync(page, app, "2027-03-09T07:52");
        await BeginReportAsync(page, app, "Cl", "spouse");
        await AnswerNoUntilTheEndAsync(page);
        await page.GetByRole(AriaRole.Checkbox).First.WaitForAsync();
        await page.GetByText("An edge", new() { Exact = false }).First.ClickAsync();
        await page.GetByText("bead of moisture", new() { Exact = false }).First.ClickAsync();
        await page.StandsUpAsync("what-is-seen");
        await page.GetByRole(AriaRole.Button, new() { Name = "Look for answers" }).ClickAsync();
        ILocator cards = page.Locator(".answer");
        await Expect(cards).ToHaveCountAsync(3);
        await Expect(cards.Nth(0)).ToContainTextAsync("10:08");
        await Expect(cards.Nth(0)).ToContainTextAsync("Sorrel Mudlark");
        await Expect(cards.Nth(0)).ToContainTextAsync("55 min of driving added");
        await Expect(cards.Nth(1)).ToContainTextAsync("13:32");
        await Expect(cards.Nth(2)).ToContainTextAsync("12:09");
        await Expect(cards.Nth(2)).ToContainTextAsync("98 min later");
        await page.StandsUpAsync("answers");
        await cards.Nth(0).GetByRole(AriaRole.Radio).CheckAsync();
        await page.GetByRole(AriaRole.Checkbox, new() { Name = "Keep the later visit as well" }).CheckAsync();
        await Expect(page.GetByText("Both visits stay.")).ToBeVisibleAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Apply" }).ClickAsync();
        await Expect(page.GetByText("Write why the later visit is still needed.")).ToBeVisibleAsync();
        await page.StandsUpAsync("answers-both");
        await page.GetByRole(AriaRole.Checkbox, new() { Name = "Keep the later visit as well" }).UncheckAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Apply" }).ClickAsync();
        await Expect(page.GetByRole(AriaRole.Heading, new() { Name = "Tell these people" })).ToBeVisibleAsync();
        await Expect(page.GetByText("Laboratory list")).ToBeVisibleAsync();
        await page.StandsUpAsync("to-tell");
    }

    private static async Task ReportChillsAsync(IPage page, AppUnderTest app)
    {
        await DemoAgency.MoveClockAsync(page, app, "2027-03-09T08:05");
        await BeginReportAsync(page, app, "Sedge", "patient");
        while (!await page.GetByRole(AriaRole.Heading, new() { Level = 1 }).Filter(new() { HasTextRegex = new("chills|shak", System.Text.RegularExpressions.RegexOptions.IgnoreCase) }).IsVisibleAsync())
            await AnswerAsync(page, "No");
        await AnswerAsync(page, "Yes");
        await Expect(page.GetByRole(AriaRole.Heading, new() { Name = "Stop. A licensed person must call now." })).ToBeVisibleAsync();
        await Expect(page.GetByText("Held until the clinical manager decides").First).ToBeVisibleAsync();
        Assert.Equal(0, await page.Locator(".answer").CountAsync());
        await page.StandsUpAsync("stopped");
    }

    private static async Task PrintAsync(IPage page, AppUnderTest app)
    {
        await page.GotoAsync(app.Address + "/patients/P03");
        IDownload care = await page.RunAndWaitForDownloadAsync(() => page.GetByRole(AriaRole.Button, new() { Name = "Print the care sheet" }).ClickAsync());
        Assert.Contains("Clover Zigzagby", await TextOfAsync(care), StringComparison.Ordinal);
        await page.GotoAsync(app.Address + "/week/2027-03-08");
        IDownload day = await page.RunAndWaitForDownloadAsync(() =>
            page.GetByRole(AriaRole.Button, new() { Name = "day sheet of Sorrel Mudlark" }).Nth(1).ClickAsync());
        Assert.Contains("Clover Zigzagby", await TextOfAsync(day), StringComparison.Ordinal);
    }

    private static async Task PlanTheWeekAsync(IPage page, AppUnderTest app)
    {
        await page.GotoAsync(app.Address + "/plan/2027-03-15");
        await page.StandsUpAsync("plan");
        await page.GetByRole(AriaRole.Radio, new() { Name = "Quick" }).CheckAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Start planning" }).ClickAsync();
        await page.GetByRole(AriaRole.Link, new() { Name = "Look at the draft" }).ClickAsync(new() { Timeout = 240_000 });
        await Expect(page.GetByText("The checker holds nothing against this week")).ToBeVisibleAsync();
        await page.StandsUpAsync("draft");
    }

    private static async Task ImportAsync(IPage page, AppUnderTest app)
    {
        await page.GotoAsync(app.Address + "/import");
        await page.StandsUpAsync("import");
        await page.Locator("input[type=file]").SetInputFilesAsync(new FilePayload
        {
            Name = "patients.csv",
            MimeType = "text/csv",
            Buffer = "patient,name\r\nP99,Nobody Here,too many\r\n"u8.ToArray(),
        });
        await Expect(page.GetByText("nothing will be stored")).ToBeVisibleAsync();
        await Expect(page.GetByText("This row has 3 fields")).ToBeVisibleAsync();
        await page.StandsUpAsync("import-problems");
        await page.Locator("input[type=file]").SetInputFilesAsync(Directory.GetFiles(app.SeedFolder, "*.csv"));
        await Expect(page.GetByRole(AriaRole.Heading, new() { Name = "What would change" })).ToBeVisibleAsync();
        await page.StandsUpAsync("import-preview");
    }

    private static async Task OnAPhoneAsync(Browser browser, IPage page, AppUnderTest app)
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
        foreach ((string address, string name) in ((string, string)[])
            [("/due", "due"), ("/patients/P03", "patient"), ("/week/2027-03-08", "week"), ("/plan", "plan"), ("/report", "report"), ("/import", "import"), ("/accounts", "accounts")])
        {
            await phone.GotoAsync(app.Address + address);
            await Expect(phone.GetByRole(AriaRole.Heading, new() { Level = 1 })).ToBeVisibleAsync();
            await Expect(phone.Locator(".waiting")).ToHaveCountAsync(0);
            await phone.StandsUpAsync($"dark-{name}");
        }
    }

    private static async Task BeginReportAsync(IPage page, AppUnderTest app, string letters, string caller)
    {
        await page.GotoAsync(app.Address + "/report");
        await page.GetByRole(AriaRole.Combobox).PressSequentiallyAsync(letters);
        await Expect(page.GetByRole(AriaRole.Option).First).ToBeVisibleAsync();
        await page.StandsUpAsync($"find-{letters}");
        await page.Keyboard.PressAsync("Enter");
        await page.GetByLabel("Who is calling?").FillAsync(caller);
        await page.GetByRole(AriaRole.Button, new() { Name = "Ask about symptoms" }).ClickAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Don’t know" }).WaitForAsync();
    }

    private static async Task AnswerNoUntilTheEndAsync(IPage page)
    {
        await page.StandsUpAsync("screen");
        while (await page.GetByRole(AriaRole.Button, new() { Name = "Don’t know" }).IsVisibleAsync())
            await AnswerAsync(page, "No");
    }

    /// <summary>Answers and waits until the next thing stands there.</summary>
    private static async Task AnswerAsync(IPage page, string answer)
    {
        string asked = await page.GetByRole(AriaRole.Heading, new() { Level = 1 }).InnerTextAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = answer, Exact = true }).ClickAsync();
        await Expect(page.GetByRole(AriaRole.Heading, new() { Level = 1 })).Not.ToHaveTextAsync(asked);
    }

    private static async Task<string> TextOfAsync(IDownload download)
    {
        await using Stream stream = await download.CreateReadStreamAsync();
        using var copy = new MemoryStream();
        await stream.CopyToAsync(copy);
        using PdfDocument pdf = PdfDocument.Open(copy.ToArray());
        return string.Join(' ', pdf.GetPages().SelectMany(p => p.GetWords()).Select(w => w.Text));
    }
}
