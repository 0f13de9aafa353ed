using HomeLine.LineCare.Ledger;

namespace HomeLine.Web.Parts;

/// <summary>One finding at a dressing, as asked on the phone and as written in the ledger.</summary>
/// <param name="Finding">The finding.</param>
/// <param name="Asked">In the words of the phone.</param>
/// <param name="Written">In the words of the ledger.</param>
public sealed record SealFindingWords(SealFinding Finding, string Asked, string Written);

/// <summary>Every finding, gravest first.</summary>
public static class SealFindings
{
    public static IReadOnlyList<SealFindingWords> All { get; } =
    [
        new(SealFinding.SiteExposed, "The place where the line enters the skin is uncovered", "site exposed"),
        new(SealFinding.Off, "The dressing has come off", "dressing off"),
        new(SealFinding.WetThrough, "It is wet through", "wet through"),
        new(SealFinding.Soiled, "It is soiled, or there is blood beneath it", "soiled"),
        new(SealFinding.EdgeLifted, "An edge has lifted, or a gap reaches close to where the line enters", "edge lifted"),
        new(SealFinding.Moisture, "There is a bead of moisture beneath it", "moisture"),
        new(SealFinding.OuterCornerOnly, "Only an outer corner has lifted; it is sealed all round the line and dry", "outer corner only"),
    ];
}
