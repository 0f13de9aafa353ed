using System.Diagnostics;
using System.Globalization;
using System.Net;
using System.Text.RegularExpressions;
using HomeLine.Agency;
using HomeLine.Agency.Access;
using HomeLine.Agency.Roster;
using HomeLine.Agency.Storage;
using HomeLine.Agency.WeekPlanning;
using Microsoft.Extensions.Configuration;
using Microsoft.Extensions.DependencyInjection;
using NodaTime;

namespace HomeLine.Benchmarks.Load;

/// <summary>The program as it is served: a process of its own over an SQLite file with an invented agency and one account.</summary>
internal sealed partial class ServedAgency : IAsyncDisposable
{
    public const string User = "bench@agency.example", Password = "a long line of gentle words";
    private static readonly TimeSpan Patience = TimeSpan.FromMinutes(2);
    private readonly DirectoryInfo _folder;
    private readonly Process _process;

    private ServedAgency(DirectoryInfo folder, Process process) => (_folder, _process) = (folder, process);

    public string Address { get; private set; } = "";

    /// <summary>Memory of the process in use, megabytes.</summary>
    public double MemoryMb
    {
        get
        {
            _process.Refresh();
            return _process.WorkingSet64 / 1048576.0;
        }
    }

    /// <summary>Processor time the process has used, seconds.</summary>
    public double CpuSeconds
    {
        get
        {
            _process.Refresh();
            return _process.TotalProcessorTime.TotalSeconds;
        }
    }

    public static async Task<ServedAgency> StartAsync(AgencyRoster roster, PlannedWeek? published, CancellationToken cancel)
    {
        DirectoryInfo folder = Directory.CreateTempSubdirectory("homeline-load-");
        string file = Path.Combine(folder.FullName, "homeline.db");
        await FillAsync(file, roster, published, cancel);
        var start = new ProcessStartInfo("dotnet")
        {
            ArgumentList = { Program(), "--urls", "http://127.0.0.1:0" },
            WorkingDirectory = folder.FullName,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
            Environment = { ["ConnectionStrings__Agency"] = $"Data Source={file}", ["ASPNETCORE_ENVIRONMENT"] = "Production" },
        };
        var agency = new ServedAgency(folder, Process.Start(start)!);
        await agency.WaitAsync();
        return agency;
    }

    /// <summary>Signs the account in.</summary>
    /// <returns>The cookies a browser would send from then on.</returns>
    public async Task<string> SignInAsync(CancellationToken cancel)
    {
        using var http = new HttpClient(new HttpClientHandler { AllowAutoRedirect = false, UseCookies = false });
        using HttpResponseMessage page = await http.GetAsync($"{Address}/sign-in", cancel);
        string html = await page.Content.ReadAsStringAsync(cancel);
        using var request = new HttpRequestMessage(HttpMethod.Post, $"{Address}/sign-in")
        {
            Content = new FormUrlEncodedContent(new Dictionary<string, string>
            {
                ["_handler"] = "sign-in",
                ["__RequestVerificationToken"] = WebUtility.HtmlDecode(TokenPattern().Match(html).Groups[1].Value),
                ["Typed.UserName"] = User,
                ["Typed.Password"] = Password,
            }),
        };
        request.Headers.Add("Cookie", Cookies(page));
        using HttpResponseMessage signedIn = await http.SendAsync(request, cancel);
        string cookies = $"{Cookies(page)}; {Cookies(signedIn)}";
        return signedIn.Headers.Contains("Set-Cookie") ? cookies : throw new InvalidOperationException($"Signing in answered {(int)signedIn.StatusCode}.");
    }

    public async ValueTask DisposeAsync()
    {
        if (!_process.HasExited) _process.Kill(entireProcessTree: true);
        await _process.WaitForExitAsync();
        _process.Dispose();
        _folder.Delete(recursive: true);
    }

    private static string Cookies(HttpResponseMessage response) => response.Headers.TryGetValues("Set-Cookie", out IEnumerable<string>? set)
        ? string.Join("; ", set.Select(cookie => cookie.Split(';')[0]))
        : "";

    private static async Task FillAsync(string file, AgencyRoster roster, PlannedWeek? published, CancellationToken cancel)
    {
        IConfiguration configuration = new ConfigurationBuilder()
            .AddInMemoryCollection(new Dictionary<string, string?> { ["ConnectionStrings:Agency"] = $"Data Source={file}" })
            .Build();
        IServiceCollection services = new ServiceCollection().AddLogging().AddSingleton<IClock>(SystemClock.Instance);
        services.AddHomeLineSignIn(overHttps: false);
        await using ServiceProvider provider = services.AddHomeLineAgency(configuration, Path.GetDirectoryName(file)!).BuildServiceProvider();
        await provider.GetRequiredService<AgencyDatabase>().PrepareAsync(cancel);
        var first = provider.GetRequiredService<FirstRun>();
        string code = await first.PrepareAsync(cancel) ?? throw new InvalidOperationException("There is an administrator already.");
        Outcome<Account> account = await first.CreateFirstAdministratorAsync(
            code, "Bench", User, Password, [AgencyRole.ClinicalManager, AgencyRole.Coordinator, AgencyRole.Nurse], cancel);
        if (!account.Succeeded) throw new InvalidOperationException(account.Refusal!.Sentence);
        var actor = new Actor("bench", "Bench", [AgencyRole.Administrator]);
        Outcome<AgencyRoster> opened = await provider.GetRequiredService<OpenAgency>().OpenAsync(actor, roster, published, cancel);
        if (!opened.Succeeded) throw new InvalidOperationException(opened.Refusal!.Sentence);
    }

    /// <summary>The program's own output folder lies beside that of the measurements.</summary>
    private static string Program() => Path.Combine(
        AppContext.BaseDirectory.TrimEnd(Path.DirectorySeparatorChar).Replace("HomeLine.Benchmarks", "HomeLine.Web", StringComparison.Ordinal), "HomeLine.Web.dll");

    private async Task WaitAsync()
    {
        _process.BeginErrorReadLine();
        using var patience = new CancellationTokenSource(Patience);
        while (Address.Length == 0)
        {
            string line = await _process.StandardOutput.ReadLineAsync(patience.Token) ?? throw new InvalidOperationException("The program ended before it listened.");
            if (ListeningPattern().Match(line) is { Success: true } listening) Address = string.Create(CultureInfo.InvariantCulture, $"{listening.Groups[1].Value}");
        }

        // What it prints from now on is read and dropped, so that a full pipe never stops it.
        _ = _process.StandardOutput.ReadToEndAsync(CancellationToken.None);
    }

    [GeneratedRegex("""[Nn]ow listening on: (http://127\.0\.0\.1:\d+)""")]
    private static partial Regex ListeningPattern();

    [GeneratedRegex("name=\"__RequestVerificationToken\"[^>]*value=\"([^\"]+)\"")]
    private static partial Regex TokenPattern();
}
