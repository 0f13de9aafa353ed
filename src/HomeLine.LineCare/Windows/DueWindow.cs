using System.Collections.Immutable;
using System.Diagnostics.CodeAnalysis;
using HomeLine.LineCare.Ledger;
using HomeLine.LineCare.Lines;
using HomeLine.LineCare.Policy;
using NodaTime;

namespace HomeLine.LineCare.Windows;

/// <summary>Whether a window's end is a civil day or an elapsed time.</summary>
public enum ClockBasis
{
    /// <summary>Counts civil days at the patient's place; late from midnight after the last day.</summary>
    Date,

    /// <summary>Counts elapsed hours; late from the instant itself.</summary>
    Hour,
}

/// <summary>What made the window.</summary>
public enum WindowStanding
{
    /// <summary>A clock that runs from a dated event.</summary>
    Running,

    /// <summary>No trustworthy date is known: due at the first contact, never shown as on time or as days late.</summary>
    DateUnknown,

    /// <summary>A broken seal or another trigger cut the clock short: a deadline from the report.</summary>
    CutShort,

    /// <summary>Set by an order's own dates.</summary>
    Ordered,
}

/// <summary>
/// When one item of care may and must next be done, and why. Computed, never stored.
/// The window is [<see cref="Opens"/>, <see cref="LateFrom"/>): opening is inclusive, lateness begins at <see cref="LateFrom"/> itself.
/// </summary>
public sealed record DueWindow
{
    private readonly Why _why;

    /// <summary>A window made by somebody who says everything about it.</summary>
    public DueWindow() => _why = Why.Untold;

    /// <summary>A window of the clocks, whose reason is told when it is read.</summary>
    [SetsRequiredMembers]
    internal DueWindow(Why why) => _why = why;

    /// <summary>What is due.</summary>
    public required CareItem Item { get; init; }

    /// <summary>Whose.</summary>
    public required PatientId Patient { get; init; }

    /// <summary>On which line; empty for items of the patient (labs, recertification).</summary>
    public LineId? Line { get; init; }

    /// <summary>On which lumen, for connectors, sets and lumen flushes.</summary>
    public string? Lumen { get; init; }

    /// <summary>The order that asks for it, for labs and services.</summary>
    public string? Order { get; init; }

    /// <summary>What made the window.</summary>
    public required WindowStanding Standing { get; init; }

    /// <summary>Whether the end is a day or an instant.</summary>
    public required ClockBasis Basis { get; init; }

    /// <summary>Earliest useful moment without a clinical trigger, inclusive.</summary>
    public required Instant Opens { get; init; }

    /// <summary>When it is best done. For a broken seal the target deadline; otherwise the start of the last acceptable day or the last acceptable instant.</summary>
    public required Instant Target { get; init; }

    /// <summary>First instant at which the item is late.</summary>
    public required Instant LateFrom { get; init; }

    /// <summary>Civil day of <see cref="Opens"/> at the patient's place.</summary>
    public required LocalDate OpensOn { get; init; }

    /// <summary>Last acceptable civil day at the patient's place, included.</summary>
    public required LocalDate LastDay { get; init; }

    /// <summary>Who does it next; a caregiver's item is not a nurse visit.</summary>
    public required PerformerKind Owner { get; init; }

    /// <summary>Class of a broken seal: 1, 2 or 3 (B1 the most urgent); 0 when the seal is not broken.</summary>
    public int SealClass { get; init; }

    /// <summary>When the next one falls after this one is done; empty for what does not repeat.</summary>
    public Repeat? Next { get; init; }

    /// <summary>Why: the event, the rule, who set it, what it overrode.</summary>
    public WindowReason Because
    {
        get => _why.Told;
        init => _why = Why.Already(value);
    }

    /// <summary>The reason as facts, not yet in words.</summary>
    internal Why Facts
    {
        get => _why;
        init => _why = value;
    }

    /// <summary>The window of the next occurrence if this one is done on <paramref name="performed"/>, as first and last civil day, both included;
    /// empty for what does not repeat or repeats by the hour.</summary>
    public (LocalDate Opens, LocalDate Last)? After(LocalDate performed) =>
        Next is { Basis: ClockBasis.Date } next ? (performed.PlusDays(next.MinGap), performed.PlusDays(next.MaxGap)) : null;

    /// <summary>This window and those that follow through a day, each done on its last day: a calendar to look at, not a promise.
    /// Only the first for what does not repeat or repeats by the hour.</summary>
    /// <param name="through">Last day a listed window may open, included.</param>
    public ImmutableArray<(LocalDate Opens, LocalDate Last)> Ahead(LocalDate through)
    {
        var windows = ImmutableArray.CreateBuilder<(LocalDate, LocalDate)>();
        (LocalDate Opens, LocalDate Last)? window = (OpensOn, LastDay);
        while (window is { } next && next.Opens <= through)
        {
            windows.Add(next);
            window = Next is { Basis: ClockBasis.Date, MaxGap: > 0 } ? After(next.Last) : null;
        }

        return windows.ToImmutable();
    }

    /// <summary>Whether the item is late at <paramref name="now"/>. An unknown date is never late; it is due at the first contact.</summary>
    public bool IsLateAt(Instant now) => Standing != WindowStanding.DateUnknown && now >= LateFrom;
}

/// <summary>Why a window is where it is.</summary>
/// <param name="Anchor">The ledger entry the clock runs from; empty when there is none.</param>
/// <param name="AnchorDate">Civil date of the anchor.</param>
/// <param name="RuleId">The policy rule or order that set the length, for example <c>dressing.film.max</c>.</param>
/// <param name="RuleValue">The rule's value in its own unit, for example <c>7 days</c>.</param>
/// <param name="Level">Who set it.</param>
/// <param name="Source">Where the rule comes from: a publication, an approver, an order.</param>
/// <param name="Sentence">One plain sentence for the screen and the print.</param>
/// <param name="Overrode">Rules that would have applied and did not, each with the reason; empty when none.</param>
public sealed record WindowReason(
    EventId? Anchor,
    LocalDate? AnchorDate,
    string RuleId,
    string RuleValue,
    PolicyLevel Level,
    string Source,
    string Sentence,
    ImmutableArray<string> Overrode);
