using System.Collections.Immutable;
using HomeLine.Agency.Reports;
using HomeLine.Agency.Roster;

namespace HomeLine.Agency.Visits;

/// <summary>A signed visit as it is read: the record, what it reset, what it replaces, who is told.</summary>
public sealed record RecordView
{
    public required VisitRecord Record { get; init; }
    public required Patient Patient { get; init; }

    /// <summary>What was reset, and the new windows, as worked out from the ledger.</summary>
    public ImmutableArray<MovedCare> Moved { get; init; } = [];

    /// <summary>Later visits of the published plan that this one makes needless; offered, never dropped by themselves.</summary>
    public ImmutableArray<ReplacedVisit> Replaces { get; init; } = [];
    public ImmutableArray<PractitionerNotice> Notices { get; init; } = [];
    public ImmutableArray<ToTell> ToTell { get; init; } = [];
    public CoSignature? CoSignature { get; init; }

    /// <summary>The record that took this one's place; empty while it stands.</summary>
    public string? AmendedBy { get; init; }

    /// <summary>Other records of the same planned visit.</summary>
    public ImmutableArray<VisitRecord> Others { get; init; } = [];

    /// <summary>Lines that must not be used as usual now.</summary>
    public ImmutableArray<string> Locks { get; init; } = [];

    /// <summary>Phone of the clinical manager on duty or the person on call, and the emergency number.</summary>
    public string OnCallPhone { get; init; } = "";
    public string EmergencyNumber { get; init; } = "";
}

/// <summary>A later visit whose care this one has done.</summary>
/// <param name="Visit">The visit's identifier.</param>
/// <param name="Week">First day of its week.</param>
/// <param name="When">Day, time and nurse.</param>
/// <param name="NotNeeded">Care that is no longer needed then.</param>
/// <param name="StillNeeded">Care that is; the visit stays when there is any.</param>
public sealed record ReplacedVisit(string Visit, NodaTime.LocalDate Week, string When, ImmutableArray<string> NotNeeded, ImmutableArray<string> StillNeeded)
{
    public bool MayBeTakenOut => StillNeeded.IsEmpty;
}
