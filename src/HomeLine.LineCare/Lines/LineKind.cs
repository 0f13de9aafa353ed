namespace HomeLine.LineCare.Lines;

/// <summary>The kinds of vascular access device that are looked after at home.</summary>
public enum LineKind
{
    /// <summary>Peripherally inserted central catheter.</summary>
    Picc,

    /// <summary>Midline catheter: its tip is not central, so it counts no central-line days.</summary>
    Midline,

    /// <summary>Tunneled central catheter.</summary>
    Tunneled,

    /// <summary>Implanted port, accessed with a needle or idle.</summary>
    Port,

    /// <summary>Dialysis catheter: recorded so that nobody overlooks it, never used or cared for by the agency.</summary>
    DialysisCatheter,
}

/// <summary>What the kind alone says about a line.</summary>
public static class LineKindFacts
{
    /// <summary>Whether the tip lies centrally, so that the line counts in central-line days.</summary>
    public static bool IsCentral(this LineKind kind) => kind is not LineKind.Midline;
}
