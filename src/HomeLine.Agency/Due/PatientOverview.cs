using System.Collections.Immutable;
using HomeLine.Agency.Decisions;
using HomeLine.Agency.Orders;
using HomeLine.Agency.Roster;
using HomeLine.Agency.WeekPlanning;
using HomeLine.LineCare;
using HomeLine.LineCare.Ledger;
using HomeLine.LineCare.Lines;
using HomeLine.LineCare.Orders;
using HomeLine.LineCare.RedFlags;

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
    ImmutableArray<OpenDecision> Decisions,
    ImmutableArray<WeekVisit> Visits)
{
    /// <summary>What about the patient decides which questions of the symptom screen are asked; every one until it is known.</summary>
    public ScreenContext Screen { get; init; } = ScreenContext.Unknown;

    /// <summary>The lines that have not been taken out.</summary>
    public ImmutableArray<Line> InPlace { get; init; } = [];

    /// <summary>Visits week by week against the orders, beside the interval clocks.</summary>
    public ImmutableArray<FrequencyLedger> Frequency { get; init; } = [];

    /// <summary>Exceptions to policy for this patient, past ones among them.</summary>
    public ImmutableArray<CareException> Exceptions { get; init; } = [];

    /// <summary>Length of the arrival range a family is told, minutes; the agency's policy.</summary>
    public int ToldMinutes { get; init; }
}
