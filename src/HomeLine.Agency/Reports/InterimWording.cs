using System.Collections.Immutable;

namespace HomeLine.Agency.Reports;

/// <summary>Lines to read to a caller until the nurse comes. Our own wording, for each agency to approve.</summary>
public static class InterimWording
{
    public static ImmutableArray<string> LiftingDressing { get; } =
    [
        "Wash your hands before you touch anything near the line.",
        "Do not pull the dressing off. Do not push the edge back under.",
        "If the agency gave you a cover for this, lay it over the loose edge. Do not tape over the site itself.",
        "Keep the arm and the dressing dry. Do not pull on the line.",
        "If the dressing comes off, the line moves, or you see blood, pus or swelling, call again at once.",
        "If you get a fever, chills or feel unwell, call again at once. Do not wait for the nurse.",
    ];
}
