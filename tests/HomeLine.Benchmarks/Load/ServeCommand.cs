using System.CommandLine;
using System.Globalization;
using HomeLine.Agency.Roster;
using HomeLine.Agency.WeekPlanning;
using HomeLine.Benchmarks.Branch;

namespace HomeLine.Benchmarks.Load;

/// <summary><c>serve</c>: the program over an invented agency of any size with a published week, to be looked at in a browser; and what its week pages take alone.</summary>
internal static class ServeCommand
{
    private const int Times = 9;

    public static Command Create()
    {
        Option<string> size = Asked.Size("--size", "60x700");
        Option<int> rounds = Asked.Number("--rounds", "Rounds for the plan of the week.", 500);
        Option<int> minutes = Asked.Number("--minutes", "How long it stays open afterwards.", 0);
        var command = new Command("serve", "An invented agency with a published week, served: times of its week pages, then open for a browser.") { size, rounds, minutes };
        command.SetAction((parsed, cancel) => RunAsync(Asked.SizesOf(parsed.GetValue(size)!)[0], parsed.GetValue(rounds), parsed.GetValue(minutes), cancel));
        return command;
    }

    private static async Task<int> RunAsync(WeekSize size, int rounds, int minutes, CancellationToken cancel)
    {
        AgencyRoster roster = LargeAgency.RosterOf(size);
        PlannedWeek week = LargeAgency.WeekOf(roster, rounds);
        await using ServedAgency agency = await ServedAgency.StartAsync(roster, week, cancel);
        Console.WriteLine($"{roster.Nurses.Length} nurses, {roster.Patients.Length} patients, {week.Visits.Length} visits published");
        string cookie = await agency.SignInAsync(cancel);
        using var http = new HttpClient(new HttpClientHandler { UseCookies = false });
        (Visitor one, double page, double alive) = await Visitor.OpenAsync(http, agency.Address, cookie, "/report", cancel);
        Console.WriteLine($"first page of all: request {page:N0} ms, on screen after {alive:N0} ms");
        string day = InventedBranch.Today.ToString("uuuu-MM-dd", CultureInfo.InvariantCulture);
        foreach (string path in (string[])[$"/week/{day}", $"/week/{day}?area=Cawsey", $"/week/{day}?nurse=N7", $"/week/{day}/work", $"/week/{day}/work?area=Cawsey"])
        {
            var times = new List<double>();
            double cpu = 0;
            for (int i = 0; i <= Times; i++)
            {
                await one.FollowAsync("/report", cancel);
                double before = agency.CpuSeconds;
                double took = await one.FollowAsync(path, cancel);
                if (i == 0) continue;
                times.Add(took);
                cpu += agency.CpuSeconds - before;
            }

            times.Sort();
            Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{path,-40} median {times[Times / 2],6:N0} ms, best {times[0],6:N0}, worst {times[^1],6:N0}; cpu {1000 * cpu / Times,6:N0} ms"));
        }

        await one.DisposeAsync();
        if (minutes == 0) return 0;
        Console.WriteLine($"open at {agency.Address} for {minutes} minutes; {ServedAgency.User}, {ServedAgency.Password}");
        await Task.Delay(TimeSpan.FromMinutes(minutes), cancel);
        return 0;
    }
}
