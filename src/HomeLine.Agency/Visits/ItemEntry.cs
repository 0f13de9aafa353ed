using System.Collections.Immutable;
using HomeLine.LineCare.Lines;
using NodaTime;

namespace HomeLine.Agency.Visits;

/// <summary>What became of one item of care.</summary>
public enum ItemStanding
{
    /// <summary>Nothing was said yet. A planned item may not stay so.</summary>
    Unsaid,

    /// <summary>Done.</summary>
    Done,

    /// <summary>Not done: no clock moves, whatever the reason.</summary>
    NotDone,
}

/// <summary>Why an item was not done. Each is another matter, and none resets a clock.</summary>
public enum NotDoneReason
{
    /// <summary>The patient, or who speaks for the patient, refused.</summary>
    Refused,

    /// <summary>The agency did not come, or there was no time for it.</summary>
    Missed,

    /// <summary>Nobody opened.</summary>
    NobodyHome,

    /// <summary>Called off before the visit.</summary>
    Cancelled,

    /// <summary>The prescriber holds it.</summary>
    HeldByPrescriber,

    /// <summary>Another reason, in words.</summary>
    Other,
}

/// <summary>One item of care as the nurse wrote it down.</summary>
public sealed record ItemEntry
{
    /// <summary>Names the need: patient, item, line, lumens, order; the key of the planned care.</summary>
    public required string Key { get; init; }
    public required string Label { get; init; }
    public required CareItem Item { get; init; }
    public LineId? Line { get; init; }
    public ImmutableArray<string> Lumens { get; init; } = [];
    public string? Order { get; init; }

    /// <summary>It belonged to the published visit; otherwise it was done beside the plan.</summary>
    public bool IsPlanned { get; init; }
    public ItemStanding Standing { get; init; }

    /// <summary>When it was done; empty for the time of arrival.</summary>
    public LocalTime? At { get; init; }
    public NotDoneReason? Why { get; init; }
    public string WhyText { get; init; } = "";

    /// <summary>A caregiver who did it while the nurse watched; empty when the nurse did it.</summary>
    public string DoneBy { get; init; } = "";

    /// <summary>What was put on, for a dressing or a port needle.</summary>
    public DressingKind? Dressing { get; init; }
    public bool SecurementChanged { get; init; }

    public bool IsDone => Standing == ItemStanding.Done;

    /// <summary>Reads a planned care's key; empty when it is no key of one.</summary>
    public static ItemEntry? FromKey(string key, string label, bool isPlanned)
    {
        string[] parts = key.Split('|');
        if (parts.Length != 5 || !Enum.TryParse(parts[1], out CareItem item)) return null;
        return new ItemEntry
        {
            Key = key,
            Label = label,
            Item = item,
            Line = parts[2].Length > 0 ? new LineId(parts[2]) : null,
            Lumens = [.. parts[3].Select(letter => letter.ToString())],
            Order = parts[4].Length > 0 ? parts[4] : null,
            IsPlanned = isPlanned,
        };
    }
}
