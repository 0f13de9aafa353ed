namespace HomeLine.LineCare.Recording;

/// <summary>What a nurse found at an exit site, a port or the arm, in the words of the note. Graded by nobody here; nothing falls due by it.</summary>
[Flags]
public enum SiteFinding
{
    /// <summary>Nothing of this.</summary>
    None = 0,

    /// <summary>Redness at the site that does not spread.</summary>
    Redness = 1,

    /// <summary>Swelling at the site.</summary>
    Swelling = 2,

    /// <summary>Warmth.</summary>
    Warmth = 4,

    /// <summary>Tenderness at the site.</summary>
    Tenderness = 8,

    /// <summary>Clear or slightly bloody drainage.</summary>
    Drainage = 16,

    /// <summary>Bruising.</summary>
    Bruising = 32,

    /// <summary>Blisters, tears or stripped skin under the adhesive.</summary>
    AdhesiveInjury = 64,

    /// <summary>Rash or itch where the antiseptic touched.</summary>
    AntisepticReaction = 128,

    /// <summary>Pus.</summary>
    Pus = 256,

    /// <summary>Redness that spreads.</summary>
    SpreadingRedness = 512,

    /// <summary>Pain along the tunnel or over the port pocket.</summary>
    TunnelOrPocketPain = 1024,

    /// <summary>New swelling of the arm, neck or face.</summary>
    ArmOrNeckSwelling = 2048,

    /// <summary>The line or the site leaks.</summary>
    Leaking = 4096,

    /// <summary>Pain or burning on flushing or infusing.</summary>
    PainOnInfusing = 8192,

    /// <summary>The line has come part of the way out, or its cuff shows.</summary>
    PartlyOut = 16384,

    /// <summary>The line is cut or broken.</summary>
    Broken = 32768,
}
