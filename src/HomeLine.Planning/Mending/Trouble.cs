using HomeLine.Planning.Problem;

namespace HomeLine.Planning.Mending;

/// <summary>Something that breaks a published plan.</summary>
public abstract record Trouble
{
    private Trouble()
    {
    }

    /// <summary>A nurse makes no visit that would start within a time: she called out, or her car broke down.</summary>
    /// <param name="Nurse">Her identifier.</param>
    /// <param name="From">First plan minute, included.</param>
    /// <param name="To">Plan minute from which she is back, excluded.</param>
    public sealed record NurseOut(string Nurse, int From, int To) : Trouble;

    /// <summary>Roads take other times for a while, for example while a pass is closed.</summary>
    /// <param name="Change">When, and how long trips then take.</param>
    public sealed record Roads(RoadChange Change) : Trouble;

    /// <summary>A visit under way takes longer than planned, or the nurse runs late by as much.</summary>
    /// <param name="Visit">Its identifier.</param>
    /// <param name="Minutes">Minutes beyond the planned end, above 0.</param>
    public sealed record Overrun(string Visit, int Minutes) : Trouble;
}

/// <summary>How long and with which chance to mend. Same problem, troubles and options, same plan.</summary>
/// <param name="Seed">Seed of the search.</param>
/// <param name="Rounds">Rounds of taking a few visits out and placing them anew, after the first repair. Our own default: 400.</param>
/// <param name="OnCall">Whether nurses on call may be sent, at the price of <see cref="Problem.DisruptionPoints.OnCall"/> for each day of one.</param>
/// <param name="Merges">Whether care that lost its visit may join another visit of the patient.</param>
/// <param name="Reasons">Whether care left without a visit is explained; otherwise <see cref="Planner.WithReasons"/> does that later.</param>
public sealed record MendOptions(ulong Seed = 1, int Rounds = 400, bool OnCall = true, bool Merges = true, bool Reasons = true);
