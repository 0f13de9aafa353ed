using System.Collections.Immutable;
using HomeLine.LineCare.Lines;
using HomeLine.LineCare.Windows;

namespace HomeLine.Agency.Due;

/// <summary>How pressing a row is, most pressing first. Shown as a word and a sign, never by colour alone.</summary>
public enum Urgency
{
    /// <summary>The last acceptable moment has passed.</summary>
    Late,

    /// <summary>Cut short by a broken seal or another trigger.</summary>
    CutShort,

    /// <summary>No trustworthy date: due at the first contact.</summary>
    DateUnknown,

    /// <summary>Today is the last acceptable day.</summary>
    DueToday,

    /// <summary>The window is open.</summary>
    Open,

    /// <summary>Opens later.</summary>
    Ahead,

    /// <summary>The patient is on hold; the clock runs on.</summary>
    OnHold,
}

/// <summary>One line of the due list.</summary>
/// <param name="Patient">Whose.</param>
/// <param name="PatientName">Name as shown.</param>
/// <param name="Place">Town or address, for orientation.</param>
/// <param name="LineLabel">For example <c>PICC, 2 lumens</c>; empty for items of the patient.</param>
/// <param name="ItemLabel">For example <c>Dressing (film)</c>.</param>
/// <param name="Window">The window with its reason.</param>
/// <param name="Urgency">How pressing.</param>
/// <param name="InWords">For example <c>late by 3 days</c> or <c>Mon 8 to Wed 10 March</c>.</param>
/// <param name="PlannedFor">The visit that will do it, in words, when one is planned.</param>
public sealed record DueRow(
    PatientId Patient,
    string PatientName,
    string Place,
    string LineLabel,
    string ItemLabel,
    DueWindow Window,
    Urgency Urgency,
    string InWords,
    string? PlannedFor)
{
    /// <summary>Why the line, or the lumen in question, must not be used as usual; empty when it is not locked.</summary>
    public ImmutableArray<string> Locks { get; init; } = [];
}
