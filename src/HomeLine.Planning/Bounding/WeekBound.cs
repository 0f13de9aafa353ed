using System.Collections.Immutable;
using HomeLine.Planning.Plans;

namespace HomeLine.Planning.Bounding;

/// <summary>The six tiers of the score, in the order in which they decide.</summary>
public enum Tier
{
    /// <summary>Critical care late or unmet, points.</summary>
    Critical,

    /// <summary>Other care late or unmet, points.</summary>
    Risk,

    /// <summary>Missed targets and visits beyond the orders, points.</summary>
    Duties,

    /// <summary>Visits and paid minutes, minutes.</summary>
    Work,

    /// <summary>Continuity, wishes and load, points.</summary>
    People,

    /// <summary>Unused life of care done early, days.</summary>
    UnusedLife,
}

/// <summary>How far a bound may go. Counts, not seconds, so that the same week and plan give the same bound.</summary>
/// <param name="Rounds">Most rounds of pricing for one tier, 1 or more.</param>
/// <param name="Labels">Most partial nurse-days kept while one nurse-day is priced; beyond it that round proves nothing.</param>
/// <param name="Columns">Most nurse-days listed for the exact choice at the end; 0 to leave it out.</param>
/// <param name="NearPatients">How many near patients a partial nurse-day remembers having visited; fewer is faster and weaker.</param>
/// <param name="Effort">Limit of the exact choice in the solver's deterministic time, about a second each.</param>
/// <param name="ClimbFrom">From so many pieces of care on, prices are climbed for instead of learned from a master problem, which then learns too slowly.</param>
public sealed record BoundOptions(int Rounds = 300, int Labels = 2_000_000, int Columns = 100_000, int NearPatients = 12, double Effort = 10, int ClimbFrom = 150);

/// <summary>What is proven about one tier: no plan whose earlier tiers are as good as this plan's has less.</summary>
/// <param name="Tier">The tier.</param>
/// <param name="Planned">What the plan has.</param>
/// <param name="AtLeast">What every such plan has at least.</param>
public sealed record TierBound(Tier Tier, long Planned, long AtLeast)
{
    /// <summary>The plan is as good as any in this tier.</summary>
    public bool Closed => Planned == AtLeast;

    /// <summary>What of the plan's amount a better plan might save at most, percent; 0 when closed.</summary>
    public double GapPercent => Closed ? 0 : 100.0 * (Planned - AtLeast) / Planned;
}

/// <summary>
/// A plan beside what is proven about every plan. Tiers are listed up to the first that stays open: while an earlier tier might still be better, nothing
/// can be said about a later one.
/// </summary>
/// <param name="Tiers">The tiers looked at, in order.</param>
/// <param name="Rounds">Rounds of pricing in all.</param>
/// <param name="Columns">Nurse-days the proof used.</param>
public sealed record WeekBound(ImmutableArray<TierBound> Tiers, int Rounds, int Columns)
{
    /// <summary>No plan has a better score.</summary>
    public bool Optimal => Tiers.Length == 6 && Tiers.All(t => t.Closed);

    /// <summary>The first tier in which a better plan is not ruled out; empty when there is none.</summary>
    public TierBound? Open => Tiers.FirstOrDefault(t => !t.Closed);

    /// <summary>The amount of a tier in a score.</summary>
    /// <param name="score">The score.</param>
    /// <param name="tier">The tier.</param>
    public static long Amount(PlanScore score, Tier tier) => tier switch
    {
        Tier.Critical => score.Critical,
        Tier.Risk => score.Risk,
        Tier.Duties => score.Duties,
        Tier.Work => score.Work,
        Tier.People => score.People,
        Tier.UnusedLife => score.UnusedLife,
        _ => throw new ArgumentOutOfRangeException(nameof(tier)),
    };
}
