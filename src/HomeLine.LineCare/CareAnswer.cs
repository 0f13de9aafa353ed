using System.Collections.Immutable;
using HomeLine.LineCare.Lines;
using HomeLine.LineCare.Windows;
using NodaTime;

namespace HomeLine.LineCare;

/// <summary>Why a line must not be used as usual.</summary>
/// <param name="Line">The line.</param>
/// <param name="Reason">One plain sentence.</param>
/// <param name="Lumen">The one lumen that is locked; empty when the whole line is.</param>
public sealed record LineLock(LineId Line, string Reason, string? Lumen = null)
{
    /// <summary>What kind of lock it is: a code of <see cref="DecisionCodes"/>, so that whoever may lift it can be asked; empty for a lock nobody lifts.</summary>
    public string Code { get; init; } = "";

    /// <summary>What it rests on, by identifier: the ledger entry that locked the line or gave the length.</summary>
    public string About { get; init; } = "";

    /// <summary>Since which civil day at the patient's place it has been locked; empty when no entry says.</summary>
    public LocalDate? Since { get; init; }
}

/// <summary>Care that would be due and is deliberately not done.</summary>
/// <param name="Window">The window as it would have been.</param>
/// <param name="Reason">One plain sentence.</param>
public sealed record WaivedCare(DueWindow Window, string Reason);

/// <summary>Something a licensed person has to decide; shown in the decisions list once.</summary>
/// <param name="Patient">Whose.</param>
/// <param name="Line">On which line, where it matters.</param>
/// <param name="Code">A stable code, listed in docs/reasons.md.</param>
/// <param name="Sentence">What has to be decided and why.</param>
public sealed record Decision(PatientId Patient, LineId? Line, string Code, string Sentence)
{
    /// <summary>What the question is about, by identifier: an order, a ledger entry, a validation. With patient, line and code it tells this
    /// question from every other and stays the same from day to day, while the sentence may be worded anew.</summary>
    public string About { get; init; } = "";

    /// <summary>Since which civil day at the patient's place it waits; empty when no entry says.</summary>
    public LocalDate? Since { get; init; }
}

/// <summary>What is due for one patient, and why.</summary>
/// <param name="Patient">The patient.</param>
/// <param name="AsOf">The instant the answer is for.</param>
/// <param name="OnHold">The hold in force, if any: windows age, planning stops.</param>
/// <param name="Windows">Every running window, soonest late first.</param>
/// <param name="Locks">Lines not to be used as usual.</param>
/// <param name="Decisions">What a licensed person must decide.</param>
public sealed record CareAnswer(
    PatientId Patient,
    Instant AsOf,
    Hold? OnHold,
    ImmutableArray<DueWindow> Windows,
    ImmutableArray<LineLock> Locks,
    ImmutableArray<Decision> Decisions)
{
    /// <summary>Care left out on purpose, with the reason: for example a dressing due when the line comes out anyway.</summary>
    public ImmutableArray<WaivedCare> Waived { get; init; } = [];
}
