using System.Diagnostics;
using System.Text.RegularExpressions;

namespace HomeLine.EndToEnd;

/// <summary>The program as a user starts it: its own process, an empty database in a folder of its own, a free port.</summary>
public sealed partial class AppUnderTest : IAsyncDisposable
{
    private static readonly TimeSpan Patience = TimeSpan.FromMinutes(2);
    private readonly Process process;
    private readonly DirectoryInfo folder;
    private readonly bool isBeside;
    private readonly List<string> said = [];

    private AppUnderTest(Process process, DirectoryInfo folder, bool isBeside)
    {
        this.process = process;
        this.folder = folder;
        this.isBeside = isBeside;
    }

    /// <summary>Address of the running program, without a slash at the end.</summary>
    public string Address { get; private set; } = "";

    /// <summary>The address with the one-time set-up code that the program printed.</summary>
    public string FirstRunAddress { get; private set; } = "";

    /// <summary>The demonstration's files that travel with the program.</summary>
    public string SeedFolder { get; } = Path.Combine(Path.GetDirectoryName(ProgramBesideTheTests())!, "seed");

    public static Task<AppUnderTest> StartAsync() => StartAsync(Directory.CreateTempSubdirectory("homeline-e2e-"), null, []);

    /// <summary>A second program on the same database, as a second server, or with a first word that says what else it is.</summary>
    public Task<AppUnderTest> StartBesideAsync(params string[] words) => StartAsync(folder, this, words);

    private static async Task<AppUnderTest> StartAsync(DirectoryInfo folder, AppUnderTest? first, string[] words)
    {
        string program = ProgramBesideTheTests();
        var start = new ProcessStartInfo("dotnet")
        {
            WorkingDirectory = folder.FullName,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
            Environment =
            {
                ["ConnectionStrings__Agency"] = $"Data Source={Path.Combine(folder.FullName, "homeline.db")}",
                ["ASPNETCORE_ENVIRONMENT"] = "Production",
            },
        };
        foreach (string argument in (string[])[program, .. words, "--urls", "http://127.0.0.1:0"]) start.ArgumentList.Add(argument);
        var app = new AppUnderTest(Process.Start(start)!, folder, first is not null);
        await app.WaitUntilItListensAsync();
        return app;
    }

    public async ValueTask DisposeAsync()
    {
        if (!process.HasExited) process.Kill(entireProcessTree: true);
        await process.WaitForExitAsync();
        process.Dispose();
        if (!isBeside) folder.Delete(recursive: true);
    }

    /// <summary>The program's own output folder, where its web assets are, lies beside the tests'.</summary>
    private static string ProgramBesideTheTests()
    {
        const string room = "HomeLine.Web";
        string here = AppContext.BaseDirectory.TrimEnd(Path.DirectorySeparatorChar);
        return Path.Combine(here.Replace("HomeLine.EndToEnd", room, StringComparison.Ordinal), $"{room}.dll");
    }

    private async Task WaitUntilItListensAsync()
    {
        process.ErrorDataReceived += (_, line) => Note(line.Data);
        process.BeginErrorReadLine();
        using var patience = new CancellationTokenSource(Patience);
        while (Address.Length == 0 || (FirstRunAddress.Length == 0 && !isBeside))
        {
            string? line = await process.StandardOutput.ReadLineAsync(patience.Token)
                ?? throw new InvalidOperationException("The program ended before it listened:\n" + string.Join('\n', said));
            Note(line);
            if (FirstRunPattern().Match(line) is { Success: true } first) FirstRunAddress = first.Value;
            if (ListeningPattern().Match(line) is { Success: true } listening) Address = listening.Groups[1].Value;
        }

        // What it prints from now on is read and dropped, so that a full pipe never stops it.
        _ = process.StandardOutput.ReadToEndAsync(CancellationToken.None);
        if (!isBeside) FirstRunAddress = Address + new Uri(FirstRunAddress).PathAndQuery;
    }

    private void Note(string? line)
    {
        if (line is not null)
            lock (said) said.Add(line);
    }

    [GeneratedRegex("""https?://\S+/first-run\?code=[^\s"\\]+""")]
    private static partial Regex FirstRunPattern();

    [GeneratedRegex("""[Nn]ow listening on: (http://127\.0\.0\.1:\d+)""")]
    private static partial Regex ListeningPattern();
}
