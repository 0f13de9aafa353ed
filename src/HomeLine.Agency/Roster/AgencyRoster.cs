using System.Collections.Immutable;
using HomeLine.LineCare;
using HomeLine.LineCare.Ledger;
using HomeLine.LineCare.Lines;
using HomeLine.LineCare.Orders;
using HomeLine.LineCare.Policy;

namespace HomeLine.Agency.Roster;

/// <summary>
/// Everything the agency knows at one moment, immutable. It is read from the database or from import files;
/// every question (what is due, what is the plan) is a pure function of it.
/// </summary>
public sealed record AgencyRoster
{
    public required AgencyProfile Profile { get; init; }
    public required AgencyMap Map { get; init; }
    public ImmutableArray<Patient> Patients { get; init; } = [];
    public ImmutableArray<Line> Lines { get; init; } = [];
    public ImmutableArray<Infusion> Infusions { get; init; } = [];
    public ImmutableArray<LineEvent> Events { get; init; } = [];
    public ImmutableArray<CareOrder> Orders { get; init; } = [];
    public ImmutableArray<CaregiverValidation> Caregivers { get; init; } = [];
    public ImmutableArray<Hold> Holds { get; init; } = [];
    public ImmutableArray<CareException> Exceptions { get; init; } = [];
    public ImmutableArray<OutsideCare> OutsideCare { get; init; } = [];
    public ImmutableArray<NurseFile> Nurses { get; init; } = [];

    /// <summary>Visits signed in this program, in the order they were signed; amended ones among them.</summary>
    public ImmutableArray<SignedVisit> SignedVisits { get; init; } = [];

    /// <summary>The agency's own policy rules; the shipped defaults stand beneath them.</summary>
    public ImmutableArray<PolicyRule> Policy { get; init; } = [];
}
