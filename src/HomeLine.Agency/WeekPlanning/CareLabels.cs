using HomeLine.LineCare.Lines;

namespace HomeLine.Agency.WeekPlanning;

/// <summary>Items and lines in the words a nurse reads.</summary>
public static class CareLabels
{
    public static string Of(Line line)
    {
        string kind = Of(line.Kind);
        return line.Lumens.Length > 1 ? $"{kind}, {line.Lumens.Length} lumens" : kind;
    }

    public static string Of(LineKind kind) => kind switch
    {
        LineKind.Picc => "PICC",
        LineKind.Midline => "midline",
        LineKind.Tunneled => "tunneled line",
        LineKind.Port => "port",
        LineKind.DialysisCatheter => "dialysis catheter (not for our use)",
        _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, "Unknown kind of line"),
    };

    public static string Of(DressingKind dressing) => dressing switch
    {
        DressingKind.Film => "film",
        DressingKind.Gauze => "gauze",
        DressingKind.GauzeUnderFilm => "gauze under film",
        DressingKind.AntisepticFilm => "antiseptic film",
        DressingKind.None => "no dressing",
        _ => throw new ArgumentOutOfRangeException(nameof(dressing), dressing, "Unknown dressing"),
    };

    public static string Of(CareItem item) => item switch
    {
        CareItem.Dressing => "dressing",
        CareItem.Securement => "securement",
        CareItem.Connector => "connector",
        CareItem.Set => "administration set",
        CareItem.PortNeedle => "port needle, dressing, extension, connector",
        CareItem.LumenFlush => "flush of the idle lumen",
        CareItem.PortFlush => "flush of the idle port",
        CareItem.OutsideLength => "length outside",
        CareItem.SiteCheck => "site check",
        CareItem.Labs => "labs",
        CareItem.Recertification => "recertification",
        CareItem.CaregiverValidation => "caregiver validation",
        CareItem.NurseCheck => "nurse check of caregiver's care",
        CareItem.RemovalSiteCheck => "site check after removal",
        CareItem.OrderedService => "ordered service",
        _ => throw new ArgumentOutOfRangeException(nameof(item), item, "Unknown item"),
    };
}
