namespace HomeLine.LineCare.Lines;

/// <summary>What covers the exit site; the dressing clock depends on it.</summary>
public enum DressingKind
{
    /// <summary>Transparent film over a visible site.</summary>
    Film,

    /// <summary>Gauze and tape.</summary>
    Gauze,

    /// <summary>Film with gauze beneath it: the site cannot be seen, so it runs on the gauze clock.</summary>
    GauzeUnderFilm,

    /// <summary>Film with an antiseptic (chlorhexidine) part at the site.</summary>
    AntisepticFilm,

    /// <summary>No dressing: a healed tunneled exit site, or an idle port.</summary>
    None,
}
