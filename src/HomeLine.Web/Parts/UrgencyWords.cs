using HomeLine.Agency.Due;

namespace HomeLine.Web.Parts;

/// <summary>The word and the plain meaning beside each sign of urgency, so that colour never stands alone.</summary>
public static class UrgencyWords
{
    /// <summary>Every urgency in the order a person reads them.</summary>
    public static IReadOnlyList<Urgency> InOrder { get; } = Enum.GetValues<Urgency>();

    public static string Word(this Urgency urgency) => urgency switch
    {
        Urgency.Late => "Late",
        Urgency.CutShort => "Cut short",
        Urgency.DateUnknown => "Date unknown",
        Urgency.DueToday => "Last day today",
        Urgency.Open => "Open",
        Urgency.Ahead => "Ahead",
        Urgency.OnHold => "On hold",
        _ => throw new ArgumentOutOfRangeException(nameof(urgency), urgency, "Unknown urgency"),
    };

    public static string Meaning(this Urgency urgency) => urgency switch
    {
        Urgency.Late => "The last acceptable moment has passed.",
        Urgency.CutShort => "A broken seal or another trigger set a deadline.",
        Urgency.DateUnknown => "No trustworthy date: due at the first contact.",
        Urgency.DueToday => "Today is the last acceptable day.",
        Urgency.Open => "Inside the window by policy.",
        Urgency.Ahead => "The window opens later.",
        Urgency.OnHold => "No visit is planned; the clocks run on.",
        _ => throw new ArgumentOutOfRangeException(nameof(urgency), urgency, "Unknown urgency"),
    };

    /// <summary>The class that gives the sign its tone; see app.css.</summary>
    public static string Tone(this Urgency urgency) => urgency switch
    {
        Urgency.Late => "late",
        Urgency.CutShort => "cut-short",
        Urgency.DateUnknown => "date-unknown",
        Urgency.DueToday => "due-today",
        Urgency.Open => "open-now",
        Urgency.Ahead => "ahead",
        Urgency.OnHold => "on-hold",
        _ => throw new ArgumentOutOfRangeException(nameof(urgency), urgency, "Unknown urgency"),
    };
}
