using System.Collections.Immutable;
using System.Globalization;

namespace HomeLine.Agency.Sheets;

/// <summary>
/// Default lines for care sheets in plain words. Our own wording, a starting point only: each agency's clinical lead must approve or replace
/// it before it goes to a family. No doses, no diagnoses, no promise that anything is fine.
/// </summary>
public static class StandingTexts
{
    /// <summary>Call the emergency number now. Follows the emergency row of the symptom screen.</summary>
    public static ImmutableArray<string> NeverWait { get; } =
    [
        "Chest pain or trouble breathing.",
        "Blue lips, fainting, or a seizure.",
        "Confused, or weak on one side.",
        "Swollen face or tongue, or hives.",
        "Bleeding that does not stop.",
        "The line is cut or broken.",
        "The chest or neck line comes out.",
        "Air went into the line.",
    ];

    /// <summary>
    /// Call the agency at once, by day or night. A swollen face stands with the emergencies only: the stricter call wins, and no sign is on two lists.
    /// </summary>
    /// <param name="feverCelsius">The temperature from which to call, °C: the agency's policy.</param>
    public static ImmutableArray<string> CallNow(decimal feverCelsius) =>
    [
        string.Create(CultureInfo.InvariantCulture, $"Fever: {(feverCelsius * 9 / 5) + 32:0.0} °F ({feverCelsius:0.0} °C) or more."),
        "Chills or shaking.",
        "Pus, or red skin that spreads.",
        "Pain over the port or the line.",
        "New swelling of the arm or neck.",
        "Pain or burning as fluid runs in.",
        "The line leaks, or more of it shows.",
        "A pump stops and stays off.",
    ];

    /// <summary>Call on the same day.</summary>
    public static ImmutableArray<string> CallToday { get; } =
    [
        "The dressing is wet, dirty, or loose.",
        "Blood shows under the dressing.",
        "A cap is off or cracked.",
        "You can’t flush. Do not force it.",
        "The skin itches or has a rash.",
        "You missed a dose.",
    ];

    /// <summary>What good looks like.</summary>
    public static ImmutableArray<string> LooksGood { get; } =
    [
        "The dressing is dry and clean.",
        "All four edges stick to the skin.",
        "The skin looks as it did last time.",
        "Nothing hurts, itches, or leaks.",
        "Each cap is on tight.",
    ];

    /// <summary>Short reminders; never in place of training.</summary>
    public const string CleanHands = "Wash your hands first. Scrub the cap and let it dry.";

    /// <summary>When in doubt.</summary>
    public const string IfUnsure = "If you are unsure, call. Do not wait for the next visit.";

    /// <summary>Above the task table.</summary>
    public const string OnlyYourTasks = "Do only the tasks ticked as yours.";

    /// <summary>Who has the last word.</summary>
    public const string Caution = "Your doctor’s orders and your nurse’s advice come first.";

    /// <summary>On every sheet of the demonstration.</summary>
    public const string PracticeSheet = "Practice sheet: all people are invented.";
}
