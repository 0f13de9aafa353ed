using HomeLine.Agency.Access;
using HomeLine.Planning;
using NodaTime;

namespace HomeLine.Agency.WeekPlanning;

/// <summary>Plans a week in the background: one run at a time, with progress, stoppable, and the best kept as a draft.</summary>
public sealed class PlanTheWeek
{
    /// <summary>Starts a run, or answers the one under way. Needs <see cref="AgencyAction.PlanWeek"/>.</summary>
    public Task<Outcome<PlanRun>> StartAsync(Actor actor, LocalDate firstDay, PlanOptions options, CancellationToken cancel) =>
        throw new NotImplementedException();

    /// <summary>The run under way, or the last one; empty before the first.</summary>
    public PlanRun? Current { get; private set; }

    /// <summary>Stops the run; the best plan so far becomes the draft.</summary>
    public Task<Outcome<PlanRun>> StopAndKeepAsync(Actor actor)
    {
        Tell(new PlanRun("", default, PlanRunState.StoppedAndKept, null, ""));
        throw new NotImplementedException();
    }

    /// <summary>Raised on progress and at the end, on any thread.</summary>
    public event Action<PlanRun>? Changed;

    private void Tell(PlanRun run)
    {
        Current = run;
        Changed?.Invoke(run);
    }
}

/// <summary>Where a planning run stands.</summary>
/// <param name="Id">The run.</param>
/// <param name="FirstDay">The week.</param>
/// <param name="State">Running, stopped and kept, finished, failed.</param>
/// <param name="Progress">The last progress, if any.</param>
/// <param name="Message">What to tell the person, for example why it failed.</param>
public sealed record PlanRun(string Id, LocalDate FirstDay, PlanRunState State, PlanProgress? Progress, string Message);

/// <summary>The states of a run.</summary>
public enum PlanRunState
{
    Running,
    StoppedAndKept,
    Finished,
    Failed,
}
