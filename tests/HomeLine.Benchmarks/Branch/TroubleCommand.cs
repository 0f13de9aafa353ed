using System.Collections.Immutable;
using System.CommandLine;
using HomeLine.Agency;
using HomeLine.Agency.Access;
using HomeLine.Agency.Mending;
using HomeLine.Agency.Reports;
using HomeLine.Agency.Roster;
using HomeLine.Agency.Storage;
using HomeLine.Agency.WeekEditing;
using HomeLine.Agency.WeekPlanning;
using HomeLine.LineCare.Ledger;
using HomeLine.LineCare.Lines;
using HomeLine.LineCare.RedFlags;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.Configuration;
using Microsoft.Extensions.DependencyInjection;
using NodaTime;

namespace HomeLine.Benchmarks.Branch;

/// <summary>
/// <c>trouble</c>: the whole use case behind a press on the page: a nurse calls out or runs late in a published week, a dressing is reported lifting, a visit is
/// dragged in the working draft; from SQLite on disk, what is answered stored.
/// </summary>
internal static class TroubleCommand
{
    private static readonly Actor Coordinator = new("bench", "Bench", [AgencyRole.Coordinator, AgencyRole.Administrator]);
    private static readonly LocalDate Tuesday = LargeAgency.Tuesday;

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
            AgencyRoster roster = LargeAgency.RosterOf(size);
            PlannedWeek week = LargeAgency.WeekOf(roster, rounds);
            Console.WriteLine($"{roster.Nurses.Length} nurses, {roster.Patients.Length} patients, {roster.Events.Length:N0} ledger entries, {week.Visits.Length} visits published, {week.Unmet.Length} unmet");
            await using (AgencyDb db = await services.GetRequiredService<IDbContextFactory<AgencyDb>>().CreateDbContextAsync(cancel))
            {
                await RosterWriter.ApplyAsync(db, Coordinator, RosterChange.Between(null, roster), roster.Profile.FixedNow!.Value, cancel);
                await WeekStore.PublishAsync(db, Coordinator, week, "", roster.Profile.FixedNow.Value, cancel);
            }

            var mending = services.GetRequiredService<MendTrouble>();
            string[] busy = [.. week.Visits.Where(v => v.Day == Tuesday).GroupBy(v => v.Nurse).OrderByDescending(g => g.Count()).ThenBy(g => g.Key, StringComparer.Ordinal).Select(g => g.Key)];
            Console.WriteLine("what,events,answers,mean_ms,p50_ms,p95_ms,worst_ms,cpu_mean_ms,cpu_p50_ms,cpu_p95_ms");
            await ReportAsync("nurse out", mending, [.. Enumerable.Range(0, events).Select(i => new NurseIsOut(busy[i % busy.Length], Tuesday.AtMidnight(), Tuesday, "bench"))], cancel);
            await DressingsAsync(services.GetRequiredService<ReportProblem>(), roster, week, events, cancel);
            await DragsAsync(services.GetRequiredService<EditWeek>(), week, events, cancel);
            await ReportAsync("runs late", mending, [.. Enumerable.Range(0, events).Select(i => new RunsLate(busy[i % busy.Length], 30 + (i % 4 * 15)))], cancel);
            await StoppedAsync(mending, [.. Enumerable.Range(0, events).Select(i => new NurseIsOut(busy[i % busy.Length], Tuesday.AtMidnight(), Tuesday, "bench"))], cancel);
            return 0;
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }

    private static async Task ReportAsync(string what, MendTrouble mending, TroubleEntry[] entries, CancellationToken cancel)
    {
        var timed = new Timed(what);
        var offered = new OfferedSums();
        foreach (TroubleEntry entry in entries.Prepend(entries[0]))
        {
            Outcome<TroubleResult> result = await timed.RunAsync(() => mending.ReportAsync(Coordinator, entry, cancel));
            if (!result.Succeeded) throw new InvalidOperationException(result.Refusal!.Sentence);
            timed.Answers += result.Value.Filed.Offer!.Answers.Length;
            offered.Add(result.Value.Filed.Offer);
            if (result.Value.Filed.State == TroubleState.Open) await mending.CloseAsync(Coordinator, result.Value.Filed.Id, "measured", cancel);
        }

        timed.Print();
        offered.Print();
    }

    /// <summary>Call-outs that are stopped after a few milliseconds, later each time: how long until nothing runs any more.</summary>
    private static async Task StoppedAsync(MendTrouble mending, TroubleEntry[] entries, CancellationToken cancel)
    {
        var timed = new Timed("nurse out: stopped");
        for (int i = 0; i < entries.Length; i++)
        {
            using var stop = CancellationTokenSource.CreateLinkedTokenSource(cancel);
            Task<Outcome<TroubleResult>> asked = Task.Run(() => mending.ReportAsync(Coordinator, entries[i], stop.Token), cancel);
            await Task.Delay(5 * (i + 1), cancel);
            if (asked.IsCompleted) continue;
            timed.Answers += await timed.RunAsync(async () =>
            {
                await stop.CancelAsync();
                return await asked.ContinueWith(told => told.IsCanceled ? 0 : 1, cancel, TaskContinuationOptions.ExecuteSynchronously, TaskScheduler.Default);
            });
        }

        timed.Print();
    }

    /// <summary>Dressings that lift, of people who are seen later in the week: screened, answered and kept, as the caller waits.</summary>
    private static async Task DressingsAsync(ReportProblem desk, AgencyRoster roster, PlannedWeek week, int events, CancellationToken cancel)
    {
        Instant now = roster.Profile.FixedNow!.Value;
        Line[] lines = [.. roster.Lines.Where(l => week.Visits.Any(v => v.Day > Tuesday && v.Care.Any(c => c.Key.Contains($"|{nameof(CareItem.Dressing)}|{l.Id.Value}|", StringComparison.Ordinal)))).Take(events + 1)];
        var answers = SymptomScreen.Questions(ScreenContext.Unknown).ToImmutableDictionary(q => q.Id, _ => ScreenAnswer.No);
        var timed = new Timed("dressing lifts");
        foreach (Line line in lines)
        {
            var report = new ProblemReport { Patient = line.Patient, Line = line.Id, Caller = "spouse", SeenAt = now, Answers = answers, Finding = SealFinding.EdgeLifted | SealFinding.Moisture };
            Outcome<ReportResult> result = await timed.RunAsync(() => desk.ReportAsync(Coordinator, report, cancel));
            timed.Answers += result.Succeeded ? result.Value.Offer?.Answers.Length ?? 0 : throw new InvalidOperationException(result.Refusal!.Sentence);
        }

        timed.Print();
    }

    /// <summary>What a person asks while dragging: every place of a visit, then what one of them would do, then the move, then one step back.</summary>
    private static async Task DragsAsync(EditWeek edit, PlannedWeek week, int events, CancellationToken cancel)
    {
        var (places, tries, moves) = (new Timed("drag: its places"), new Timed("drag: what if"), new Timed("drag: dropped"));
        WorkingWeek draft = (await edit.OpenAsync(Coordinator, week.FirstDay, cancel)).Value;
        foreach (WeekVisit visit in week.Visits.Where(v => v.Day > Tuesday).Take(events + 1))
        {
            ImmutableArray<WorkingPlace> found = (await places.RunAsync(() => edit.PlacesOfVisitAsync(Coordinator, week.FirstDay, draft.Revision, visit.Id, cancel))).Value;
            places.Answers += found.Length;
            if (found.IsEmpty) continue;
            WorkingPlace to = found[found.Length / 2];
            var move = new HandEdit.Move(visit.Id, to.Nurse, to.Day, to.Position);
            await tries.RunAsync(() => edit.TryAsync(Coordinator, week.FirstDay, draft.Revision, move, cancel));
            Outcome<WorkingWeek> made = await moves.RunAsync(() => edit.MakeAsync(Coordinator, week.FirstDay, draft.Revision, move, cancel));
            if (made.Succeeded) draft = (await edit.UndoAsync(Coordinator, week.FirstDay, made.Value.Revision, cancel)).Value;
        }

        foreach (Timed timed in (ReadOnlySpan<Timed>)[places, tries, moves]) timed.Print();
    }

    internal static ServiceProvider Services(string file)
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
