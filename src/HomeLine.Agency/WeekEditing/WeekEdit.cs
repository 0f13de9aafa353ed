using System.Collections.Immutable;
using HomeLine.Agency.WeekPlanning;
using NodaTime;

namespace HomeLine.Agency.WeekEditing;

/// <summary>One change of a working draft as it is kept: who, what in words, and the visits before and after, so that it can be taken back. Written once.</summary>
public sealed record WeekEdit
{
    public required LocalDate FirstDay { get; init; }

    /// <summary>1 for the first change of this week ever, without gaps.</summary>
    public required int Number { get; init; }

    /// <summary>The published version the draft was made from; 0 for none.</summary>
    public required int Base { get; init; }

    /// <summary>The revision of the draft that this change made.</summary>
    public required int Revision { get; init; }
    public required EditKind Kind { get; init; }

    /// <summary>One sentence, for example <c>P04 moves from Tue 09:31 N1 to Thu 10:10 N3</c>.</summary>
    public required string Words { get; init; }
    public required Instant At { get; init; }
    public required string By { get; init; }

    /// <summary>Visits that changed or went, as they stood.</summary>
    public ImmutableArray<WeekVisit> Before { get; init; } = [];

    /// <summary>Visits that changed or came, as they stand since.</summary>
    public ImmutableArray<WeekVisit> After { get; init; } = [];

    /// <summary>Visits pinned with it.</summary>
    public ImmutableArray<string> Pins { get; init; } = [];

    /// <summary>Visits whose pin was taken out with it.</summary>
    public ImmutableArray<string> Unpins { get; init; } = [];

    /// <summary>The number of the change that was taken back, or made again.</summary>
    public int? Reverses { get; init; }
}

/// <summary>Kinds of change.</summary>
public enum EditKind
{
    Move,
    Place,
    TakeOut,
    Swap,
    SwapDays,
    Pin,
    Unpin,

    /// <summary>Back to the published week.</summary>
    StartOver,
    Undo,
    Redo,

    /// <summary>Changes of an earlier draft brought over to a newer published version.</summary>
    CarryOver,

    /// <summary>The planner made the draft anew.</summary>
    Planned,

    /// <summary>The draft was published: nothing before it can be taken back.</summary>
    Published,
}
