using System.Collections.Immutable;
using System.CommandLine;
using System.Diagnostics;
using HomeLine.Agency;
using HomeLine.Agency.Access;
using HomeLine.Agency.Due;
using HomeLine.Agency.Roster;
using HomeLine.Agency.Storage;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.Configuration;
using Microsoft.Extensions.DependencyInjection;
using NodaTime;

namespace HomeLine.Benchmarks.Branch;

/// <summary>
/// <c>due-page</c>: what the Due page asks the server for, from SQLite on disk: the first time, when nothing changed, and after one new ledger entry.
/// </summary>
internal static class DuePageCommand
{
    private static readonly Actor Coordinator = new("bench", "Bench", [AgencyRole.Coordinator, AgencyRole.Administrator]);

    public static Command Create()
    {
        var lines = new Option<int>("--lines") { Description = "Lines of the invented agency.", DefaultValueFactory = _ => 5_000 };
        var rounds = new Option<int>("--rounds") { Description = "Times each question is asked.", DefaultValueFactory = _ => 20 };
        var command = new Command("due-page", "The Due page of an invented agency from SQLite: first, unchanged, and after one new entry.") { lines, rounds };
        command.SetAction((parsed, cancel) => RunAsync(parsed.GetValue(lines), parsed.GetValue(rounds), cancel));
        return command;
    }

    private static async Task<int> RunAsync(int lines, int rounds, CancellationToken cancel)
    {
        DirectoryInfo folder = Directory.CreateTempSubdirectory("homeline-due-");
        try
        {
            await using ServiceProvider services = Services(Path.Combine(folder.FullName, "homeline.db"));
            await services.GetRequiredService<AgencyDatabase>().PrepareAsync(cancel);
            AgencyRoster roster = InventedBranch.Of(lines);
            var factory = services.GetRequiredService<IDbContextFactory<AgencyDb>>();
            await using (AgencyDb db = await factory.CreateDbContextAsync(cancel))
                await RosterWriter.ApplyAsync(db, Coordinator, RosterChange.Between(null, roster), Instant.FromUtc(2027, 3, 8, 11, 0), cancel);
            Console.WriteLine($"{roster.Patients.Length:N0} patients, {roster.Lines.Length:N0} lines, {roster.Events.Length:N0} ledger entries");
            var due = services.GetRequiredService<AskDueList>();
            double first = await TimeAsync(due, cancel);
            Console.WriteLine($"first question: {first:N0} ms");
            await ReportAsync("unchanged", rounds, () => Task.CompletedTask, due, cancel);
            int number = 0;
            await ReportAsync("after one new entry", rounds, () => AppendAsync(factory, roster, number++, cancel), due, cancel);
            return 0;
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }

    private static async Task ReportAsync(string what, int rounds, Func<Task> before, AskDueList due, CancellationToken cancel)
    {
        var times = new List<double>();
        for (int i = 0; i < rounds; i++)
        {
            await before();
            times.Add(await TimeAsync(due, cancel));
        }

        times.Sort();
        Console.WriteLine($"{what}: median {times[times.Count / 2]:N1} ms, 95th of 100 {times[(int)(times.Count * 0.95)]:N1} ms, best {times[0]:N1} ms");
    }

    private static async Task<double> TimeAsync(AskDueList due, CancellationToken cancel)
    {
        long start = Stopwatch.GetTimestamp();
        Outcome<ImmutableArray<DueRow>> rows = await due.AskAsync(Coordinator, cancel);
        double ms = Stopwatch.GetElapsedTime(start).TotalMilliseconds;
        return rows.Succeeded && rows.Value.Length > 0 ? ms : throw new InvalidOperationException("The due list is empty.");
    }

    private static async Task AppendAsync(IDbContextFactory<AgencyDb> factory, AgencyRoster roster, int number, CancellationToken cancel)
    {
        await using AgencyDb db = await factory.CreateDbContextAsync(cancel);
        await using var work = await db.BeginWorkAsync(cancel);
        var pattern = roster.Events[number * 31 % roster.Events.Length];
        db.LineEvents.Add(pattern with { Id = new LineCare.Ledger.EventId($"bench-{number}") });
        await AuditTrail.AppendAsync(db, Coordinator, "record", "ledger", "", Instant.FromUtc(2027, 3, 8, 11, 30), cancel);
        await work.CommitAsync(cancel);
    }

    private static ServiceProvider Services(string file)
    {
        IConfiguration configuration = new ConfigurationBuilder()
            .AddInMemoryCollection(new Dictionary<string, string?> { ["ConnectionStrings:Agency"] = $"Data Source={file}" })
            .Build();
        IServiceCollection services = new ServiceCollection().AddLogging().AddSingleton<IClock>(SystemClock.Instance);
        services.AddHomeLineSignIn(overHttps: true);
        return services.AddHomeLineAgency(configuration, Path.GetDirectoryName(file)!).BuildServiceProvider();
    }
}
