using System.CommandLine;
using System.Diagnostics;
using System.Globalization;
using HomeLine.Agency;
using HomeLine.Agency.Access;
using HomeLine.Agency.Mending;
using HomeLine.Agency.Roster;
using HomeLine.Agency.Storage;
using HomeLine.Agency.WeekPlanning;
using HomeLine.Planning;
using HomeLine.Planning.Plans;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.Configuration;
using Microsoft.Extensions.DependencyInjection;
using NodaTime;

namespace HomeLine.Benchmarks.Branch;

/// <summary>
/// <c>trouble</c>: the whole use case behind a press on the page: a nurse calls out or runs late in a published week, from SQLite on disk, the answers stored.
/// </summary>
internal static class TroubleCommand
{
    private static readonly Actor Coordinator = new("bench", "Bench", [AgencyRole.Coordinator, AgencyRole.Administrator]);
    private static readonly LocalDate Tuesday = InventedBranch.Today.PlusDays(1);

    public static Command Create()
    {
        Option<string> size = Asked.Size("--size", "60x700");
        Option<int> events = Asked.Number("--events", "Troubles of each kind.", 20, least: 1);
        Option<int> rounds = Asked.Number("--rounds", "Rounds for the plan they come up in.", 2_000);
        var command = new Command("trouble", "A call-out and a late nurse through the use case, from SQLite: milliseconds until the answers are there.") { size, events, rounds };
        command.SetAction((parsed, cancel) => RunAsync(Asked.SizesOf(parsed.GetValue(size)!)[0], parsed.GetValue(events), parsed.GetValue(rounds), cancel));
        return command;
    }

    private static async Task<int> RunAsync(WeekSize size, int events, int rounds, CancellationToken cancel)
    {
        DirectoryInfo folder = Directory.CreateTempSubdirectory("homeline-trouble-");
        try
        {
            await using ServiceProvider services = Services(Path.Combine(folder.FullName, "homeline.db"));
            await services.GetRequiredService<AgencyDatabase>().PrepareAsync(cancel);
            AgencyRoster roster = RosterOf(size.Nurses, size.Patients);
            PlannedWeek week = WeekOf(roster, rounds);
            Console.WriteLine($"{roster.Nurses.Length} nurses, {roster.Patients.Length} patients, {roster.Events.Length:N0} ledger entries, {week.Visits.Length} visits published, {week.Unmet.Length} unmet");
            await using (AgencyDb db = await services.GetRequiredService<IDbContextFactory<AgencyDb>>().CreateDbContextAsync(cancel))
            {
                await RosterWriter.ApplyAsync(db, Coordinator, RosterChange.Between(null, roster), roster.Profile.FixedNow!.Value, cancel);
                await WeekStore.PublishAsync(db, Coordinator, week, "", roster.Profile.FixedNow.Value, cancel);
            }

            var mending = services.GetRequiredService<MendTrouble>();
            string[] busy = [.. week.Visits.Where(v => v.Day == Tuesday).GroupBy(v => v.Nurse).OrderByDescending(g => g.Count()).ThenBy(g => g.Key, StringComparer.Ordinal).Select(g => g.Key)];
            Console.WriteLine("what,events,answers,mean_ms,p50_ms,p95_ms,worst_ms,cpu_mean_ms");
            await ReportAsync("nurse out", mending, [.. Enumerable.Range(0, events).Select(i => new NurseIsOut(busy[i % busy.Length], Tuesday.AtMidnight(), Tuesday, "bench"))], cancel);
            await ReportAsync("runs late", mending, [.. Enumerable.Range(0, events).Select(i => new RunsLate(busy[i % busy.Length], 30 + (i % 4 * 15)))], cancel);
            return 0;
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }

    private static async Task ReportAsync(string what, MendTrouble mending, TroubleEntry[] entries, CancellationToken cancel)
    {
        var times = new List<double>();
        double cpu = 0;
        int answers = 0;
        foreach (TroubleEntry entry in entries.Prepend(entries[0]))
        {
            TimeSpan before = Process.GetCurrentProcess().TotalProcessorTime;
            long start = Stopwatch.GetTimestamp();
            Outcome<TroubleResult> result = await mending.ReportAsync(Coordinator, entry, cancel);
            times.Add(Stopwatch.GetElapsedTime(start).TotalMilliseconds);
            if (times.Count > 1) cpu += (Process.GetCurrentProcess().TotalProcessorTime - before).TotalMilliseconds;
            if (!result.Succeeded) throw new InvalidOperationException(result.Refusal!.Sentence);
            answers += result.Value.Filed.Offer!.Answers.Length;
            if (result.Value.Filed.State == TroubleState.Open) await mending.CloseAsync(Coordinator, result.Value.Filed.Id, "measured", cancel);
        }

        // The first warms the program up.
        times.RemoveAt(0);
        times.Sort();
        Console.WriteLine(string.Create(CultureInfo.InvariantCulture,
            $"{what},{entries.Length},{answers},{times.Average():0},{times[times.Count / 2]:0},{times[(int)(times.Count * 0.95)]:0},{times[^1]:0},{cpu / entries.Length:0}"));
    }

    /// <summary>An invented agency at ten on Tuesday, the week published and told.</summary>
    private static AgencyRoster RosterOf(int nurses, int patients)
    {
        AgencyRoster roster = InventedBranch.Of(patients * 4 / 3);
        return roster with
        {
            Profile = roster.Profile with { FixedNow = Tuesday.At(new LocalTime(10, 0)).InZoneLeniently(roster.Profile.Zone).ToInstant() },
            Nurses = InventedNurses.Of(nurses),
        };
    }

    private static PlannedWeek WeekOf(AgencyRoster roster, int rounds)
    {
        Instant monday = InventedBranch.Today.At(new LocalTime(6, 0)).InZoneLeniently(roster.Profile.Zone).ToInstant();
        WeekDemand demand = WeekDemand.Of(roster, CareFiles.Of(roster), InventedBranch.Today, 7, monday);
        PlannedWeek week = PlanInNames.Of(Planner.Plan(demand.Problem, new PlanOptions(Iterations: rounds)), demand);
        return week with { Visits = [.. week.Visits.Select(v => v with { Promise = PromiseState.Told, ToldFrom = v.Start })] };
    }

    private static ServiceProvider Services(string file)
    {
        IConfiguration configuration = new ConfigurationBuilder().AddInMemoryCollection(new Dictionary<string, string?>
        {
            ["Database:Provider"] = "sqlite",
            ["ConnectionStrings:Agency"] = $"Data Source={file}",
        }).Build();
        IServiceCollection services = new ServiceCollection().AddLogging().AddSingleton<IClock>(SystemClock.Instance);
        services.AddHomeLineSignIn(overHttps: true);
        return services.AddHomeLineAgency(configuration, Path.GetDirectoryName(file)!).BuildServiceProvider();
    }
}
