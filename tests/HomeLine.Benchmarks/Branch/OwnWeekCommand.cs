using System.CommandLine;
using HomeLine.Agency;
using HomeLine.Agency.Access;
using HomeLine.Agency.OwnWeek;
using HomeLine.Agency.Roster;
using HomeLine.Agency.Storage;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;

namespace HomeLine.Benchmarks.Branch;

/// <summary><c>own-week</c>: a nurse alone presses once; from SQLite on disk to the stored draft and the page's board.</summary>
internal static class OwnWeekCommand
{
    private static readonly Actor Nurse = new("bench", "Bench", [AgencyRole.Nurse, AgencyRole.Administrator], "N5");

    public static Command Create()
    {
        Option<int> lines = Asked.Number("--lines", "Lines she looks after; about as many visits a week.", 30, least: 1);
        Option<int> presses = Asked.Number("--presses", "How often she presses.", 10, least: 1);
        var command = new Command("own-week", "One nurse plans her own week in one action, through the use case, from SQLite: milliseconds.") { lines, presses };
        command.SetAction((parsed, cancel) => RunAsync(parsed.GetValue(lines), parsed.GetValue(presses), cancel));
        return command;
    }

    private static async Task<int> RunAsync(int lines, int presses, CancellationToken cancel)
    {
        DirectoryInfo folder = Directory.CreateTempSubdirectory("homeline-own-week-");
        try
        {
            await using ServiceProvider services = TroubleCommand.Services(Path.Combine(folder.FullName, "homeline.db"));
            await services.GetRequiredService<AgencyDatabase>().PrepareAsync(cancel);
            AgencyRoster roster = InventedBranch.Of(lines) with { Nurses = [InventedNurses.Of(5)[4]] };
            await using (AgencyDb db = await services.GetRequiredService<IDbContextFactory<AgencyDb>>().CreateDbContextAsync(cancel))
                await RosterWriter.ApplyAsync(db, Nurse, RosterChange.Between(null, roster), roster.Profile.FixedNow!.Value, cancel);
            var own = services.GetRequiredService<PlanOwnWeek>();
            var timed = new Timed("own week");
            MyWeek? last = null;
            for (int i = 0; i <= presses; i++)
            {
                Outcome<MyWeek> answer = await timed.RunAsync(() => own.PlanAsync(Nurse, InventedBranch.Today, cancel));
                last = answer.Succeeded ? answer.Value : throw new InvalidOperationException(answer.Refusal!.Sentence);
            }

            timed.Answers = last!.Visits;
            Console.WriteLine($"{roster.Patients.Length} patients, {last.Visits} visits, {last.Unmet.Length} unmet");
            Console.WriteLine("what,presses,visits,mean_ms,p50_ms,p95_ms,worst_ms,cpu_mean_ms,cpu_p50_ms,cpu_p95_ms");
            timed.Print();
            return 0;
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }
}
