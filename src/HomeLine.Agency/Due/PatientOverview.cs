using System.Collections.Immutable;
using HomeLine.Agency.Roster;
using HomeLine.Agency.WeekPlanning;
using HomeLine.LineCare;
using HomeLine.LineCare.Ledger;
using HomeLine.LineCare.Lines;
using HomeLine.LineCare.Orders;

namespace HomeLine.Agency.Due;

/// <summary>Everything the patient page shows.</summary>
public sealed record PatientOverview(
    Patient Patient,
    ImmutableArray<Line> Lines,
    ImmutableArray<DueRow> Due,
    ImmutableArray<LineEvent> Ledger,
    ImmutableArray<CareOrder> Orders,
    ImmutableArray<CaregiverValidation> Caregivers,
    Hold? OnHold,
    ImmutableArray<LineLock> Locks,
    ImmutableArray<Decision> Decisions,
    ImmutableArray<WeekVisit> Visits);
