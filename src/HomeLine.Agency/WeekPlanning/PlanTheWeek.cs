using System.Collections.Immutable;
using HomeLine.Agency.Access;
using HomeLine.Agency.Mending;
using HomeLine.Agency.Roster;
using HomeLine.Agency.Storage;
using HomeLine.Agency.WeekEditing;
using HomeLine.Planning;
using HomeLine.Planning.Checking;
using HomeLine.Planning.Plans;
using HomeLine.Planning.Reserve;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.Logging;
using NodaTime;

namespace HomeLine.Agency.WeekPlanning;

/// <summary>Plans a week in the background: one run at a time, with progress, stoppable, and the best kept as a draft.</summary>
public sealed class PlanTheWeek(IDbContextFactory<AgencyDb> databases, AgencyClock clock, WorkingWeeks weeks, ILogger<PlanTheWeek> log) : IDisposable
{
    /// <summary>
    /// The week and the one after: a dressing done a day earlier may spare the next week a visit. In a year simulated that way a tenth fewer
    /// kilometres were driven (docs/benchmarks.md).
    /// </summary>
    private const int DaysLookedAt = 14;

    private readonly Lock gate = new();
    private CancellationTokenSource? stop;
    private Task work = Task.CompletedTask;
    private int runs;

    /// <summary>The run under way, or the last one; empty before the first.</summary>
    public PlanRun? Current { get; private set; }

    /// <summary>Raised on progress and at the end, on any thread.</summary>
    public event Action<PlanRun>? Changed;

    /// <summary>Starts a run, or answers the one under way. Needs <see cref="AgencyAction.PlanWeek"/>.</summary>
    public async Task<Outcome<PlanRun>> StartAsync(Actor actor, LocalDate firstDay, PlanOptions options, CancellationToken cancel)
    {
        if (actor.Refuse(AgencyAction.PlanWeek) is { } refusal) return refusal;
        await using AgencyDb db = await databases.CreateDbContextAsync(cancel);
        Outcome<AgencyAtHand> read = await AgencyAtHand.ReadAsync(db, clock, cancel);
        if (!read.Succeeded) return read.Refusal!;
        StoredWeek? published = await WeekStore.PublishedAsync(db, firstDay, cancel);
        StoredWeek? before = await WeekStore.PublishedAsync(db, read.Value.ThisWeek, cancel);
        ImmutableArray<PlannedWeek> promised = [.. new[] { before, published }.OfType<StoredWeek>().Select(w => w.Week).DistinctBy(w => w.FirstDay)];
        ImmutableArray<PlannedWeek> lately = await AskFairness.BeforeAsync(db, firstDay, LoadRules.Of(read.Value.Files.Policy, firstDay).WeeksBack, cancel);
        PinnedVisits pins = await PinnedVisits.OfAsync(db, firstDay, cancel);
        lock (gate)
        {
            if (Current is { State: PlanRunState.Running } running) return running;
            stop?.Dispose();
            stop = new CancellationTokenSource();
            var run = new PlanRun($"run {++runs}", firstDay, PlanRunState.Running, null, "Planning has begun.");
            Current = run;
            CancellationToken token = stop.Token;
            work = Task.Run(() => RunAsync(run, actor, read.Value, promised, lately, pins, published?.Week.Version ?? 0, options, token), CancellationToken.None);
            return run;
        }
    }

    /// <summary>Stops the run; the best plan so far becomes the draft.</summary>
    public async Task<Outcome<PlanRun>> StopAndKeepAsync(Actor actor)
    {
        if (actor.Refuse(AgencyAction.PlanWeek) is { } refusal) return refusal;
        if (Current is null) return new Refusal("no-run", "No planning is under way.", "Start planning first.");
        if (stop is { } running) await running.CancelAsync();
        await work;
        return Current;
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        stop?.Cancel();
        stop?.Dispose();
    }

    private async Task RunAsync(
        PlanRun run, Actor actor, AgencyAtHand agency, ImmutableArray<PlannedWeek> promised, ImmutableArray<PlannedWeek> lately, PinnedVisits pins, int version, PlanOptions options, CancellationToken cancel)
    {
        try
        {
            agency = HeldPlaces.With(agency);
            WeekDemand ahead = WeekDemand.Ahead(agency.Roster, promised, run.FirstDay, agency.Now, DaysLookedAt).WithClosures(agency.Closures, agency.Roster);
            WeekDemand demand = HeldPlaces.In(pins.In(ahead, promised.FirstOrDefault(w => w.FirstDay == run.FirstDay)), agency);
            demand = WeekendTurns.In(demand, lately, LoadRules.Of(agency.Files.Policy, run.FirstDay));
            var progress = new Relay(p => Tell(run with { Progress = p, Message = p.ForReserve ? ReserveWords.Looking : "Planning." }));
            ReserveRules rules = DayReserve.Rules(agency.Files.Policy, run.FirstDay);
            ReservedWeek reserved = Planner.PlanWithReserve(demand.Problem, options, rules, progress, cancel);
            WeekPlan plan = reserved.Plan;
            CheckReport check = Checker.Check(demand.Problem, plan);
            if (!check.Accepted)
            {
                log.LogError("The checker refused a plan: {Rule} {Code}", check.Findings[0].Rule, check.Findings[0].Reason.Code);
                Tell(run with { State = PlanRunState.Failed, Message = "The independent checker refused the plan, so nothing was kept." });
                return;
            }

            PlannedWeek week = PlanInNames.Of(plan with { Visits = [.. plan.Visits.Where(v => !HeldPlaces.IsHeld(v.Id))] }, demand) with { Version = version };
            await KeepAsync(actor, week);
            PlanRunState state = cancel.IsCancellationRequested ? PlanRunState.StoppedAndKept : PlanRunState.Finished;
            PlanProgress? last = Current?.Progress is { } told ? told with { Best = check.Score, Visits = plan.Visits.Length, UnmetTasks = plan.Unmet.Length } : null;
            Tell((Current ?? run) with { State = state, Progress = last, Message = Summary(check, week), Free = ReserveWords.Of(reserved, FreeOf(agency, week)) });
        }
        catch (Exception problem) when (problem is not OutOfMemoryException)
        {
            log.LogError(problem, "Planning failed");
            Tell(run with { State = PlanRunState.Failed, Message = "Planning failed. Nothing was changed; the error was logged." });
        }
    }

    private async Task KeepAsync(Actor actor, PlannedWeek week)
    {
        await using AgencyDb db = await databases.CreateDbContextAsync(CancellationToken.None);
        await using var turn = await db.BeginWorkAsync(CancellationToken.None);
        StoredWeek? draft = await WeekStore.DraftAsync(db, week.FirstDay, CancellationToken.None);
        PlannedWeek? stood = draft?.Week ?? (await WeekStore.PublishedAsync(db, week.FirstDay, CancellationToken.None))?.Week;
        Outcome<StoredWeek> saved = await WeekStore.SaveDraftAsync(db, actor, week, draft?.Revision ?? 0, clock.RealNow(), CancellationToken.None);
        if (!saved.Succeeded) return;
        WeekEdit step = await EditStore.AddAsync(db, Steps.Planned(stood, saved.Value), CancellationToken.None);
        await db.SaveChangesAsync(CancellationToken.None);
        await turn.CommitAsync(CancellationToken.None);
        weeks.Tell(new WeekChanged(week.FirstDay, saved.Value.Revision, actor.Name, step.Words));
    }

    private static ImmutableArray<DayReserve> FreeOf(AgencyAtHand agency, PlannedWeek week) =>
        DayReserve.Of(agency.Roster, agency.Files.Policy, week, RoadTravel.Of(agency.Roster), agency.Now.InZone(agency.Roster.Profile.Zone).LocalDateTime);

    private static string Summary(CheckReport check, PlannedWeek week) =>
        $"{week.Visits.Length} visits; with the week after {check.Figures.DrivingMinutes} min driving and {check.Figures.LateTasks} late; {week.Unmet.Length} unmet. The checker agrees.";

    private void Tell(PlanRun run)
    {
        Current = run;
        Changed?.Invoke(run);
    }

    /// <summary>Reports on the search's own thread: the order of reports is the order of the search.</summary>
    private sealed class Relay(Action<PlanProgress> tell) : IProgress<PlanProgress>
    {
        public void Report(PlanProgress value) => tell(value);
    }
}

/// <summary>Where a planning run stands.</summary>
/// <param name="Id">The run.</param>
/// <param name="FirstDay">The week.</param>
/// <param name="State">Running, stopped and kept, finished, failed.</param>
/// <param name="Progress">The last progress, if any.</param>
/// <param name="Message">What to tell the person, for example why it failed.</param>
public sealed record PlanRun(string Id, LocalDate FirstDay, PlanRunState State, PlanProgress? Progress, string Message)
{
    /// <summary>What the planned week keeps free for care nobody planned, and its price; empty while the run is under way and where policy asks for no reserve.</summary>
    public string Free { get; init; } = "";
}

/// <summary>The states of a run.</summary>
public enum PlanRunState
{
    Running,
    StoppedAndKept,
    Finished,
    Failed,
}
