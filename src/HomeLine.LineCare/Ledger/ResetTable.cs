using HomeLine.LineCare.Lines;

namespace HomeLine.LineCare.Ledger;

/// <summary>What an event does to a clock.</summary>
public enum ResetEffect
{
    /// <summary>Leaves the clock alone.</summary>
    Nothing,

    /// <summary>Starts it again from the event.</summary>
    Resets,

    /// <summary>Starts it again for the named lumens only.</summary>
    ResetsNamedLumens,

    /// <summary>Starts it again only when the event says the item was replaced, used or measured.</summary>
    IfRecorded,

    /// <summary>Starts it for the first time.</summary>
    Starts,

    /// <summary>Ends it.</summary>
    Ends,
}

/// <summary>Which event resets, starts, ends or leaves alone which clock. The one place where this is decided.
/// Common practice, no source; the connector rows follow published connector procedures.</summary>
public static class ResetTable
{
    /// <summary>The items whose clocks are driven by events on a line.</summary>
    public static readonly IReadOnlyList<CareItem> LineItems =
    [
        CareItem.Dressing, CareItem.Securement, CareItem.Connector, CareItem.Set, CareItem.PortNeedle,
        CareItem.LumenFlush, CareItem.PortFlush, CareItem.OutsideLength, CareItem.SiteCheck,
    ];

    /// <summary>What <paramref name="kind"/> does to the clock of <paramref name="item"/>.</summary>
    public static ResetEffect Of(LineEventKind kind, CareItem item) => item switch
    {
        CareItem.Dressing => OnDressing(kind),
        CareItem.Securement => OnSecurement(kind),
        CareItem.Connector => OnConnector(kind),
        CareItem.Set => OnSet(kind),
        CareItem.PortNeedle => OnNeedle(kind),
        CareItem.LumenFlush => OnLumenFlush(kind),
        CareItem.PortFlush => OnPortFlush(kind),
        CareItem.OutsideLength => OnLength(kind),
        CareItem.SiteCheck => OnSiteCheck(kind),
        CareItem.RemovalSiteCheck => kind is LineEventKind.Removed ? ResetEffect.Starts
            : kind is LineEventKind.SiteChecked ? ResetEffect.Ends : ResetEffect.Nothing,
        CareItem.Labs => kind is LineEventKind.LabsDrawn ? ResetEffect.Resets : ResetEffect.Nothing,
        CareItem.Recertification => kind is LineEventKind.Recertified ? ResetEffect.Resets : ResetEffect.Nothing,
        CareItem.OrderedService => kind is LineEventKind.ServiceGiven or LineEventKind.DoseGiven ? ResetEffect.Resets : ResetEffect.Nothing,
        CareItem.CaregiverValidation or CareItem.NurseCheck => ResetEffect.Nothing,
        _ => throw new ArgumentOutOfRangeException(nameof(item), item, "No such care item."),
    };

    private static ResetEffect OnDressing(LineEventKind kind) => kind switch
    {
        LineEventKind.DressingChanged or LineEventKind.PortAccessed => ResetEffect.Resets,
        LineEventKind.Inserted => ResetEffect.Starts,
        LineEventKind.PortDeaccessed or LineEventKind.Removed or LineEventKind.Exchanged => ResetEffect.Ends,
        _ => ResetEffect.Nothing,
    };

    private static ResetEffect OnSecurement(LineEventKind kind) => kind switch
    {
        LineEventKind.DressingChanged => ResetEffect.IfRecorded,
        _ => OnDressing(kind),
    };

    private static ResetEffect OnConnector(LineEventKind kind) => kind switch
    {
        LineEventKind.DressingChanged => ResetEffect.IfRecorded,
        LineEventKind.ConnectorChanged or LineEventKind.BloodCultureDrawn => ResetEffect.ResetsNamedLumens,
        _ => OnDressing(kind),
    };

    private static ResetEffect OnSet(LineEventKind kind) => kind switch
    {
        LineEventKind.SetChanged => ResetEffect.ResetsNamedLumens,
        LineEventKind.DressingChanged => ResetEffect.Nothing,
        _ => OnDressing(kind),
    };

    private static ResetEffect OnNeedle(LineEventKind kind) => kind switch
    {
        LineEventKind.PortAccessed => ResetEffect.Resets,
        LineEventKind.PortDeaccessed or LineEventKind.Removed or LineEventKind.Exchanged => ResetEffect.Ends,
        _ => ResetEffect.Nothing,
    };

    private static ResetEffect OnLumenFlush(LineEventKind kind) => kind switch
    {
        LineEventKind.Flushed or LineEventKind.DoseGiven or LineEventKind.BloodDrawn or LineEventKind.BloodCultureDrawn
            => ResetEffect.ResetsNamedLumens,
        LineEventKind.DressingChanged or LineEventKind.ConnectorChanged or LineEventKind.LabsDrawn or LineEventKind.ServiceGiven
            or LineEventKind.LumenCleared => ResetEffect.IfRecorded,
        LineEventKind.PortAccessed => ResetEffect.Resets,
        LineEventKind.Inserted => ResetEffect.Starts,
        LineEventKind.PortDeaccessed or LineEventKind.Removed or LineEventKind.Exchanged => ResetEffect.Ends,
        _ => ResetEffect.Nothing,
    };

    private static ResetEffect OnPortFlush(LineEventKind kind) => kind switch
    {
        LineEventKind.PortDeaccessed or LineEventKind.Inserted => ResetEffect.Starts,
        LineEventKind.Flushed or LineEventKind.DoseGiven or LineEventKind.BloodDrawn or LineEventKind.BloodCultureDrawn
            => ResetEffect.Resets,
        _ => OnLumenFlush(kind),
    };

    private static ResetEffect OnLength(LineEventKind kind) => kind switch
    {
        LineEventKind.DressingChanged or LineEventKind.Measured => ResetEffect.Resets,
        LineEventKind.Inserted => ResetEffect.Starts,
        LineEventKind.Removed or LineEventKind.Exchanged => ResetEffect.Ends,
        _ => ResetEffect.Nothing,
    };

    /// <summary>A nurse who opens or uses the line has looked at its site; the caller checks that it was a nurse.</summary>
    private static ResetEffect OnSiteCheck(LineEventKind kind) => kind switch
    {
        LineEventKind.SiteChecked or LineEventKind.DressingChanged or LineEventKind.ConnectorChanged or LineEventKind.Flushed
            or LineEventKind.DoseGiven or LineEventKind.BloodDrawn or LineEventKind.BloodCultureDrawn or LineEventKind.Measured
            or LineEventKind.PortAccessed or LineEventKind.PortDeaccessed => ResetEffect.Resets,
        LineEventKind.Inserted => ResetEffect.Starts,
        LineEventKind.Removed or LineEventKind.Exchanged => ResetEffect.Ends,
        _ => ResetEffect.Nothing,
    };
}
