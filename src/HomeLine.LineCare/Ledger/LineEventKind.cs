namespace HomeLine.LineCare.Ledger;

/// <summary>What happened. Which clock each kind resets, ends, starts or leaves alone is the reset table of this room.</summary>
public enum LineEventKind
{
    /// <summary>The line was placed; its clocks start.</summary>
    Inserted,

    /// <summary>The tip position was confirmed.</summary>
    TipConfirmed,

    /// <summary>A full dressing change.</summary>
    DressingChanged,

    /// <summary>Tape added or an edge reinforced: resets nothing, the seal stays broken.</summary>
    DressingReinforced,

    /// <summary>A dressing reported or seen lifting, wet, soiled or off.</summary>
    SealReported,

    /// <summary>A port was accessed, or its needle changed with dressing, extension and connector.</summary>
    PortAccessed,

    /// <summary>The port needle came out; the idle-port clock starts.</summary>
    PortDeaccessed,

    /// <summary>Connectors of the named lumens were changed.</summary>
    ConnectorChanged,

    /// <summary>An administration set was changed.</summary>
    SetChanged,

    /// <summary>The named lumens, or an idle port, were flushed.</summary>
    Flushed,

    /// <summary>A dose ended through the named lumens.</summary>
    DoseGiven,

    /// <summary>Blood was drawn through the named lumens.</summary>
    BloodDrawn,

    /// <summary>A blood culture was drawn after a fresh connector.</summary>
    BloodCultureDrawn,

    /// <summary>A laboratory draw under an order, by whatever route.</summary>
    LabsDrawn,

    /// <summary>The length outside the body (and the arm girth) was measured without a dressing change.</summary>
    Measured,

    /// <summary>A nurse looked at the site.</summary>
    SiteChecked,

    /// <summary>A connector found cracked, off or with blood left in it: due now.</summary>
    ConnectorCompromised,

    /// <summary>A lumen was found occluded.</summary>
    LumenOccluded,

    /// <summary>A lumen was cleared.</summary>
    LumenCleared,

    /// <summary>The line was exchanged over a wire; a new line record follows.</summary>
    Exchanged,

    /// <summary>The line came out; every clock ends.</summary>
    Removed,

    /// <summary>The patient went into hospital or a facility: planning pauses, clocks run on.</summary>
    AdmittedToHospital,

    /// <summary>The patient came home.</summary>
    ReturnedHome,

    /// <summary>Care was refused: no clock moves.</summary>
    Refused,

    /// <summary>A visit did not happen: no clock moves.</summary>
    Missed,

    /// <summary>A call: no clock moves.</summary>
    PhoneCall,

    /// <summary>A recertification assessment was done.</summary>
    Recertified,

    /// <summary>The line was locked for use until a licensed person decides: resets nothing.</summary>
    UseLocked,

    /// <summary>A licensed person released the line, by name and with a reason in the note.</summary>
    UseReleased,

    /// <summary>An ordered service (long infusion, lesson …) was done.</summary>
    ServiceGiven,

    /// <summary>Care that was planned and not done for another reason than a refusal or a missed visit; also what was entered by mistake. No clock moves.</summary>
    NotDone,
}
