using System.Collections.Immutable;
using HomeLine.LineCare.Ledger;
using HomeLine.LineCare.Lines;
using HomeLine.LineCare.Travel;
using NodaTime;

namespace HomeLine.Agency.Absence;

/// <summary>A hold as entered.</summary>
/// <param name="Patient">Who is away.</param>
/// <param name="InHospital">In hospital, so that dates from before need a word on return; otherwise away or elsewhere.</param>
/// <param name="From">First day; empty when unknown, then today, said so.</param>
/// <param name="Through">Last day when it is known; never for hospital.</param>
/// <param name="Reason">Where, for example <c>hospital</c> or <c>with the daughter</c>.</param>
/// <param name="Elsewhere">The place, when the patient stays at one that is known; such a stay has a last day.</param>
public sealed record HoldEntry(PatientId Patient, bool InHospital, LocalDate? From, LocalDate? Through, string Reason, Elsewhere? Elsewhere = null);

/// <summary>One item looked at on return: a date with how it is known, or none.</summary>
/// <param name="Line">On which line.</param>
/// <param name="Item">Which item.</param>
/// <param name="Lumen">Which lumen, for connectors and flushes.</param>
/// <param name="On">The day it was last done; empty when nobody can say: the item has no date and is due at the first contact.</param>
/// <param name="Certainty">How the day is known.</param>
/// <param name="Dressing">What lies on the site, for a dressing.</param>
public sealed record ReconciledItem(LineId Line, CareItem Item, string? Lumen, LocalDate? On, Certainty Certainty, DressingKind? Dressing = null);

/// <summary>A return as entered.</summary>
/// <param name="Patient">Who came home.</param>
/// <param name="HomeAt">When.</param>
/// <param name="Items">Every item that has a clock, looked at.</param>
public sealed record ReturnEntry(PatientId Patient, Instant HomeAt, ImmutableArray<ReconciledItem> Items);
