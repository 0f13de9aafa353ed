namespace HomeLine.LineCare.Lines;

/// <summary>What holds the line in place. Only the adhesive kind has a clock.</summary>
public enum SecurementKind
{
    /// <summary>An adhesive device, changed with each dressing.</summary>
    Adhesive,

    /// <summary>Sutures: inspected, never changed on a clock.</summary>
    Sutured,

    /// <summary>An anchor under the skin: inspected, never changed on a clock.</summary>
    SubcutaneousAnchor,

    /// <summary>Nothing outside the body to secure (an implanted port, a healed cuff).</summary>
    None,
}
