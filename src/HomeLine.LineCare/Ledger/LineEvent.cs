using System.Collections.Immutable;
using HomeLine.LineCare.Lines;
using NodaTime;

namespace HomeLine.LineCare.Ledger;

/// <summary>Identifies one ledger entry.</summary>
/// <param name="Value">Never empty.</param>
public readonly record struct EventId(string Value)
{
    /// <inheritdoc/>
    public override string ToString() => Value;
}

/// <summary>How far an anchor can be trusted; a weaker one may be replaced by a stronger one without asking.</summary>
public enum Certainty
{
    /// <summary>A guess: never an anchor, the item is due at the first contact.</summary>
    Guess,

    /// <summary>Told by a caregiver on the phone.</summary>
    CaregiverByPhone,

    /// <summary>From the discharge paper.</summary>
    DischargePaper,

    /// <summary>Written on the dressing.</summary>
    WrittenOnDressing,

    /// <summary>Seen or done by a nurse of the agency.</summary>
    SeenByOurNurse,
}

/// <summary>What was found at a broken seal.</summary>
[Flags]
public enum SealFinding
{
    /// <summary>Nothing noted.</summary>
    None = 0,

    /// <summary>The site itself is exposed.</summary>
    SiteExposed = 1,

    /// <summary>Wet through.</summary>
    WetThrough = 2,

    /// <summary>Soiled, or blood beneath it.</summary>
    Soiled = 4,

    /// <summary>The dressing is off.</summary>
    Off = 8,

    /// <summary>An edge has lifted, or a tape track reaches within 1 cm of the site.</summary>
    EdgeLifted = 16,

    /// <summary>A bead of moisture beneath it.</summary>
    Moisture = 32,

    /// <summary>Only an outer corner lifted; sealed all round the site and dry.</summary>
    OuterCornerOnly = 64,
}

/// <summary>
/// One entry of the append-only ledger: something that was done or happened. Nothing here is ever edited;
/// a correction is a new entry whose <see cref="Voids"/> names the old one.
/// </summary>
public sealed record LineEvent
{
    /// <summary>The entry's identifier.</summary>
    public required EventId Id { get; init; }

    /// <summary>The patient.</summary>
    public required PatientId Patient { get; init; }

    /// <summary>The line; empty for events of the patient as a whole (hospital, calls).</summary>
    public LineId? Line { get; init; }

    /// <summary>What happened.</summary>
    public required LineEventKind Kind { get; init; }

    /// <summary>When it was performed; empty when the date is unknown, which makes it no anchor.</summary>
    public CareMoment? Performed { get; init; }

    /// <summary>When it was entered. Never starts a clock.</summary>
    public required Instant RecordedAt { get; init; }

    /// <summary>Who did it.</summary>
    public PerformerKind Performer { get; init; } = PerformerKind.Nurse;

    /// <summary>The performer's name as shown, for example a nurse's number or <c>spouse</c>.</summary>
    public string PerformerName { get; init; } = "";

    /// <summary>Who entered it.</summary>
    public string RecordedBy { get; init; } = "";

    /// <summary>How far it can be trusted.</summary>
    public Certainty Certainty { get; init; } = Certainty.SeenByOurNurse;

    /// <summary>The dressing that was put on, for kinds that put one on.</summary>
    public DressingKind? Dressing { get; init; }

    /// <summary>Whether the adhesive securement was replaced.</summary>
    public bool SecurementChanged { get; init; }

    /// <summary>Letters of the lumens whose connector was replaced.</summary>
    public ImmutableArray<string> ConnectorsChanged { get; init; } = [];

    /// <summary>Letters of the lumens that were flushed, drawn from or used.</summary>
    public ImmutableArray<string> LumensUsed { get; init; } = [];

    /// <summary>Length outside the body, centimetres, when measured.</summary>
    public decimal? OutsideLengthCm { get; init; }

    /// <summary>Arm girth, centimetres, when measured.</summary>
    public decimal? ArmGirthCm { get; init; }

    /// <summary>What was found, for <see cref="LineEventKind.SealReported"/>.</summary>
    public SealFinding Seal { get; init; }

    /// <summary>The order under which it was done, for labs, doses and services.</summary>
    public string? Order { get; init; }

    /// <summary>The entry this one voids and replaces.</summary>
    public EventId? Voids { get; init; }

    /// <summary>Free text.</summary>
    public string Note { get; init; } = "";
}
