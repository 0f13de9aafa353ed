using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace HomeLine.EndToEnd;

/// <summary>
/// A whole day without signal on a phone: the day and every form open from the device, a visit written there waits in a list and arrives once, what is asked waits
/// for its writer, and nothing stays after signing out, after the day, or once the account is shut.
/// </summary>
public sealed class NoSignalWalk
{
    private const string First = "2027-03-09-P12";

    [Fact]
    public async Task A_day_is_read_and_written_without_signal_and_arrives_once()
    {
        Assert.SkipUnless(Browser.IsInstalled, Browser.Missing);
        await using AppUnderTest app = await AppUnderTest.StartAsync();
        await using Browser browser = await Browser.StartAsync();
        IPage office = await browser.OpenAsync();
        await DemoAgency.OpenAsync(office, app);
        await DemoAgency.MoveClockAsync(office, app, "2027-03-09T09:00");
        string link = await DemoAgency.AddNurseAsync(office, app, "Juniper Brasslock", "juniper@agency.example", "N1");
        IPage phone = await browser.OpenAsync(390, 844);
        await DemoAgency.ActivateAsync(phone, link);

        await phone.GotoAsync(app.Address + "/my-day");
        await Expect(phone.Locator("[data-day-status]")).ToContainTextAsync("are on this device since");
        string[] forms = await phone.EvaluateAsync<string[]>("() => JSON.parse(document.querySelector('[data-day]').dataset.day).pages");
        Assert.True(forms.Length >= 3);
        await NothingReadableAsync(phone);
        await phone.StandsUpAsync("my-day-kept");

        await phone.Context.SetOfflineAsync(true);
        foreach (string form in forms)
        {
            await phone.GotoAsync(app.Address + form);
            await Expect(phone.GetByText("No signal: you read what this device kept at")).ToBeVisibleAsync();
            await Expect(phone.GetByRole(AriaRole.Button, new() { Name = "Check what I wrote" })).ToBeVisibleAsync();
        }

        await WriteAsync(phone, app);
        await AskedAboutAsync(phone, app, forms);
        await phone.GotoAsync(app.Address + "/due");
        await Expect(phone.GetByText("This page is not on this device.")).ToBeVisibleAsync();
        await phone.StandsUpAsync("away-not-here");
        await phone.GotoAsync(app.Address + "/my-day");
        await Expect(phone.GetByText("2 records wait on this device")).ToBeVisibleAsync();
        await phone.StandsUpAsync("my-day-waiting");

        await phone.Context.SetOfflineAsync(false);
        await Expect(phone.GetByText("Sent and signed at")).ToBeVisibleAsync();
        await Expect(phone.GetByText("▲ Something")).ToBeVisibleAsync();
        await Expect(phone.GetByRole(AriaRole.Heading, new() { Name = "Recorded", Exact = true })).ToBeVisibleAsync();
        await phone.StandsUpAsync("my-day-sent");
        await office.GotoAsync(app.Address + "/visits");
        await Expect(office.GetByRole(AriaRole.Link, new() { Name = "Larkspur Cogglewick" })).ToHaveCountAsync(1);

        await CodeAsync(phone, app);
        await OverAsync(phone, app);
        await ShutAsync(office, phone, app);
    }

    /// <summary>Of names, addresses and what was typed nothing can be read in what the browser stores.</summary>
    private static async Task NothingReadableAsync(IPage phone)
    {
        string stored = await phone.EvaluateAsync<string>(
            """
            async () => {
              const shelf = await new Promise(done => { const asked = indexedDB.open('homeline-day', 1); asked.onsuccess = () => done(asked.result); });
              const all = name => new Promise(done => { const asked = shelf.transaction(name).objectStore(name).getAll(); asked.onsuccess = () => done(asked.result); });
              const looks = await Promise.all((await (await caches.open('homeline-looks')).matchAll()).map(one => one.text()));
              return JSON.stringify([await all('pages'), await all('about'), looks, { ...localStorage }]);
            }
            """);
        Assert.Contains("secret", stored, StringComparison.Ordinal);
        Assert.DoesNotContain("Larkspur", stored, StringComparison.Ordinal);
        Assert.DoesNotContain("Gigglesby", stored, StringComparison.Ordinal);
    }

    private static async Task WriteAsync(IPage phone, AppUnderTest app)
    {
        await phone.GotoAsync(app.Address + $"/visits/{First}/record");
        await phone.GetByLabel("Arrived").FillAsync("08:10");
        await phone.GetByLabel("I asked about fever").CheckAsync();
        await phone.GetByRole(AriaRole.Button, new() { Name = "All of it was done" }).ClickAsync();
        await phone.GetByLabel("I looked: no redness").CheckAsync();
        await phone.GetByLabel("Length outside").FillAsync("0");
        await phone.GetByLabel("Flushed").CheckAsync();
        await phone.GetByLabel("Blood return").SelectOptionAsync("Brisk");
        await phone.GetByLabel("Drawn at").FillAsync("08:20");
        // Closed and opened again without signal: what was typed is there.
        await phone.WaitForFunctionAsync($"() => localStorage.getItem('homeline-visit-draft:{First}')");
        await phone.GetByRole(AriaRole.Button, new() { Name = "Check what I wrote" }).ClickAsync();
        await Expect(phone.GetByText("call now and do not wait for the signal")).ToBeVisibleAsync();
        await phone.ReloadAsync();
        await Expect(phone.GetByText("was put back")).ToBeVisibleAsync();
        await Expect(phone.GetByLabel("Drawn at")).ToHaveValueAsync("08:20");
        await phone.GetByRole(AriaRole.Button, new() { Name = "Check what I wrote" }).ClickAsync();
        await phone.StandsUpAsync("record-away");
        await phone.GetByRole(AriaRole.Button, new() { Name = "I am done here" }).ClickAsync();
        await Expect(phone.GetByText("1 record waits on this device")).ToBeVisibleAsync();
        await Expect(phone.GetByText("Written on this device; it waits to be sent.")).ToBeVisibleAsync();
    }

    /// <summary>A form with nothing in it is done as well; the office has to ask, and it waits.</summary>
    private static async Task AskedAboutAsync(IPage phone, AppUnderTest app, string[] forms)
    {
        await phone.GotoAsync(app.Address + forms.First(f => !f.Contains(First, StringComparison.Ordinal)));
        await phone.GetByRole(AriaRole.Button, new() { Name = "Check what I wrote" }).ClickAsync();
        await phone.GetByRole(AriaRole.Button, new() { Name = "I am done here" }).ClickAsync();
        await Expect(phone.GetByText("2 records wait on this device")).ToBeVisibleAsync();
    }

    /// <summary>A closed page opens again without signal under the code of the day, and with nothing else.</summary>
    private static async Task CodeAsync(IPage phone, AppUnderTest app)
    {
        await Expect(phone.Locator("[data-day-status]")).ToContainTextAsync("are on this device since");
        await phone.GetByText("Choose a code, so that").ClickAsync();
        await phone.GetByLabel("Code of 8 or more").FillAsync("ninepins7");
        await phone.GetByRole(AriaRole.Button, new() { Name = "Use this code today" }).ClickAsync();
        await Expect(phone.Locator("[data-day-status]")).ToContainTextAsync("With your code");
        await phone.Context.SetOfflineAsync(true);
        await phone.EvaluateAsync("() => sessionStorage.clear()");
        await phone.GotoAsync(app.Address + "/my-day");
        await phone.GetByLabel("Code", new() { Exact = true }).FillAsync("tenpins77");
        await phone.GetByRole(AriaRole.Button, new() { Name = "Open the day" }).ClickAsync();
        await Expect(phone.GetByText("That is not the code. After 9 more wrong ones")).ToBeVisibleAsync();
        await phone.StandsUpAsync("away-code");
        await phone.GetByLabel("Code", new() { Exact = true }).FillAsync("ninepins7");
        await phone.GetByRole(AriaRole.Button, new() { Name = "Open the day" }).ClickAsync();
        await Expect(phone.GetByRole(AriaRole.Heading, new() { Level = 1, Name = "My day" })).ToBeVisibleAsync();
        await phone.Context.SetOfflineAsync(false);
    }

    /// <summary>When the day is over, what lies there is thrown away by whoever opens the browser next.</summary>
    private static async Task OverAsync(IPage phone, AppUnderTest app)
    {
        // With the signal the page comes anew by itself.
        await Expect(phone.Locator("[data-day-status]")).ToContainTextAsync("are on this device since");
        await phone.Context.SetOfflineAsync(true);
        await phone.EvaluateAsync("async () => keptDay.note({ ...await keptDay.about(), until: Date.now() - 1 })");
        await Assert.ThrowsAnyAsync<PlaywrightException>(() => phone.ReloadAsync());
        await phone.Context.SetOfflineAsync(false);
        await phone.GotoAsync(app.Address + "/visits");
        Assert.Equal(0, await KeptPagesAsync(phone));
    }

    /// <summary>Shut by the office: what lies there goes with the next signal, and signing out leaves nothing either.</summary>
    private static async Task ShutAsync(IPage office, IPage phone, AppUnderTest app)
    {
        await phone.GotoAsync(app.Address + "/my-day");
        await Expect(phone.Locator("[data-day-status]")).ToContainTextAsync("are on this device since");
        Assert.NotEqual(0, await KeptPagesAsync(phone));
        phone.Dialog += (_, dialog) => dialog.AcceptAsync();
        await phone.GetByRole(AriaRole.Button, new() { Name = "Sign out" }).ClickAsync();
        await Expect(phone.GetByRole(AriaRole.Heading, new() { Level = 1, Name = "Sign in" })).ToBeVisibleAsync();
        Assert.Equal(0, await KeptPagesAsync(phone));

        await phone.GetByLabel("User name").FillAsync("juniper@agency.example");
        await phone.GetByLabel("Password", new() { Exact = true }).FillAsync("a long line of gentle words");
        await phone.GetByRole(AriaRole.Button, new() { Name = "Sign in" }).ClickAsync();
        await phone.GotoAsync(app.Address + "/my-day");
        await Expect(phone.Locator("[data-day-status]")).ToContainTextAsync("are on this device since");
        await phone.Context.SetOfflineAsync(true);
        await office.GotoAsync(app.Address + "/accounts");
        ILocator row = office.GetByRole(AriaRole.Row, new() { Name = "Juniper Brasslock" });
        await row.GetByRole(AriaRole.Button, new() { Name = "Disable" }).ClickAsync();
        await Expect(row.GetByRole(AriaRole.Button, new() { Name = "Enable" })).ToBeVisibleAsync();
        await phone.Context.SetOfflineAsync(false);
        await Expect(phone.GetByRole(AriaRole.Heading, new() { Level = 1, Name = "Sign in" })).ToBeVisibleAsync();
        Assert.Equal(0, await KeptPagesAsync(phone));
    }

    private static Task<int> KeptPagesAsync(IPage phone) => phone.EvaluateAsync<int>(
        """
        async () => {
          const shelf = await new Promise(done => { const asked = indexedDB.open('homeline-day', 1); asked.onsuccess = () => done(asked.result); });
          return new Promise(done => { const asked = shelf.transaction('pages').objectStore('pages').count(); asked.onsuccess = () => { shelf.close(); done(asked.result); }; });
        }
        """);
}
