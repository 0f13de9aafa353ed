using System.Collections.Immutable;

namespace HomeLine.LineCare.Recording;

/// <summary>Findings at a site that are red flags, as the question of the symptom screen that they answer with yes. The screen decides what follows.</summary>
public static class SiteRedFlags
{
    private static readonly ImmutableArray<(SiteFinding Finding, string Question)> Flags =
    [
        (SiteFinding.Broken, "line-broken"),
        (SiteFinding.Pus, "pus"),
        (SiteFinding.SpreadingRedness, "redness"),
        (SiteFinding.TunnelOrPocketPain, "tunnel-pain"),
        (SiteFinding.ArmOrNeckSwelling, "new-swelling"),
        (SiteFinding.PartlyOut, "line-moved"),
        (SiteFinding.Leaking, "leaking"),
        (SiteFinding.PainOnInfusing, "infusing-pain"),
    ];

    /// <summary>Every finding that is a red flag.</summary>
    public static SiteFinding All { get; } = Flags.Aggregate(SiteFinding.None, (all, flag) => all | flag.Finding);

    /// <summary>The questions of the screen that these findings answer with yes, the gravest first; empty when none is a red flag.</summary>
    /// <param name="found">What was found.</param>
    public static ImmutableArray<string> In(SiteFinding found) => [.. Flags.Where(flag => found.HasFlag(flag.Finding)).Select(flag => flag.Question)];
}
