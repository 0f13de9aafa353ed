using System.Collections.Immutable;
using HomeLine.Agency.Kits;
using HomeLine.Agency.Roster;
using HomeLine.Agency.WeekPlanning;
using HomeLine.LineCare.Lines;
using HomeLine.LineCare.RedFlags;
using NodaTime;

namespace HomeLine.Agency.Visits;

/// <summary>What a nurse needs to see to record a visit: what is planned, what could be done beside it, and last time's findings.</summary>
public sealed record VisitBrief
{
    public required Patient Patient { get; init; }

    /// <summary>The published visit; empty for an unplanned one.</summary>
    public WeekVisit? Planned { get; init; }

    /// <summary>Who was sent; empty for an unplanned visit.</summary>
    public string SentNurse { get; init; } = "";

    /// <summary>Now at the home.</summary>
    public required LocalDateTime Now { get; init; }

    /// <summary>Day and start of the visit at the home.</summary>
    public required LocalDateTime Starts { get; init; }

    /// <summary>Planned items, each with its window in words.</summary>
    public required ImmutableArray<ItemBrief> Items { get; init; }

    /// <summary>What could be done beside the plan.</summary>
    public required ImmutableArray<ItemBrief> Extras { get; init; }
    public required ImmutableArray<LineBrief> Lines { get; init; }
    public required ImmutableArray<DrawBrief> Draws { get; init; }

    /// <summary>Who may learn or do something at home.</summary>
    public ImmutableArray<string> People { get; init; } = [];

    /// <summary>Questions of the symptom screen that stop, for this patient.</summary>
    public ImmutableArray<ScreenQuestion> Signs { get; init; } = [];

    /// <summary>What is unusual, in words: allergy, lock, open question, two persons.</summary>
    public ImmutableArray<string> Unusual { get; init; } = [];

    /// <summary>What this nurse may not do here, by the scope gate.</summary>
    public ImmutableArray<string> BeyondScope { get; init; } = [];
    public required KitList Kit { get; init; }

    /// <summary>The clinical manager or who is on call.</summary>
    public string OnCallPhone { get; init; } = "";

    /// <summary>The emergency number.</summary>
    public string EmergencyNumber { get; init; } = "";

    /// <summary>A first dose is among the items.</summary>
    public bool HasFirstDose { get; init; }

    /// <summary>Records of this visit that stand already.</summary>
    public ImmutableArray<VisitRecord> Recorded { get; init; } = [];
}

/// <summary>One item with its window.</summary>
public sealed record ItemBrief(ItemEntry Item, string Window);

/// <summary>One line as it was last seen.</summary>
public sealed record LineBrief
{
    public required Line Line { get; init; }
    public required string Label { get; init; }

    /// <summary>What lies on it now; empty when no entry says.</summary>
    public DressingKind? Covering { get; init; }

    /// <summary>The last dressing change, in words.</summary>
    public string LastDressing { get; init; } = "";
    public decimal? LastLengthCm { get; init; }
    public string LastLengthOn { get; init; } = "";
    public decimal? LastGirthCm { get; init; }

    /// <summary>The site as last written down, with day and name; empty when nobody wrote it down.</summary>
    public string LastSite { get; init; } = "";
    public ImmutableArray<string> Locks { get; init; } = [];

    /// <summary>A needle is in the port.</summary>
    public bool Accessed { get; init; }
    public bool ChlorhexidineAllowed { get; init; }
}

/// <summary>One order under which blood can be drawn.</summary>
/// <param name="Order">The order.</param>
/// <param name="Text">As the nurse reads it.</param>
/// <param name="IsLevel">The last dose is asked for.</param>
/// <param name="DoseTimes">Ordered dose times, in words.</param>
/// <param name="IsPlanned">It belongs to the visit.</param>
public sealed record DrawBrief(string Order, string Text, bool IsLevel, string DoseTimes, bool IsPlanned);
