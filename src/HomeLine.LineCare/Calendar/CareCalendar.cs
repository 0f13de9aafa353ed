using System.Collections.Immutable;
using HomeLine.LineCare.Ledger;
using HomeLine.LineCare.Lines;
using HomeLine.LineCare.Windows;
using NodaTime;

namespace HomeLine.LineCare.Calendar;

/// <summary>Past care and the weeks ahead of one patient, item by item.</summary>
/// <param name="Patient">Whose.</param>
/// <param name="AsOf">The instant it was drawn up for.</param>
/// <param name="Through">Last civil day looked at, included.</param>
/// <param name="OnHold">The hold in force, if any. While it lasts no care is assumed.</param>
/// <param name="Items">One calendar per clock, in the order of lines, items and lumens.</param>
/// <param name="Events">Every entry that still counts, in the order performed, with what each did; voided entries are left out.</param>
public sealed record CareCalendar(
    PatientId Patient,
    Instant AsOf,
    LocalDate Through,
    Hold? OnHold,
    ImmutableArray<ItemCalendar> Items,
    ImmutableArray<PastEvent> Events);

/// <summary>One clock: what has been done, and its windows ahead.</summary>
/// <param name="Item">What is due.</param>
/// <param name="Line">On which line; empty for items of the patient.</param>
/// <param name="Lumen">On which lumen, for connectors, sets and lumen flushes.</param>
/// <param name="Order">The order that asks for it, for labs and services.</param>
/// <param name="Past">The entries that touched this clock, earliest first.</param>
/// <param name="Ahead">The window that runs now and those that follow, earliest first.</param>
public sealed record ItemCalendar(
    CareItem Item,
    LineId? Line,
    string? Lumen,
    string? Order,
    ImmutableArray<PastCare> Past,
    ImmutableArray<WindowAhead> Ahead);

/// <summary>What an entry did to one clock.</summary>
public enum ClockChange
{
    /// <summary>It started it for the first time.</summary>
    Started,

    /// <summary>It started it again.</summary>
    Reset,

    /// <summary>It cut it short: a seal reported broken, a connector found cracked or off.</summary>
    CutShort,

    /// <summary>It ended it.</summary>
    Ended,

    /// <summary>It took its date away: a stay in hospital that nobody has reconciled.</summary>
    LostItsDate,
}

/// <summary>How past care stood to the window it was done in.</summary>
public enum DoneWhen
{
    /// <summary>There was no window, or none with a date.</summary>
    NoWindow,

    /// <summary>Before the window opened.</summary>
    BeforeItOpened,

    /// <summary>Inside the window by the policy of that day.</summary>
    InsideTheWindow,

    /// <summary>After the window's end.</summary>
    Late,
}

/// <summary>One entry and what it did to one clock.</summary>
/// <param name="Entry">The ledger entry.</param>
/// <param name="Change">What it did.</param>
/// <param name="When">How it stood to the window of that day. A later policy never makes past care late.</param>
/// <param name="Sentence">One plain sentence.</param>
public sealed record PastCare(LineEvent Entry, ClockChange Change, DoneWhen When, string Sentence);

/// <summary>One entry and every clock it touched.</summary>
/// <param name="Entry">The ledger entry.</param>
/// <param name="Touched">The clocks it touched; empty when it touched none, as a call, a refusal or a reinforced edge.</param>
public sealed record PastEvent(LineEvent Entry, ImmutableArray<TouchedClock> Touched);

/// <summary>A clock that an entry touched.</summary>
/// <param name="Item">Which item.</param>
/// <param name="Line">On which line; empty for items of the patient.</param>
/// <param name="Lumen">On which lumen.</param>
/// <param name="Order">Under which order, for labs and services.</param>
/// <param name="Change">What was done to it.</param>
public sealed record TouchedClock(CareItem Item, LineId? Line, string? Lumen, string? Order, ClockChange Change);

/// <summary>One window ahead.</summary>
/// <param name="Window">The window with its reason.</param>
/// <param name="AssumedOn">The day on which the care is assumed so that the next window follows from it: the last acceptable day (a broken
/// seal: its target); empty when nothing is assumed: the care falls beyond the days looked at, the patient is on hold, or other care closes the window before it opens.</param>
/// <param name="Foreseen">True when it rests on care that is only assumed; false for the window that runs now.</param>
public sealed record WindowAhead(DueWindow Window, LocalDate? AssumedOn, bool Foreseen);
