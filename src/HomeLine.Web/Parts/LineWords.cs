using HomeLine.LineCare.Ledger;
using HomeLine.LineCare.Lines;
using HomeLine.LineCare.Orders;

namespace HomeLine.Web.Parts;

/// <summary>Kinds of line, ledger entries and orders in the trade's words.</summary>
public static class LineWords
{
    /// <summary>For example <c>PICC, 2 lumens</c>.</summary>
    public static string InWords(this Line line) =>
        line.Kind.InWords() + (line.Kind is LineKind.Port ? "" : line.Lumens.Length == 1 ? ", 1 lumen" : $", {line.Lumens.Length} lumens");

    public static string InWords(this LineKind kind) => kind switch
    {
        LineKind.Picc => "PICC",
        LineKind.Midline => "Midline",
        LineKind.Tunneled => "Tunneled catheter",
        LineKind.Port => "Implanted port",
        LineKind.DialysisCatheter => "Dialysis catheter (not for our use)",
        _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, "Unknown kind"),
    };

    public static string InWords(this SecurementKind kind) => kind switch
    {
        SecurementKind.Adhesive => "adhesive, changed with the dressing",
        SecurementKind.Sutured => "sutured, inspected only",
        SecurementKind.SubcutaneousAnchor => "anchor under the skin, inspected only",
        SecurementKind.None => "none outside the body",
        _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, "Unknown kind"),
    };

    public static string InWords(this DressingKind kind) => kind switch
    {
        DressingKind.Film => "film",
        DressingKind.Gauze => "gauze and tape",
        DressingKind.GauzeUnderFilm => "gauze under film",
        DressingKind.AntisepticFilm => "film with an antiseptic part",
        DressingKind.None => "no dressing",
        _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, "Unknown kind"),
    };

    public static string InWords(this CareItem item) => item switch
    {
        CareItem.Dressing => "dressing",
        CareItem.Securement => "securement",
        CareItem.Connector => "connector",
        CareItem.Set => "administration set",
        CareItem.PortNeedle => "port needle",
        CareItem.LumenFlush => "lumen flush",
        CareItem.PortFlush => "port flush",
        CareItem.OutsideLength => "outside length",
        CareItem.SiteCheck => "site check",
        CareItem.Labs => "labs",
        CareItem.Recertification => "recertification",
        CareItem.CaregiverValidation => "caregiver validation",
        CareItem.NurseCheck => "nurse check",
        CareItem.RemovalSiteCheck => "site check after removal",
        CareItem.OrderedService => "ordered service",
        _ => throw new ArgumentOutOfRangeException(nameof(item), item, "Unknown item"),
    };

    public static string InWords(this Certainty certainty) => certainty switch
    {
        Certainty.Guess => "a guess: starts no clock",
        Certainty.CaregiverByPhone => "told by phone",
        Certainty.DischargePaper => "discharge paper",
        Certainty.WrittenOnDressing => "written on the dressing",
        Certainty.SeenByOurNurse => "seen by our nurse",
        _ => throw new ArgumentOutOfRangeException(nameof(certainty), certainty, "Unknown certainty"),
    };

    public static string InWords(this PerformerKind performer) => performer switch
    {
        PerformerKind.Nurse => "nurse",
        PerformerKind.Caregiver => "caregiver",
        PerformerKind.Outside => "outside",
        _ => throw new ArgumentOutOfRangeException(nameof(performer), performer, "Unknown performer"),
    };

    public static string InWords(this OrderKind kind) => kind switch
    {
        OrderKind.VisitFrequency => "visit frequency",
        OrderKind.Interval => "interval",
        OrderKind.Labs => "labs",
        OrderKind.DrugLevel => "drug level",
        OrderKind.NurseDose => "dose by nurse",
        OrderKind.LongInfusion => "long infusion",
        OrderKind.Hydration => "hydration",
        OrderKind.Teaching => "teaching",
        OrderKind.Removal => "line removal",
        _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, "Unknown order"),
    };

    /// <summary>What happened, with what was put on, changed, used or measured.</summary>
    public static string InWords(this LineEvent entry)
    {
        List<string> parts = [Happened(entry.Kind)];
        if (entry.Dressing is { } dressing)
            parts.Add(dressing.InWords());
        if (entry.SecurementChanged)
            parts.Add("securement changed");
        if (!entry.ConnectorsChanged.IsDefaultOrEmpty)
            parts.Add("connector " + string.Join(", ", entry.ConnectorsChanged));
        if (!entry.LumensUsed.IsDefaultOrEmpty)
            parts.Add("lumen " + string.Join(", ", entry.LumensUsed));
        if (entry.OutsideLengthCm is { } length)
            parts.Add(FormattableString.Invariant($"outside length {length} cm"));
        if (entry.ArmGirthCm is { } girth)
            parts.Add(FormattableString.Invariant($"arm girth {girth} cm"));
        if (entry.Seal != SealFinding.None)
            parts.Add(entry.Seal.InWords());
        return string.Join("; ", parts);
    }

    public static string InWords(this SealFinding found) =>
        string.Join(", ", SealFindings.All.Where(one => found.HasFlag(one.Finding)).Select(one => one.Written));

    private static string Happened(LineEventKind kind) => kind switch
    {
        LineEventKind.Inserted => "line inserted",
        LineEventKind.TipConfirmed => "tip confirmed",
        LineEventKind.DressingChanged => "dressing changed",
        LineEventKind.DressingReinforced => "dressing reinforced (no clock moved)",
        LineEventKind.SealReported => "broken seal reported",
        LineEventKind.PortAccessed => "port accessed",
        LineEventKind.PortDeaccessed => "port de-accessed",
        LineEventKind.ConnectorChanged => "connector changed",
        LineEventKind.SetChanged => "set changed",
        LineEventKind.Flushed => "flushed",
        LineEventKind.DoseGiven => "dose given",
        LineEventKind.BloodDrawn => "blood drawn",
        LineEventKind.BloodCultureDrawn => "blood culture drawn",
        LineEventKind.LabsDrawn => "labs drawn",
        LineEventKind.Measured => "measured",
        LineEventKind.SiteChecked => "site checked",
        LineEventKind.ConnectorCompromised => "connector found compromised",
        LineEventKind.LumenOccluded => "lumen occluded",
        LineEventKind.LumenCleared => "lumen cleared",
        LineEventKind.Exchanged => "line exchanged",
        LineEventKind.Removed => "line removed",
        LineEventKind.AdmittedToHospital => "admitted to hospital",
        LineEventKind.ReturnedHome => "returned home",
        LineEventKind.Refused => "care refused (no clock moved)",
        LineEventKind.Missed => "visit missed (no clock moved)",
        LineEventKind.NotDone => "care not done (no clock moved)",
        LineEventKind.PhoneCall => "phone call (no clock moved)",
        LineEventKind.Recertified => "recertified",
        LineEventKind.ServiceGiven => "ordered service done",
        _ => kind.ToString(),
    };
}
