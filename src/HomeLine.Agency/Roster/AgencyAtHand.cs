using System.Collections.Immutable;
using HomeLine.Agency.Access;
using HomeLine.Agency.Decisions;
using HomeLine.Agency.Mending;
using HomeLine.Agency.Storage;
using HomeLine.Agency.WeekPlanning;
using HomeLine.LineCare.Lines;
using NodaTime;

namespace HomeLine.Agency.Roster;

/// <summary>The roster as it stands, cut by patient, at the agency's now: where every question begins.</summary>
/// <param name="Roster">Everything the agency knows.</param>
/// <param name="Files">The same by patient, with the policy in force.</param>
/// <param name="Now">The agency's now.</param>
public sealed record AgencyAtHand(AgencyRoster Roster, CareFiles Files, Instant Now)
{
    /// <summary>Every licensed decision so far: what was settled is not asked again.</summary>
    public ImmutableArray<DecisionRecord> Decided { get; init; } = [];

    /// <summary>Closures of roads and towns that were reported and not taken back, past ones among them.</summary>
    public ImmutableArray<RoadShut> Closures { get; init; } = [];

    /// <summary>Places held for referrals and not let go, lapsed ones among them.</summary>
    public ImmutableArray<KeptPlace> Held { get; init; } = [];

    /// <summary>Today at the branch.</summary>
    public LocalDate Today => Now.InZone(Roster.Profile.Zone).Date;

    /// <summary>First day of the planning week that holds today.</summary>
    public LocalDate ThisWeek => WeekOf(Today);

    /// <summary>Planning weeks run from Monday; the orders' calendar week is policy and may differ.</summary>
    public static LocalDate WeekOf(LocalDate date) =>
        date.DayOfWeek == IsoDayOfWeek.Monday ? date : date.Previous(IsoDayOfWeek.Monday);

    /// <summary>What the clocks and the ledger of one patient ask of a licensed person, less what was decided.</summary>
    public ImmutableArray<OpenDecision> Questions(PatientId patient) =>
        [.. OpenDecisions.StillOpen(OpenDecisions.OfClocks(this, patient), Decided, Today)];

    /// <summary>The roster from the database, or why there is none. Work under way reads for itself and sees its own changes.</summary>
    public static async Task<Outcome<AgencyAtHand>> ReadAsync(AgencyDb db, AgencyClock clock, CancellationToken cancel) => Of(
        db is { Memory: { } memory, Database.CurrentTransaction: null } ? await memory.ReadAsync(db, cancel) : await RememberedRoster.ReadAsync(db, null, cancel), clock);

    /// <summary>The same at the beginning of a writer's turn, before it has written anything: a large ledger is not read anew for every entry.</summary>
    internal static async Task<Outcome<AgencyAtHand>> ReadInTurnAsync(AgencyDb db, AgencyClock clock, CancellationToken cancel) =>
        Of(db.Memory is { } memory ? await memory.ReadInTurnAsync(db, cancel) : await RememberedRoster.ReadAsync(db, null, cancel), clock);

    private static Outcome<AgencyAtHand> Of(RememberedRoster? read, AgencyClock clock) =>
        read is null
            ? new Refusal("no-agency", "No agency has been opened yet.", "An administrator opens the demonstration agency or imports a roster.")
            : new AgencyAtHand(read.Roster, read.Files, clock.Now(read.Roster.Profile)) { Decided = read.Decided, Closures = read.Closures, Held = read.Held };
}
