namespace HomeLine.Planning.Standing;

/// <summary>Why a visit cannot stand at a position of a nurse-day.</summary>
internal enum PushFault
{
    /// <summary>It can.</summary>
    None,

    /// <summary>The visit itself would be reached after its last allowed start of the day.</summary>
    NoTimeLeft,

    /// <summary>A visit that stays, or a two-person visit, would have to move.</summary>
    InTheWay,

    /// <summary>A later visit would be reached after its last allowed start.</summary>
    LaterTooLate,

    /// <summary>She would be home too late.</summary>
    Overruns,

    /// <summary>More visits than she takes.</summary>
    TooMany,

    /// <summary>Her break has no place.</summary>
    NoBreak,

    /// <summary>A specimen would reach no drop point in time, however much time is made for it.</summary>
    NoDrop,
}

/// <summary>What putting a visit in does to a nurse-day.</summary>
/// <param name="Fault">Why not; the other values hold only for none.</param>
/// <param name="Start">Start of the visit put in.</param>
/// <param name="MovedTold">Told families on the line that are out of their range or with another nurse, counting changes made before.</param>
/// <param name="Disruption">Disruption added on the line by visits that were there.</param>
/// <param name="Driving">Driving minutes added.</param>
/// <param name="Overtime">Overtime minutes added.</param>
/// <param name="Late">Points of lateness added to visits that were there, critical ones counted a millionfold.</param>
/// <param name="Culprit">The visit that stands in the way or comes too late.</param>
/// <param name="Amount">By how many minutes she overruns, or when the culprit would be reached.</param>
internal readonly record struct Push(
    PushFault Fault,
    int Start,
    int MovedTold = 0,
    int Disruption = 0,
    int Driving = 0,
    int Overtime = 0,
    long Late = 0,
    int Culprit = -1,
    int Amount = 0)
{
    public static Push Not(PushFault fault, int culprit = -1, int amount = 0) => new(fault, -1, Culprit: culprit, Amount: amount);
}
