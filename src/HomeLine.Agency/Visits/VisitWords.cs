using System.Collections.Immutable;
using HomeLine.LineCare.Ledger;
using HomeLine.LineCare.Recording;
using NodaTime.Text;

namespace HomeLine.Agency.Visits;

/// <summary>What was written down at a visit, in the trade's words: the same on the page, in the ledger and on paper.</summary>
public static class VisitWords
{
    private static readonly LocalTimePattern Clock = LocalTimePattern.CreateWithInvariantCulture("HH:mm");
    private static readonly LocalDateTimePattern Moment = LocalDateTimePattern.CreateWithInvariantCulture("ddd d MMM HH:mm");

    /// <summary>Every finding with its words, those that stop first.</summary>
    public static ImmutableArray<(SiteFinding Finding, string Words)> Findings { get; } =
    [
        (SiteFinding.Pus, "pus"),
        (SiteFinding.SpreadingRedness, "redness that spreads"),
        (SiteFinding.TunnelOrPocketPain, "pain along the tunnel or over the port pocket"),
        (SiteFinding.ArmOrNeckSwelling, "new swelling of arm, neck or face"),
        (SiteFinding.PartlyOut, "line partly out, or cuff visible"),
        (SiteFinding.Broken, "line cut or broken"),
        (SiteFinding.Leaking, "leaking"),
        (SiteFinding.PainOnInfusing, "pain or burning on flushing or infusing"),
        (SiteFinding.Redness, "redness at the site"),
        (SiteFinding.Swelling, "swelling at the site"),
        (SiteFinding.Warmth, "warmth"),
        (SiteFinding.Tenderness, "tenderness"),
        (SiteFinding.Drainage, "clear or slightly bloody drainage"),
        (SiteFinding.Bruising, "bruising"),
        (SiteFinding.AdhesiveInjury, "skin injury under the adhesive"),
        (SiteFinding.AntisepticReaction, "rash or itch where the antiseptic touched"),
    ];

    public static ImmutableArray<(SealFinding Finding, string Words)> Seals { get; } =
    [
        (SealFinding.SiteExposed, "site exposed"),
        (SealFinding.Off, "dressing off"),
        (SealFinding.WetThrough, "wet through"),
        (SealFinding.Soiled, "soiled, or blood beneath"),
        (SealFinding.EdgeLifted, "edge lifted"),
        (SealFinding.Moisture, "moisture beneath"),
        (SealFinding.OuterCornerOnly, "outer corner only"),
    ];

    public static string Of(SiteFinding found) => string.Join(", ", Findings.Where(f => found.HasFlag(f.Finding)).Select(f => f.Words));

    public static string Of(SealFinding found) => string.Join(", ", Seals.Where(f => found.HasFlag(f.Finding)).Select(f => f.Words));

    public static string Of(NotDoneReason why) => why switch
    {
        NotDoneReason.Refused => "Refused",
        NotDoneReason.Missed => "Missed by us",
        NotDoneReason.NobodyHome => "Nobody at home",
        NotDoneReason.Cancelled => "Cancelled before the visit",
        NotDoneReason.HeldByPrescriber => "Held by the prescriber",
        NotDoneReason.Other => "Another reason",
        _ => throw new ArgumentOutOfRangeException(nameof(why), why, "Unknown reason"),
    };

    public static string Of(BloodReturn back) => back switch
    {
        BloodReturn.NotChecked => "not checked",
        BloodReturn.Brisk => "brisk",
        BloodReturn.Sluggish => "sluggish",
        BloodReturn.None => "none",
        _ => throw new ArgumentOutOfRangeException(nameof(back), back, "Unknown blood return"),
    };

    public static string Of(TeachLevel level) => level switch
    {
        TeachLevel.Shown => "shown",
        TeachLevel.WithPrompts => "did it back with prompts",
        TeachLevel.Independent => "did it back alone and told why",
        TeachLevel.NotYet => "not yet",
        _ => throw new ArgumentOutOfRangeException(nameof(level), level, "Unknown level"),
    };

    public static string Of(Incident incident) => incident switch
    {
        Incident.None => "none",
        Incident.NeedleStick => "needle stick",
        Incident.Fall => "fall",
        Incident.LineDamage => "damage to the line",
        Incident.Other => "another incident",
        _ => throw new ArgumentOutOfRangeException(nameof(incident), incident, "Unknown incident"),
    };

    /// <summary>The ledger's kind for a reason: a refusal and a missed visit have their own, everything else is care not done.</summary>
    public static LineEventKind KindOf(NotDoneReason why) => why switch
    {
        NotDoneReason.Refused => LineEventKind.Refused,
        NotDoneReason.Missed or NotDoneReason.NobodyHome => LineEventKind.Missed,
        _ => LineEventKind.NotDone,
    };

    /// <summary>The site in one line; nothing found is said, not left out.</summary>
    public static string Site(LineEntry line)
    {
        string found = line.Found == SiteFinding.None ? "No redness, swelling, drainage or pain seen or told." : $"Found: {Of(line.Found)}.";
        return line.FoundText.Trim().Length > 0 ? $"{found} {line.FoundText.Trim()}" : found;
    }

    /// <summary>Blood return by lumen; empty when nobody drew back.</summary>
    public static string BloodReturns(ImmutableArray<LumenEntry> lumens)
    {
        string back = string.Join(", ", lumens.Where(l => l.Return != BloodReturn.NotChecked).Select(l => $"{l.Label} {Of(l.Return)}"));
        return back.Length > 0 ? $"Blood return: {back}." : "";
    }

    public static string Draw(DrawEntry draw)
    {
        List<string> parts = [draw.Lumen is { } lumen ? $"Through {draw.Line} lumen {lumen}" : "By puncture of a vein"];
        if (draw.LastDose is { } dose) parts.Add($"last dose {Moment.Format(dose)}");
        if (draw.Tubes.Trim().Length > 0) parts.Add($"tubes: {draw.Tubes.Trim()}");
        if (draw.DroppedAt is { } dropped) parts.Add($"handed in {Clock.Format(dropped)}{(draw.Dropped.Length > 0 ? $" at {draw.Dropped}" : "")}");
        else if (draw.Dropped.Trim().Length > 0) parts.Add($"goes to {draw.Dropped.Trim()}");
        return string.Join("; ", parts) + ".";
    }
}
