using System.Collections.Immutable;
using NodaTime;

namespace HomeLine.LineCare.Lines;

/// <summary>One lumen of a line. Connector and flush clocks run per lumen.</summary>
/// <param name="Label">The lumen's letter, <c>A</c>, <c>B</c> …</param>
/// <param name="Occluded">An occluded lumen is not flushed and has no connector clock until it is cleared.</param>
public sealed record Lumen(string Label, bool Occluded = false);

/// <summary>The standing facts of one vascular access device. What was done to it is in the ledger, never here.</summary>
public sealed record Line
{
    /// <summary>The line's identifier.</summary>
    public required LineId Id { get; init; }

    /// <summary>Whose line it is.</summary>
    public required PatientId Patient { get; init; }

    /// <summary>What kind of device it is.</summary>
    public required LineKind Kind { get; init; }

    /// <summary>Its lumens, in letter order; a port has one.</summary>
    public required ImmutableArray<Lumen> Lumens { get; init; }

    /// <summary>Side of the body and vein or site in the trade's words, for example <c>right basilic</c>; free text.</summary>
    public string Site { get; init; } = "";

    /// <summary>Date of insertion, when known.</summary>
    public LocalDate? InsertedOn { get; init; }

    /// <summary>Whether the tip position was confirmed. An unconfirmed tip locks the line for use.</summary>
    public bool TipConfirmed { get; init; } = true;

    /// <summary>Length inside the body at insertion, centimetres, when recorded.</summary>
    public decimal? InsertedLengthCm { get; init; }

    /// <summary>Length outside the body at insertion, centimetres, when recorded: the baseline for later measurements.</summary>
    public decimal? OutsideLengthCm { get; init; }

    /// <summary>What holds it.</summary>
    public SecurementKind Securement { get; init; } = SecurementKind.Adhesive;

    /// <summary>A tunneled exit site documented as healed, so that policy may allow no dressing.</summary>
    public bool ExitSiteHealed { get; init; }

    /// <summary>Minutes this line's dressing takes instead of policy, when the office knows better; 0 to 240.</summary>
    public int? DressingMinutes { get; init; }
}
