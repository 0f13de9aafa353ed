using System.Collections.Immutable;

namespace HomeLine.LineCare.RedFlags;

/// <summary>What is read aloud or acted on, our own lines, to be approved by each agency. Never a diagnosis, a dose, or a promise that all is well.</summary>
public static class ScreenWording
{
    /// <summary>For a dressing that is lifting, wet or soiled, until it has been changed in full.</summary>
    public static readonly ImmutableArray<string> InterimForBrokenSeal =
    [
        "Wash your hands. Do not peel the dressing back and do not touch the site.",
        "Cover it with something clean and dry, as you were taught. Keep it dry: no shower and no bath.",
        "Taping it down does not replace a new dressing. A full change is still needed.",
        "Call again at once for fever, chills, pus, new swelling, or if the line moves.",
    ];

    /// <summary>For a lumen that does not flush.</summary>
    public static readonly ImmutableArray<string> InterimForOcclusion =
    [
        "Do not force it. Do not use this line until a nurse has looked at it.",
        "Close the clamp.",
    ];

    /// <summary>For a connector that is off or cracked.</summary>
    public static readonly ImmutableArray<string> InterimForConnector =
    [
        "Close the clamp now. Do not put the old connector back on.",
        "Do not use this line until a nurse has changed the connector.",
    ];

    internal static ImmutableArray<string> For(ScreenClass @class, Asked? stopped, ScreenContext context) => @class switch
    {
        ScreenClass.Emergency => Lines(
            "Call the emergency number now.", stopped?.FirstAid, "Stay with the patient until help comes.", "Then call our on-call nurse."),
        ScreenClass.UrgentClinician => Lines(
            context.InfusionMustNotStop
                ? "Do not use the line for anything else. Do not stop the heart infusion unless a clinician tells you to."
                : "Do not use the line until a nurse has spoken with you.",
            stopped?.FirstAid,
            "A licensed nurse has to speak with you now. Keep the phone free.",
            "If breathing gets hard, or there is fainting or confusion, call the emergency number at once."),
        ScreenClass.SameDay or ScreenClass.Routine => Lines("No red flag was reported.", "Call again at once if anything changes."),
        _ => throw new ArgumentOutOfRangeException(nameof(@class), @class, "No such class."),
    };

    internal static ImmutableArray<string> InterimFor(string questionId) => questionId switch
    {
        "dressing-lifting" or "dressing-wet" or "dressing-soiled" or "blood-under" => InterimForBrokenSeal,
        "cannot-flush" => InterimForOcclusion,
        "connector" => InterimForConnector,
        _ => [],
    };

    private static ImmutableArray<string> Lines(params ReadOnlySpan<string?> lines)
    {
        var kept = ImmutableArray.CreateBuilder<string>();
        foreach (var line in lines)
            if (!string.IsNullOrEmpty(line)) kept.Add(line);
        return kept.ToImmutable();
    }
}
