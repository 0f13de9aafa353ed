using System.Collections.Immutable;
using HomeLine.LineCare;
using HomeLine.LineCare.Ledger;
using HomeLine.LineCare.Lines;
using HomeLine.LineCare.Orders;
using HomeLine.LineCare.Policy;

namespace HomeLine.Agency.Roster;

/// <summary>
/// What an import would do to the roster, row by row, before anything is stored. It only adds and changes;
/// rows that the import does not mention are left alone, and the ledger only grows.
/// </summary>
public sealed record RosterChange
{
    public required RowChanges<AgencyProfile> Profile { get; init; }
    public required RowChanges<AgencyMap> Map { get; init; }
    public required RowChanges<NurseFile> Nurses { get; init; }
    public required RowChanges<Patient> Patients { get; init; }
    public required RowChanges<Line> Lines { get; init; }
    public required RowChanges<Infusion> Infusions { get; init; }
    public required RowChanges<LineEvent> Events { get; init; }
    public required RowChanges<CareOrder> Orders { get; init; }
    public required RowChanges<CaregiverValidation> Caregivers { get; init; }
    public required RowChanges<Hold> Holds { get; init; }
    public required RowChanges<CareException> Exceptions { get; init; }
    public required RowChanges<OutsideCare> OutsideCare { get; init; }
    public required RowChanges<PolicyRule> Policy { get; init; }

    /// <summary>Why it cannot be stored as it is; empty when it can.</summary>
    public ImmutableArray<RowConflict> Conflicts { get; init; } = [];

    /// <summary>Compares row by row; <paramref name="current"/> is empty for an agency that holds nothing yet.</summary>
    /// <param name="current">What is stored.</param>
    /// <param name="incoming">What the files say.</param>
    /// <param name="putDown">What was put down in the program itself and stays; nothing when empty.</param>
    public static RosterChange Between(AgencyRoster? current, AgencyRoster incoming, PutDown? putDown = null)
    {
        ArgumentNullException.ThrowIfNull(incoming);
        PutDown ours = putDown ?? PutDown.Nothing;
        var change = new RosterChange
        {
            Profile = RowChanges.Between("profile", RosterKeys.Of, current is null ? [] : [current.Profile], [incoming.Profile]),
            Map = RowChanges.Between("map", RosterKeys.Of, current is null ? [] : [current.Map], [incoming.Map]),
            Nurses = RowChanges.Between("nurse", RosterKeys.Of, current?.Nurses ?? [], ours.Keep(current?.Nurses ?? [], incoming.Nurses)),
            Patients = RowChanges.Between("patient", RosterKeys.Of, current?.Patients ?? [], ours.Keep(current?.Patients ?? [], incoming.Patients)),
            Lines = RowChanges.Between("line", RosterKeys.Of, current?.Lines ?? [], incoming.Lines),
            Infusions = RowChanges.Between("infusion", RosterKeys.Of, current?.Infusions ?? [], incoming.Infusions),
            Events = RowChanges.Between("event", RosterKeys.Of, current?.Events ?? [], incoming.Events),
            Orders = RowChanges.Between("order", RosterKeys.Of, current?.Orders ?? [], ours.Keep(current?.Orders ?? [], OrdersKept.Of(current?.Orders ?? [], incoming.Orders))),
            Caregivers = RowChanges.Between("caregiver", RosterKeys.Of, current?.Caregivers ?? [], ours.Keep(current?.Caregivers ?? [], incoming.Caregivers)),
            Holds = RowChanges.Between("hold", RosterKeys.Of, current?.Holds ?? [], ours.Keep(current?.Holds ?? [], incoming.Holds)),
            Exceptions = RowChanges.Between("exception", RosterKeys.Of, current?.Exceptions ?? [], ours.Keep(current?.Exceptions ?? [], incoming.Exceptions)),
            OutsideCare = RowChanges.Between("outside care", RosterKeys.Of, current?.OutsideCare ?? [], incoming.OutsideCare),
            Policy = RowChanges.Between("policy rule", RosterKeys.Of, current?.Policy ?? [], incoming.Policy),
        };
        return change with { Conflicts = RosterConflicts.In(change) };
    }

    /// <summary>Every row with what would happen to it, in the order the kinds depend on each other.</summary>
    public IEnumerable<RowPreview> Rows =>
    [
        .. Profile.Rows, .. Map.Rows, .. Nurses.Rows, .. Patients.Rows, .. Lines.Rows, .. Infusions.Rows, .. Events.Rows,
        .. Orders.Rows, .. Caregivers.Rows, .. Holds.Rows, .. Exceptions.Rows, .. OutsideCare.Rows, .. Policy.Rows,
    ];

    /// <summary>Rows that would be added or changed.</summary>
    public int Writes => Rows.Count(r => r.State is RowState.Added or RowState.Changed);
}
