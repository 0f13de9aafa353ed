using System.Collections.Concurrent;
using System.CommandLine;
using System.Diagnostics;
using HomeLine.Agency.Roster;
using HomeLine.Agency.WeekPlanning;
using HomeLine.Benchmarks.Branch;
using HomeLine.Exchange.Csv;

namespace HomeLine.Benchmarks.Load;

/// <summary>
/// <c>load</c>: many people at once on the program as it is served. Each opens a page, follows links with a pause between, and what each page took
/// until its last part was there is written down.
/// </summary>
internal static class LoadCommand
{
    public static Command Create()
    {
        var users = new Option<int>("--users") { Description = "People with an open page.", DefaultValueFactory = _ => 200 };
        var seconds = new Option<int>("--seconds") { Description = "How long they click, once all are in.", DefaultValueFactory = _ => 60 };
        var pause = new Option<double>("--pause") { Description = "Seconds between a page that stands and the next click, on average.", DefaultValueFactory = _ => 10 };
        var lines = new Option<int>("--lines") { Description = "Lines of the invented agency.", DefaultValueFactory = _ => 900 };
        var roster = new Option<DirectoryInfo?>("--roster") { Description = "A folder of roster files instead of the invented agency, for example seed." };
        var size = new Option<string?>("--size") { Description = "An invented agency with a planned and published week instead, for example 60x700." };
        Option<int> writers = Asked.Number("--writers", "Of 100 clicks, how many write instead of looking; needs a published week.", 0);
        var command = new Command("load", "People at once on the program as it is served: times of pages, memory a person.") { users, seconds, pause, lines, roster, size, writers };
        command.SetAction((parsed, cancel) => RunAsync(
            parsed.GetValue(users), parsed.GetValue(seconds), parsed.GetValue(pause), parsed.GetValue(writers),
            parsed.GetValue(size) is { } large ? Planned(Asked.SizesOf(large)[0]) : RosterOf(parsed.GetValue(roster), parsed.GetValue(lines)), cancel));
        return command;
    }

    private static (AgencyRoster Roster, PlannedWeek? Published) RosterOf(DirectoryInfo? folder, int lines)
    {
        if (folder is null) return (InventedBranch.Of(lines), null);
        RosterReading reading = RosterFolder.Read(new RosterDirectory(folder.FullName));
        return (reading.Roster ?? throw new InvalidOperationException(string.Join('\n', reading.Problems.Select(p => p.Reason))), reading.Published);
    }

    private static (AgencyRoster Roster, PlannedWeek? Published) Planned(WeekSize size)
    {
        AgencyRoster roster = LargeAgency.RosterOf(size);
        return (roster, LargeAgency.WeekOf(roster, Rounds));
    }

    private static async Task<int> RunAsync(int users, int seconds, double pause, int writers, (AgencyRoster Roster, PlannedWeek? Published) served, CancellationToken cancel)
    {
        AgencyRoster roster = served.Roster;
        await using ServedAgency agency = await ServedAgency.StartAsync(roster, served.Published, cancel);
        string cookie = await agency.SignInAsync(cancel);
        using var http = new HttpClient(new HttpClientHandler { UseCookies = false });
        string[] paths = [.. Paths(roster)];
        Console.WriteLine($"{roster.Patients.Length:N0} patients, {roster.Lines.Length:N0} lines; {users} people, {pause:0.#} s between clicks");

        // One visitor first: everything is compiled and read once before anything counts.
        (Visitor one, double page, double alive) = await Visitor.OpenAsync(http, agency.Address, cookie, "/report", cancel);
        Console.WriteLine($"first page of all: request {page:N0} ms, on screen after {alive:N0} ms");
        one.KeepsWhatItSees = true;
        foreach (string path in paths.Concat(paths))
        {
            // On a machine with other work the first look may come in pieces.
            for (int look = 0; look == 0 || (look < Looks && !one.Saw(Shows(path))); look++) await one.FollowAsync(path, cancel);
            if (!one.Saw(Shows(path))) throw new InvalidOperationException($"{path} does not show \"{Shows(path)}\".");
        }

        one.KeepsWhatItSees = false;
        Writing? writing = writers > 0 && served.Published is { } week ? new Writing(week, http, agency.Address, cookie) : null;
        if (writing is not null)
        {
            one.HasHands = true;
            for (int i = 0; i < Warming; i++) await writing.DoAsync(one, new Random(i), cancel);
        }

        foreach (string path in paths.Take(ByKind)) Console.WriteLine($"  alone {Kind(path),-26} {await one.FollowAsync(path, cancel),6:N0} ms");
        await one.DisposeAsync();

        double before = agency.MemoryMb;
        var opening = new ConcurrentBag<double>();
        var visitors = new ConcurrentBag<Visitor>();
        await Parallel.ForEachAsync(Enumerable.Range(0, users), new ParallelOptions { MaxDegreeOfParallelism = 8, CancellationToken = cancel }, async (i, stop) =>
        {
            (Visitor visitor, double _, double ms) = await Visitor.OpenAsync(http, agency.Address, cookie, paths[i % paths.Length], stop);
            visitors.Add(visitor);
            opening.Add(ms);
        });
        double idle = agency.MemoryMb;
        Report("opening", [.. opening]);
        Console.WriteLine($"memory: {before:N0} MB before, {idle:N0} MB with all in: {(idle - before) / users:N2} MB a person");

        var times = new ConcurrentBag<(string Path, double Ms)>();
        var written = new ConcurrentBag<(string What, double Ms)>();
        var faults = new ConcurrentBag<string>();
        int failed = 0;
        double cpu = agency.CpuSeconds;
        long start = Stopwatch.GetTimestamp();
        await Task.WhenAll(visitors.Select((visitor, i) => Task.Run(async () =>
        {
            var chance = new Random(i);
            while (Stopwatch.GetElapsedTime(start).TotalSeconds < seconds)
            {
                await Task.Delay(TimeSpan.FromSeconds(pause * 2 * chance.NextDouble()), cancel);
                string path = paths[chance.Next(paths.Length)];
                try
                {
                    if (writing is not null && chance.Next(100) < writers)
                    {
                        visitor.HasHands = true;
                        foreach ((string, double) step in await writing.DoAsync(visitor, chance, cancel)) written.Add(step);
                        visitor.HasHands = false;
                        continue;
                    }

                    times.Add((path, await visitor.FollowAsync(path, cancel)));
                }
                catch (Exception fault) when (fault is TimeoutException or InvalidOperationException)
                {
                    faults.Add(fault.Message);
                    Interlocked.Increment(ref failed);
                }
            }
        }, cancel)));
        double elapsed = Stopwatch.GetElapsedTime(start).TotalSeconds;
        Console.WriteLine($"{times.Count:N0} pages in {elapsed:N0} s ({times.Count / elapsed:N1} a second), {failed} failed; server {(agency.CpuSeconds - cpu) / elapsed:P0} of one core, {agency.MemoryMb:N0} MB at the end");
        Report("every page", [.. times.Select(t => t.Ms)]);
        foreach (var kind in times.GroupBy(t => Kind(t.Path)).OrderBy(g => g.Key, StringComparer.Ordinal)) Report("  " + kind.Key, [.. kind.Select(t => t.Ms)]);
        if (!written.IsEmpty) Report("every step of writing", [.. written.Select(t => t.Ms)]);
        foreach (var kind in written.GroupBy(t => t.What).OrderBy(g => g.Key, StringComparer.Ordinal)) Report("  " + kind.Key, [.. kind.Select(t => t.Ms)]);
        foreach (var fault in faults.GroupBy(f => f).OrderByDescending(g => g.Count()).Take(3)) Console.WriteLine($"  {fault.Count()} times: {fault.Key}");
        foreach (Visitor visitor in visitors) await visitor.DisposeAsync();
        return failed == 0 ? 0 : 1;
    }

    private const int ByKind = 8;
    private const int Rounds = 300;
    private const int Warming = 6;
    private const int Looks = 6;

    /// <summary>What people look at: the lists, and patients more often than anything else.</summary>
    private static IEnumerable<string> Paths(AgencyRoster roster)
    {
        string[] pages = ["/due", "/week", "/orders", "/decisions", "/policy", "/report"];
        string first = roster.Patients[0].Id.Value;
        return
        [
            .. pages, $"/patients/{first}", $"/patients/{first}/timeline",
            .. Enumerable.Range(1, 12).Select(i => $"/patients/{roster.Patients[i * 37 % roster.Patients.Length].Id.Value}{(i % 3 == 0 ? "/timeline" : "")}"),
        ];
    }

    private static string Kind(string path) => path.StartsWith("/patients/", StringComparison.Ordinal) ? path.EndsWith("/timeline", StringComparison.Ordinal) ? "a timeline" : "a patient" : path;

    /// <summary>Words that stand on the page only once it has read what it shows.</summary>
    private static string Shows(string path) => Kind(path) switch
    {
        "/due" => "/patients/P",
        "/orders" => "First visits owed",
        "/decisions" => "waits",
        "/policy" => "dressing.film.max",
        "a patient" or "a timeline" => path.Split('/')[2],
        _ => "HomeLine",
    };

    private static void Report(string what, List<double> times)
    {
        if (times.Count == 0) return;
        times.Sort();
        Console.WriteLine($"{what,-26} median {times[times.Count / 2],6:N0} ms, 95 of 100 {times[(int)(times.Count * 0.95)],6:N0} ms, 99 {times[(int)(times.Count * 0.99)],6:N0} ms ({times.Count:N0})");
    }
}
