using Deque.AxeCore.Commons;
using Deque.AxeCore.Playwright;
using Microsoft.Playwright;

namespace HomeLine.EndToEnd;

/// <summary>Headless Chromium from the machine's packages, with screenshots kept when a folder is named in SCREENSHOTS.</summary>
public sealed class Browser : IAsyncDisposable
{
    public const string Missing = "Chromium is not installed at /usr/bin/chromium.";
    private const string Path = "/usr/bin/chromium";
    private readonly IPlaywright playwright;
    private readonly IBrowser chromium;

    private Browser(IPlaywright playwright, IBrowser chromium)
    {
        this.playwright = playwright;
        this.chromium = chromium;
    }

    public static bool IsInstalled => File.Exists(Path);

    public static async Task<Browser> StartAsync()
    {
        Assertions.SetDefaultExpectTimeout(60_000);
        IPlaywright playwright = await Playwright.CreateAsync();
        IBrowser chromium = await playwright.Chromium.LaunchAsync(new BrowserTypeLaunchOptions
        {
            ExecutablePath = Path,
            Args =
            [
                "--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run", "--disable-background-networking",
                "--disable-component-update", "--disable-sync",
            ],
        });
        return new Browser(playwright, chromium);
    }

    /// <summary>A fresh page of its own session.</summary>
    public async Task<IPage> OpenAsync(int width = 1280, int height = 900, ColorScheme scheme = ColorScheme.Light)
    {
        IBrowserContext context = await chromium.NewContextAsync(new BrowserNewContextOptions
        {
            ViewportSize = new ViewportSize { Width = width, Height = height },
            ColorScheme = scheme,
            ReducedMotion = ReducedMotion.Reduce,
            AcceptDownloads = true,
        });
        IPage page = await context.NewPageAsync();
        page.SetDefaultTimeout(60_000);
        return page;
    }

    public async ValueTask DisposeAsync()
    {
        await chromium.DisposeAsync();
        playwright.Dispose();
    }
}

/// <summary>What every page must show beside its own content.</summary>
public static class PageChecks
{
    /// <summary>No accessibility finding of any level; nothing wider than the window.</summary>
    public static async Task StandsUpAsync(this IPage page, string name)
    {
        // Working pages appear once their circuit is open.
        await Assertions.Expect(page.GetByRole(AriaRole.Heading, new() { Level = 1 })).ToBeVisibleAsync();
        await Assertions.Expect(page.Locator(".waiting")).ToHaveCountAsync(0);
        await page.KeepPictureAsync(name);
        AxeResult axe = await page.RunAxe();
        Assert.True(
            axe.Violations.Length == 0,
            $"{name}: " + string.Join("\n", axe.Violations.Select(v => $"{v.Id}: {v.Help} at {string.Join(", ", v.Nodes.Take(3).Select(n => n.Html))}")));
        bool scrolls = await page.EvaluateAsync<bool>("() => document.documentElement.scrollWidth > document.documentElement.clientWidth + 1");
        Assert.False(scrolls, $"{name} scrolls sideways at {page.ViewportSize?.Width} px.");
    }

    public static async Task KeepPictureAsync(this IPage page, string name)
    {
        if (Environment.GetEnvironmentVariable("SCREENSHOTS") is { Length: > 0 } folder)
        {
            await page.ScreenshotAsync(new PageScreenshotOptions { Path = Path.Combine(folder, $"{name}-{page.ViewportSize?.Width}.png"), FullPage = true });
            await page.ScreenshotAsync(new PageScreenshotOptions { Path = Path.Combine(folder, $"{name}-{page.ViewportSize?.Width}-top.png") });
        }
    }
}
