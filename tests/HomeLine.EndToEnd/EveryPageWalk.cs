using System.Text.RegularExpressions;
using Deque.AxeCore.Commons;
using Deque.AxeCore.Playwright;
using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace HomeLine.EndToEnd;

/// <summary>
/// Opens every page the program has, by the addresses in its sources, so that none is left out: no accessibility finding of any level by day and by night, nothing
/// wider than the window at 1280 px, at twice the size (640 px) and at 320 px, nothing that moves by itself, no target lower than 44 px on a phone (WCAG 2.2, 2.5.5).
/// </summary>
public sealed partial class EveryPageWalk
{
    /// <summary>An address for each page, and more than one where a page has an empty state or says that there is nothing.</summary>
    private static readonly Dictionary<string, string[]> Addresses = new()
    {
        ["/activate"] = ["/activate?link=none"],
        ["/map/{Date}"] = ["/map/2027-03-09", "/map/2027-06-08"],
        ["/my-day"] = ["/my-day?nurse=N1", "/my-day?nurse=N1&day=2027-06-08"],
        ["/my-week/{Day}"] = ["/my-week/2027-03-15"],
        ["/patients/{Id}"] = ["/patients/P03", "/patients/nobody"],
        ["/patients/{Id}/timeline"] = ["/patients/P03/timeline"],
        ["/patients/{Patient}/add-line"] = ["/patients/P03/add-line"],
        ["/plan/{Day}"] = ["/plan/2027-03-15"],
        ["/today/{Address}"] = ["/today/nurse-out", "/today/referral", "/today/nothing-of-the-kind"],
        ["/today/report/{Id}"] = ["/today/report/R0"],
        ["/today/trouble/{Id}"] = ["/today/trouble/T0"],
        ["/visits/records/{Id}"] = ["/visits/records/V0"],
        ["/visits/records/{Record}/amend"] = ["/visits/records/V0/amend"],
        ["/visits/unplanned/{Patient}/record"] = ["/visits/unplanned/P03/record"],
        ["/visits/{Visit}/record"] = ["/visits/2027-03-09-P12/record", "/visits/none/record"],
        ["/week/{Day}"] = ["/week/2027-03-08", "/week/2027-03-08?draft=true", "/week/2027-06-07"],
        ["/week/{Day}/work"] = ["/week/2027-03-08/work", "/week/2027-06-07/work"],
    };

    [Fact]
    public async Task Every_page_stands_up_by_day_by_night_enlarged_and_on_a_phone()
    {
        Assert.SkipUnless(Browser.IsInstalled, Browser.Missing);
        await using AppUnderTest app = await AppUnderTest.StartAsync();
        await using Browser browser = await Browser.StartAsync();
        IPage page = await browser.OpenAsync();
        await DemoAgency.OpenAsync(page, app, decides: true);
        await DemoAgency.MoveClockAsync(page, app, "2027-03-09T09:00");
        var found = new List<string>();
        foreach (string address in Pages().SelectMany(p => Addresses.GetValueOrDefault(p, [p])))
        {
            string? missing = AddressPart().IsMatch(address) ? $"{address}: the walk has no address for this page." : null;
            found.AddRange(missing is null ? await LookAsync(page, app.Address + address, address) : [missing]);
        }

        await OpensAVisitAsync(page, app);
        Assert.True(found.Count == 0, string.Join("\n", found));
    }

    private static async Task<List<string>> LookAsync(IPage page, string url, string address)
    {
        var found = new List<string>();
        await page.SetViewportSizeAsync(1280, 900);
        await page.EmulateMediaAsync(new() { ColorScheme = ColorScheme.Light });
        await page.GotoAsync(url);
        await Expect(page.Locator("main :is(h1, .notice):visible").First).ToBeVisibleAsync();
        await Expect(page.Locator(".waiting")).ToHaveCountAsync(0);
        if (await page.Locator("h1").CountAsync() != 1) found.Add($"{address}: not one heading of the page.");
        string name = "page" + Regex.Replace(address, "[^a-z0-9]+", "-", RegexOptions.IgnoreCase);
        await SeeAsync(1280, "by day", withAxe: true);
        await SeeAsync(640, "at twice the size", withAxe: false);
        await page.EmulateMediaAsync(new() { ColorScheme = ColorScheme.Dark });
        await SeeAsync(320, "on a phone by night", withAxe: true);
        foreach (string target in await page.EvaluateAsync<string[]>(SmallTargets)) found.Add($"{address}: lower than 44 px: {target}");
        int moving = await page.EvaluateAsync<int>("() => document.getAnimations().filter(one => one.playState === 'running').length");
        if (moving > 0) found.Add($"{address}: {moving} things move by themselves.");
        return found;

        async Task SeeAsync(int width, string how, bool withAxe)
        {
            await page.SetViewportSizeAsync(width, 900);
            await page.KeepPictureAsync(name);
            if (await page.EvaluateAsync<bool>("() => document.documentElement.scrollWidth > document.documentElement.clientWidth + 1")) found.Add($"{address}, {how}: scrolls sideways.");
            if (!withAxe) return;
            AxeResult axe = await page.RunAxe();
            found.AddRange(axe.Violations.Select(v => $"{address}, {how}: {v.Id}: {v.Help} at {string.Join(", ", v.Nodes.Take(2).Select(n => n.Html))}"));
        }
    }

    /// <summary>The popover of the week is filled when a visit is pressed; its visit's reasons stand in it.</summary>
    private static async Task OpensAVisitAsync(IPage page, AppUnderTest app)
    {
        await page.SetViewportSizeAsync(1280, 900);
        await page.GotoAsync(app.Address + "/week/2027-03-08");
        await page.GetByRole(AriaRole.Button, new() { Name = "Larkspur Cogglewick" }).First.ClickAsync();
        await Expect(page.Locator("#visit-reasons")).ToContainTextAsync("Why then");
        await page.StandsUpAsync("week-visit");
        await page.Keyboard.PressAsync("Escape");
        await Expect(page.Locator("#visit-reasons")).ToBeHiddenAsync();
    }

    /// <summary>The program's page addresses, read from its sources.</summary>
    private static string[] Pages()
    {
        var folder = new DirectoryInfo(AppContext.BaseDirectory);
        while (folder is not null && !File.Exists(Path.Combine(folder.FullName, "HomeLine.sln"))) folder = folder.Parent;
        Assert.NotNull(folder);
        string[] pages =
        [
            .. Directory.EnumerateFiles(Path.Combine(folder.FullName, "src", "HomeLine.Web"), "*.razor", SearchOption.AllDirectories)
                .SelectMany(File.ReadLines).Select(line => PageLine().Match(line)).Where(m => m.Success).Select(m => m.Groups[1].Value).Order(StringComparer.Ordinal),
        ];
        Assert.True(pages.Length > 30);
        return pages;
    }

    /// <summary>Buttons, fields and folds that can be seen and are lower than 44 px; a tick box counts with its label.</summary>
    private const string SmallTargets =
        """
        () => [...document.querySelectorAll('a.button, button, summary, select, textarea, input:not([type=hidden])')]
          .filter(one => !one.closest('[aria-hidden=true], .visually-hidden, [popover]') && one.checkVisibility({ visibilityProperty: true }) && one.getBoundingClientRect().width > 2)
          .map(one => ['checkbox', 'radio'].includes(one.type) ? one.closest('label') ?? one : one)
          .filter(one => one.getBoundingClientRect().height < 43.5)
          .slice(0, 5).map(one => `${Math.round(one.getBoundingClientRect().height)} px ${one.outerHTML.slice(0, 140)}`)
        """;

    [GeneratedRegex("""^@page\s+"([^"]+)""")]
    private static partial Regex PageLine();

    [GeneratedRegex("[{}]")]
    private static partial Regex AddressPart();
}
