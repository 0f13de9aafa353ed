using HomeLine.LineCare.Lines;
using HomeLine.LineCare.Windows;
using NodaTime;

namespace HomeLine.LineCare.Counting;

/// <summary>How care came out against its window.</summary>
public enum CareTiming
{
    /// <summary>Done before the window opened.</summary>
    Early,

    /// <summary>Done inside the window.</summary>
    InWindow,

    /// <summary>Done after the last acceptable moment.</summary>
    Late,

    /// <summary>Past its last acceptable moment and still not done at the end of the span.</summary>
    StillOpen,

    /// <summary>An ordered day that went by without the care and was not caught up with.</summary>
    WentBy,

    /// <summary>Done, without a date known that it could have been late against.</summary>
    DateWasUnknown,
}

/// <summary>Why care was late, as far as the ledger tells.</summary>
public enum LateBecause
{
    /// <summary>It was not late.</summary>
    NotLate,

    /// <summary>The patient was in hospital or on hold.</summary>
    Away,

    /// <summary>It was refused.</summary>
    Refused,

    /// <summary>A visit was missed.</summary>
    VisitMissed,

    /// <summary>It was planned and not done, for another reason.</summary>
    NotDone,

    /// <summary>A broken seal or another finding had cut the clock short.</summary>
    CutShort,

    /// <summary>The ledger says nothing.</summary>
    NotRecorded,
}

/// <summary>One piece of a nurse's care and how it came out.</summary>
/// <param name="Window">Its window as it stood just before.</param>
/// <param name="Timing">How it came out.</param>
/// <param name="DoneAt">When it was done; empty when it was not.</param>
/// <param name="Because">Why it was late.</param>
public sealed record TimedCare(DueWindow Window, CareTiming Timing, Instant? DoneAt, LateBecause Because)
{
    /// <summary>The kind of care.</summary>
    public CareItem Item => Window.Item;

    /// <summary>Whether it counts against the agency's punctuality.</summary>
    public bool IsLate => Timing is CareTiming.Late or CareTiming.StillOpen or CareTiming.WentBy;

    /// <summary>Whether it can be judged at all.</summary>
    public bool IsJudged => Timing != CareTiming.DateWasUnknown;
}
