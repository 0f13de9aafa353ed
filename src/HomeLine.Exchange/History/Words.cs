using System.Collections.Frozen;
using HomeLine.LineCare;
using HomeLine.LineCare.Ledger;
using HomeLine.LineCare.Lines;

namespace HomeLine.Exchange.History;

/// <summary>The words a row may use, each list in one place.</summary>
internal static class Words
{
    public static readonly FrozenDictionary<string, LineKind> Lines = Table(
        ("PICC", LineKind.Picc), ("midline", LineKind.Midline), ("tunneled", LineKind.Tunneled), ("port", LineKind.Port),
        ("dialysis catheter", LineKind.DialysisCatheter));

    public static readonly FrozenDictionary<string, DressingKind> Dressings = Table(
        ("film", DressingKind.Film), ("gauze", DressingKind.Gauze), ("gauze under film", DressingKind.GauzeUnderFilm),
        ("antiseptic film", DressingKind.AntisepticFilm), ("none", DressingKind.None));

    public static readonly FrozenDictionary<string, SecurementKind> Securements = Table(
        ("adhesive", SecurementKind.Adhesive), ("sutured", SecurementKind.Sutured),
        ("anchor under the skin", SecurementKind.SubcutaneousAnchor), ("no securement", SecurementKind.None));

    public static readonly FrozenDictionary<string, CareItem> Items = Table(
        ("dressing", CareItem.Dressing), ("securement", CareItem.Securement), ("connector", CareItem.Connector), ("set", CareItem.Set),
        ("port needle", CareItem.PortNeedle), ("lumen flush", CareItem.LumenFlush), ("port flush", CareItem.PortFlush),
        ("outside length", CareItem.OutsideLength), ("site check", CareItem.SiteCheck), ("labs", CareItem.Labs));

    public static readonly FrozenDictionary<string, InfusionKind> Infusions = Table(
        ("intermittent", InfusionKind.Intermittent), ("continuous", InfusionKind.Continuous), ("nutrition", InfusionKind.ParenteralNutrition),
        ("lipid", InfusionKind.Lipid), ("blood", InfusionKind.Blood));

    public static readonly FrozenDictionary<string, PerformerKind> Performers = Table(
        ("nurse", PerformerKind.Nurse), ("caregiver", PerformerKind.Caregiver), ("clinic", PerformerKind.Outside), ("hospital", PerformerKind.Outside));

    public static readonly FrozenDictionary<string, RiskFactors> Risks = Table(
        ("nutrition", RiskFactors.ParenteralNutrition), ("low white count", RiskFactors.LowWhiteCount),
        ("recent infection", RiskFactors.RecentInfection), ("inotrope", RiskFactors.InotropeRunning),
        ("chlorhexidine allergy", RiskFactors.ChlorhexidineAllergy), ("adhesive injury", RiskFactors.AdhesiveInjury));

    public static readonly FrozenDictionary<string, SealFinding> Findings = Table(
        ("site exposed", SealFinding.SiteExposed), ("wet through", SealFinding.WetThrough), ("soiled", SealFinding.Soiled), ("off", SealFinding.Off),
        ("edge lifted", SealFinding.EdgeLifted), ("moisture", SealFinding.Moisture), ("outer corner", SealFinding.OuterCornerOnly));

    public static readonly FrozenDictionary<string, Certainty> Certainties = Table(
        ("guess", Certainty.Guess), ("by phone", Certainty.CaregiverByPhone), ("discharge paper", Certainty.DischargePaper),
        ("written on the dressing", Certainty.WrittenOnDressing), ("seen", Certainty.SeenByOurNurse));

    /// <summary>What an entry begins with, when nothing but lumens or a length follows.</summary>
    public static readonly FrozenDictionary<string, LineEventKind> Entries = Table(
        ("inserted", LineEventKind.Inserted), ("tip confirmed", LineEventKind.TipConfirmed), ("reinforced", LineEventKind.DressingReinforced),
        ("port accessed", LineEventKind.PortAccessed), ("needle out", LineEventKind.PortDeaccessed), ("connector", LineEventKind.ConnectorChanged),
        ("set", LineEventKind.SetChanged), ("flush", LineEventKind.Flushed), ("dose", LineEventKind.DoseGiven), ("draw", LineEventKind.BloodDrawn),
        ("culture", LineEventKind.BloodCultureDrawn), ("labs", LineEventKind.LabsDrawn), ("measured", LineEventKind.Measured),
        ("site check", LineEventKind.SiteChecked), ("connector bad", LineEventKind.ConnectorCompromised), ("occluded", LineEventKind.LumenOccluded),
        ("cleared", LineEventKind.LumenCleared), ("exchanged", LineEventKind.Exchanged), ("removed", LineEventKind.Removed),
        ("to hospital", LineEventKind.AdmittedToHospital), ("home", LineEventKind.ReturnedHome), ("refused", LineEventKind.Refused),
        ("missed", LineEventKind.Missed), ("not done", LineEventKind.NotDone), ("call", LineEventKind.PhoneCall), ("recertified", LineEventKind.Recertified),
        ("locked", LineEventKind.UseLocked), ("released", LineEventKind.UseReleased), ("service", LineEventKind.ServiceGiven));

    /// <summary>The word's meaning, or a message that lists what can be written.</summary>
    public static T Find<T>(FrozenDictionary<string, T> table, string word, string what) => table.TryGetValue(word.Trim(), out T? value)
        ? value
        : throw new RowUnreadableException($"“{word.Trim()}” is no {what}. Known: {string.Join(", ", table.Keys.Order(StringComparer.OrdinalIgnoreCase))}.");

    private static FrozenDictionary<string, T> Table<T>(params (string Word, T Value)[] words) =>
        words.ToFrozenDictionary(one => one.Word, one => one.Value, StringComparer.OrdinalIgnoreCase);
}
