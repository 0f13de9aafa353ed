using System.Collections.Immutable;
using HomeLine.LineCare;
using HomeLine.LineCare.Ledger;
using HomeLine.LineCare.Policy;
using NodaTime;

namespace HomeLine.Exchange.History;

/// <summary>One invented patient, told row by row: what the clocks need and nothing else.</summary>
/// <param name="Care">Lines, orders, caregivers and the ledger as far as it had been recorded by <paramref name="Now"/>.</param>
/// <param name="Policy">The policy book with the rows' own changes.</param>
/// <param name="Now">The instant to answer for.</param>
/// <param name="Visits">Civil days of visits, for the weeks of a visit order.</param>
/// <param name="NotYet">Entries recorded after <paramref name="Now"/>: written down, not yet known.</param>
public sealed record LineHistory(
    PatientCare Care,
    PolicyBook Policy,
    Instant Now,
    ImmutableArray<LocalDate> Visits,
    ImmutableArray<LineEvent> NotYet);

/// <summary>A row that cannot be read.</summary>
/// <param name="Row">Its number, counting from 1.</param>
/// <param name="Text">What it says.</param>
/// <param name="Message">What is wrong and what would be right.</param>
public sealed record HistoryFault(int Row, string Text, string Message);

/// <summary>A history as read; without one when any row is at fault.</summary>
/// <param name="History">The history, or nothing.</param>
/// <param name="Faults">Every row at fault, in order.</param>
public sealed record HistoryReading(LineHistory? History, ImmutableArray<HistoryFault> Faults);
