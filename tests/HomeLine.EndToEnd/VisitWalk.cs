using Microsoft.Playwright;
using UglyToad.PdfPig;
using static Microsoft.Playwright.Assertions;

namespace HomeLine.EndToEnd;

/// <summary>
/// A nurse's visit on her phone: her day, the weekly bundle written down with the signal gone in the middle, signed once although it is sent twice,
/// and the clocks that restart from it.
/// </summary>
public sealed class VisitWalk
{
    [Fact]
    public async Task A_visit_is_recorded_at_the_door_through_a_lost_signal_and_counts_once()
    {
        Assert.SkipUnless(Browser.IsInstalled, Browser.Missing);
        await using AppUnderTest app = await AppUnderTest.StartAsync();
        await using Browser browser = await Browser.StartAsync();
        IPage office = await browser.OpenAsync();
        await DemoAgency.OpenAsync(office, app, decides: true);
        await DemoAgency.MoveClockAsync(office, app, "2027-03-09T09:00");
        string link = await DemoAgency.AddNurseAsync(office, app, "Juniper Brasslock", "juniper@agency.example", "N1");

        IPage phone = await browser.OpenAsync(390, 844);
        await DemoAgency.ActivateAsync(phone, link);
        await LookAtTheDayAsync(phone, app);
        await PlanHerWeekAsync(phone, app);
        string posted = await RecordAsync(phone);
        await SentTwiceAsync(phone, app, posted);
        await ClocksRestartedAsync(office, app);
        await AmendAsync(phone, app);
        await RefusedCareAsync(phone, app);
        await DraftComesBackAsync(phone, app);
        await RedFlagAsync(phone, app);
        await InTheOfficeAsync(office, app);
        await SignsAsync(office, phone, app);
    }

    /// <summary>At a home entered by two only: no sign in time is said under Today with whom to call; the sign ends it.</summary>
    private static async Task SignsAsync(IPage office, IPage phone, AppUnderTest app)
    {
        await DemoAgency.MoveClockAsync(office, app, "2027-03-10T16:20");
        await office.GotoAsync(app.Address + "/today");
        await Expect(office.GetByText("No sign that Juniper Brasslock and Bramble Quickstile arrived at Pimpernel Flapstone")).ToBeVisibleAsync();
        await office.StandsUpAsync("today-sign-missing");
        await phone.GotoAsync(app.Address + "/my-day");
        await Expect(phone.GetByText("Two people, and a sign each way")).ToBeVisibleAsync();
        foreach (int width in (int[])[320, 390])
        {
            await phone.SetViewportSizeAsync(width, 844);
            await phone.StandsUpAsync("my-day-signs");
        }

        await phone.GetByRole(AriaRole.Button, new() { Name = "We are there" }).ClickAsync();
        await Expect(phone.GetByText("There since 16:20.")).ToBeVisibleAsync();
        await office.GotoAsync(app.Address + "/today");
        await Expect(office.GetByRole(AriaRole.Heading, new() { Name = "Something happened" })).ToBeVisibleAsync();
        await Expect(office.GetByText("A sign is missing")).ToHaveCountAsync(0);
    }

    private static async Task LookAtTheDayAsync(IPage phone, AppUnderTest app)
    {
        await phone.GotoAsync(app.Address + "/my-day");
        await Expect(phone.GetByRole(AriaRole.Heading, new() { Name = "08:08 Larkspur Cogglewick" })).ToBeVisibleAsync();
        await Expect(phone.GetByText("Told 08:08 to 09:08")).ToBeVisibleAsync();
        Assert.Contains("tel:", await phone.GetByRole(AriaRole.Link, new() { Name = "Call Larkspur Cogglewick" }).GetAttributeAsync("href"), StringComparison.Ordinal);
        Assert.StartsWith("geo:", await phone.GetByRole(AriaRole.Link, new() { Name = "Directions to Larkspur Cogglewick" }).GetAttributeAsync("href"), StringComparison.Ordinal);
        await phone.StandsUpAsync("my-day");
        await phone.SetViewportSizeAsync(320, 700);
        await phone.StandsUpAsync("my-day-narrow");
        await phone.SetViewportSizeAsync(390, 844);
    }

    /// <summary>One press; nobody else's visit moves, and the coordinator decides.</summary>
    private static async Task PlanHerWeekAsync(IPage phone, AppUnderTest app)
    {
        await phone.GetByRole(AriaRole.Link, new() { Name = "My week" }).ClickAsync();
        await Expect(phone.GetByRole(AriaRole.Heading, new() { Name = "As published" })).ToBeVisibleAsync();
        await phone.GetByRole(AriaRole.Button, new() { Name = "Plan my week" }).ClickAsync();
        await Expect(phone.GetByText("It waits for the coordinator.")).ToBeVisibleAsync();
        foreach (int width in (int[])[1280, 320, 390])
        {
            await phone.SetViewportSizeAsync(width, 844);
            await phone.StandsUpAsync("my-week");
        }

        await phone.GotoAsync(app.Address + "/my-day");
    }

    /// <returns>What was posted to sign.</returns>
    private static async Task<string> RecordAsync(IPage phone)
    {
        await phone.GetByRole(AriaRole.Link, new() { Name = "Record the visit to Larkspur Cogglewick" }).ClickAsync();
        await Expect(phone.GetByRole(AriaRole.Heading, new() { Level = 1, Name = "Record the visit to Larkspur Cogglewick" })).ToBeVisibleAsync();
        Assert.DoesNotContain("Larkspur", await phone.TitleAsync(), StringComparison.Ordinal);
        Assert.DoesNotContain("Larkspur", phone.Url, StringComparison.Ordinal);
        await phone.StandsUpAsync("record");

        await phone.GetByRole(AriaRole.Button, new() { Name = "Check what I wrote" }).ClickAsync();
        await Expect(phone.GetByText("Nothing you typed is lost")).ToBeVisibleAsync();
        await phone.StandsUpAsync("record-faults");

        await phone.GetByLabel("Arrived").FillAsync("08:10");
        await phone.GetByLabel("I asked about fever").CheckAsync();
        await phone.GetByRole(AriaRole.Button, new() { Name = "All of it was done" }).ClickAsync();
        await phone.Context.SetOfflineAsync(true);
        await phone.GetByLabel("I looked: no redness").CheckAsync();
        await phone.GetByLabel("Length outside").FillAsync("1");
        await phone.GetByLabel("Flushed").CheckAsync();
        await phone.GetByLabel("Blood return").SelectOptionAsync("Brisk");
        await phone.GetByLabel("Drawn at").FillAsync("08:20");
        await phone.GetByRole(AriaRole.Button, new() { Name = "Check what I wrote" }).ClickAsync();
        await Expect(phone.GetByText("No signal. What you wrote is kept on this device.")).ToBeVisibleAsync();
        await phone.KeepPictureAsync("record-no-signal");
        await phone.Context.SetOfflineAsync(false);
        await Expect(phone.GetByRole(AriaRole.Heading, new() { Name = "Before you sign" })).ToBeVisibleAsync();

        await Expect(phone.GetByText("Sun 14 Mar to Tue 16 Mar").First).ToBeVisibleAsync();
        ILocator answers = phone.Locator("input[name^='answer:']");
        for (int i = 0; i < await answers.CountAsync(); i++) await answers.Nth(i).FillAsync("measured twice, told the manager");
        await phone.StandsUpAsync("record-before-signing");
        IRequest signing = await phone.RunAndWaitForRequestAsync(
            () => phone.GetByRole(AriaRole.Button, new() { Name = "Sign and lock" }).ClickAsync(),
            request => request.Method == "POST" && request.Url.EndsWith("/record", StringComparison.Ordinal));
        await SignedAsync(phone);
        await Expect(phone.GetByRole(AriaRole.Heading, new() { Name = "What was reset, and the new windows" })).ToBeVisibleAsync();
        await phone.StandsUpAsync("recorded");
        Assert.Equal(0, await phone.EvaluateAsync<int>("() => Object.keys(localStorage).filter(name => name.startsWith('homeline-visit-draft:')).length"));
        return signing.PostData!;
    }

    private static async Task SentTwiceAsync(IPage phone, AppUnderTest app, string posted)
    {
        string signed = new Uri(phone.Url).AbsolutePath;
        string again = await phone.EvaluateAsync<string>(
            "async body => (await fetch('/visits/2027-03-09-P12/record', { method: 'POST', headers: { 'Content-Type': 'application/x-www-form-urlencoded' }, body })).url", posted);
        Assert.Equal(signed, new Uri(again).AbsolutePath);
        await phone.GotoAsync(app.Address + "/visits");
        await Expect(phone.GetByRole(AriaRole.Link, new() { Name = "Larkspur Cogglewick" })).ToHaveCountAsync(1);
        await phone.StandsUpAsync("visits");
        await phone.GotoAsync(app.Address + "/my-day");
        await Expect(phone.GetByRole(AriaRole.Heading, new() { Name = "09:31 Dittany Gigglesby" })).ToBeVisibleAsync();
        await Expect(phone.GetByRole(AriaRole.Heading, new() { Name = "Recorded" })).ToBeVisibleAsync();
    }

    private static async Task ClocksRestartedAsync(IPage office, AppUnderTest app)
    {
        await office.GotoAsync(app.Address + "/patients/P12");
        await Expect(office.GetByText("Sun 14 Mar to Tue 16 Mar").First).ToBeVisibleAsync();
        await office.GotoAsync(app.Address + "/due");
        await office.GetByLabel("Find a patient").FillAsync("Larkspur");
        await Expect(office.GetByText("Sun 14 Mar to Tue 16 Mar").First).ToBeVisibleAsync();
    }

    private static async Task AmendAsync(IPage phone, AppUnderTest app)
    {
        await phone.GotoAsync(app.Address + "/visits/records/V1/amend");
        await Expect(phone.GetByLabel("Length outside")).ToHaveValueAsync("1");
        await phone.GetByLabel("Why is the record amended?").FillAsync("it was gauze");
        await phone.GetByLabel("Put on").First.SelectOptionAsync("Gauze");
        await phone.GetByRole(AriaRole.Button, new() { Name = "Check what I wrote" }).ClickAsync();
        await Expect(phone.GetByText("The first record stays readable")).ToBeVisibleAsync();
        await phone.StandsUpAsync("record-amend");
        await phone.GetByRole(AriaRole.Button, new() { Name = "Sign and lock" }).ClickAsync();
        await SignedAsync(phone);
        await Expect(phone.GetByText("it was gauze").First).ToBeVisibleAsync();
        await phone.GetByRole(AriaRole.Link, new() { Name = "the first record" }).ClickAsync();
        await Expect(phone.GetByText("This record was amended.")).ToBeVisibleAsync();
    }

    private static async Task RefusedCareAsync(IPage phone, AppUnderTest app)
    {
        await phone.GotoAsync(app.Address + "/visits/2027-03-09-P04/record");
        await phone.GetByLabel("Arrived").FillAsync("08:59");
        await phone.GetByLabel("I asked about fever").CheckAsync();
        await phone.GetByLabel("I looked: no redness").CheckAsync();
        ILocator refused = phone.GetByLabel("Not done");
        for (int i = 0; i < await refused.CountAsync(); i++)
        {
            await refused.Nth(i).CheckAsync();
            await phone.GetByLabel("Why not").Nth(i).SelectOptionAsync("Refused");
        }

        await phone.GetByRole(AriaRole.Button, new() { Name = "Check what I wrote" }).ClickAsync();
        await Expect(phone.GetByText("No clock moves.")).ToBeVisibleAsync();
        await phone.GetByRole(AriaRole.Button, new() { Name = "Sign and lock" }).ClickAsync();
        await SignedAsync(phone);
        await phone.GotoAsync(app.Address + "/visits");
        await phone.GetByRole(AriaRole.Button, new() { Name = "Told about Dittany Gigglesby" }).ClickAsync();
        await Expect(phone.GetByText("It is not said what was told and answered.")).ToBeVisibleAsync();
        await phone.StandsUpAsync("visits-to-tell");
        await phone.GetByLabel("What was said, and the answer").FillAsync("refused today; the level is asked for again");
        await phone.GetByRole(AriaRole.Button, new() { Name = "Told about Dittany Gigglesby" }).ClickAsync();
        await Expect(phone.GetByRole(AriaRole.Button, new() { Name = "Told about Dittany Gigglesby" })).ToHaveCountAsync(0);
    }

    /// <summary>Signed, and the page's script has let the form go that lay on the device: whoever goes on before would find it on her day.</summary>
    private static async Task SignedAsync(IPage phone)
    {
        await Expect(phone.GetByText("Signed and locked.")).ToBeVisibleAsync();
        await phone.WaitForFunctionAsync("() => [...document.querySelectorAll('[data-drop-draft]')].every(one => !localStorage.getItem('homeline-visit-draft:' + one.dataset.dropDraft))");
    }

    private static async Task DraftComesBackAsync(IPage phone, AppUnderTest app)
    {
        await phone.GotoAsync(app.Address + "/visits/2027-03-09-P06/record");
        await phone.GetByText("Note, allergy told of, incident").ClickAsync();
        await phone.GetByLabel("Note", new() { Exact = true }).FillAsync("tape rolled at the edge");
        await phone.WaitForFunctionAsync("() => localStorage.getItem('homeline-visit-draft:2027-03-09-P06')");
        string kept = await phone.EvaluateAsync<string>("() => localStorage.getItem('homeline-visit-draft:2027-03-09-P06')");
        Assert.DoesNotContain("tape", kept, StringComparison.Ordinal);
        await phone.GotoAsync(app.Address + "/my-day");
        await Expect(phone.Locator("[data-draft-note]:not([hidden])")).ToHaveTextAsync("Begun on this device and not signed.");
        await phone.GotoAsync(app.Address + "/visits/2027-03-09-P06/record");
        await Expect(phone.GetByText("was put back")).ToBeVisibleAsync();
        await Expect(phone.GetByLabel("Note", new() { Exact = true })).ToHaveValueAsync("tape rolled at the edge");
    }

    private static async Task RedFlagAsync(IPage phone, AppUnderTest app)
    {
        await phone.GotoAsync(app.Address + "/visits/unplanned/P01/record");
        await phone.GetByLabel("Why was this visit made?").FillAsync("called: warm arm");
        await phone.GetByLabel("Arrived").FillAsync("08:45");
        await phone.GetByLabel("I asked about fever").CheckAsync();
        await phone.GetByLabel("Something was found").CheckAsync();
        await phone.GetByLabel("pus (call)").CheckAsync();
        await phone.GetByRole(AriaRole.Button, new() { Name = "Check what I wrote" }).ClickAsync();
        await Expect(phone.GetByText("Stop. A licensed person must decide now.")).ToBeVisibleAsync();
        await Expect(phone.GetByText("It books nothing.")).ToBeVisibleAsync();
        ILocator answers = phone.Locator("input[name^='answer:']");
        for (int i = 0; i < await answers.CountAsync(); i++) await answers.Nth(i).FillAsync("asked, none");
        await phone.StandsUpAsync("record-stop");
        await phone.GetByRole(AriaRole.Button, new() { Name = "Sign and lock" }).ClickAsync();
        await Expect(phone.GetByRole(AriaRole.Heading, new() { Name = "Tell these people" })).ToBeVisibleAsync();
        await Expect(phone.GetByText("until a licensed person releases it").First).ToBeVisibleAsync();
        await phone.StandsUpAsync("recorded-stop");
    }

    private static async Task InTheOfficeAsync(IPage office, AppUnderTest app)
    {
        await office.GotoAsync(app.Address + "/decisions");
        await Expect(office.GetByText("Anise Kettledown").First).ToBeVisibleAsync();
        await office.GotoAsync(app.Address + "/my-day?nurse=N3");
        await Expect(office.Locator(".lead")).ToContainTextAsync("Sorrel Mudlark");
        await office.StandsUpAsync("my-day-office");
        await office.GotoAsync(app.Address + "/patients/P02/add-line");
        await office.GetByLabel("Kind").SelectOptionAsync("Midline");
        await office.GetByLabel("Placed on").FillAsync("2027-03-10");
        await office.GetByRole(AriaRole.Button, new() { Name = "Add the line" }).ClickAsync();
        await Expect(office.GetByText("lies in the future")).ToBeVisibleAsync();
        await office.StandsUpAsync("add-line");
        await office.GetByLabel("Placed on").FillAsync("2027-03-08");
        await office.GetByLabel("Dressing since then").SelectOptionAsync("Film");
        await office.GetByRole(AriaRole.Button, new() { Name = "Add the line" }).ClickAsync();
        await Expect(office.GetByText("P02-2 is added.")).ToBeVisibleAsync();
        await office.GotoAsync(app.Address + "/visits/records/V1");
        await office.StandsUpAsync("recorded-office");
        foreach (string reader in (string[])["Prescriber", "Patient"])
        {
            await office.GetByLabel("Summary for").SelectOptionAsync(reader);
            IDownload download = await office.RunAndWaitForDownloadAsync(() => office.GetByRole(AriaRole.Button, new() { Name = "Print the summary" }).ClickAsync());
            Assert.DoesNotContain("Larkspur", download.SuggestedFilename, StringComparison.Ordinal);
            string file = Path.Combine(Path.GetTempPath(), $"homeline-{Guid.NewGuid():N}.pdf");
            await download.SaveAsAsync(file);
            using (PdfDocument pdf = PdfDocument.Open(file))
            {
                string text = string.Concat(pdf.GetPages().Select(p => p.Text));
                Assert.Contains("Page 1 of", text.Replace(" of", " of", StringComparison.Ordinal), StringComparison.Ordinal);
                Assert.Contains("14 Mar to Tue 16 Mar", text, StringComparison.Ordinal);
            }

            if (Environment.GetEnvironmentVariable("SCREENSHOTS") is { Length: > 0 } folder) File.Copy(file, Path.Combine(folder, $"visit-{reader}.pdf"), overwrite: true);
            File.Delete(file);
        }
    }
}
