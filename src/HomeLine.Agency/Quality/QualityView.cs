using System.Collections.Immutable;
using HomeLine.LineCare.Counting;
using HomeLine.LineCare.Lines;
using NodaTime;

namespace HomeLine.Agency.Quality;

/// <summary>How punctual care was and how often a line was infected, over a span of days.</summary>
/// <param name="From">First day, included.</param>
/// <param name="Through">Last day, included.</param>
/// <param name="Today">Today at the branch.</param>
/// <param name="Items">Punctuality for each kind of care that fell due.</param>
/// <param name="Late">Care that was late, the newest first.</param>
/// <param name="LineDays">Central-line days at home.</param>
/// <param name="Infections">Infections that a clinical manager counted.</param>
/// <param name="Rate">Infections for a thousand line-days; empty without any line-day.</param>
/// <param name="Confidence">Confidence of the interval, percent.</param>
/// <param name="DaysForAComparison">Line-days below which the rate is not to be compared with anybody's.</param>
/// <param name="Cases">What is to be reviewed and what was, the open ones first.</param>
/// <param name="Definition">The definition named in the last review that counted; empty when there is none.</param>
public sealed record QualityView(
    LocalDate From,
    LocalDate Through,
    LocalDate Today,
    ImmutableArray<ItemPunctuality> Items,
    ImmutableArray<LateCare> Late,
    int LineDays,
    int Infections,
    RateInterval? Rate,
    double Confidence,
    int DaysForAComparison,
    ImmutableArray<CaseToReview> Cases,
    string Definition)
{
    /// <summary>Whether the span is too short for a comparison.</summary>
    public bool IsSmall => LineDays < DaysForAComparison;

    /// <summary>Care judged, of every kind.</summary>
    public int Judged => Items.Sum(i => i.Judged);

    /// <summary>Of it, in time.</summary>
    public int OnTime => Items.Sum(i => i.OnTime);

    /// <summary>Care that was done and cannot be judged.</summary>
    public int Unknown => Items.Sum(i => i.Unknown);
}

/// <summary>Punctuality of one kind of care.</summary>
/// <param name="Item">The kind of care.</param>
/// <param name="InWindow">Done inside its window.</param>
/// <param name="Early">Done before it.</param>
/// <param name="Late">Done after it.</param>
/// <param name="NotDone">Late and not done at the end of the span, or gone by undone.</param>
/// <param name="Unknown">Done, without a date known that it could be judged by.</param>
public sealed record ItemPunctuality(CareItem Item, int InWindow, int Early, int Late, int NotDone, int Unknown)
{
    public int Judged => OnTime + Late + NotDone;

    /// <summary>Done before the last acceptable moment.</summary>
    public int OnTime => InWindow + Early;
}

/// <summary>One piece of care that was late.</summary>
/// <param name="Patient">The patient.</param>
/// <param name="PatientName">Name as shown.</param>
/// <param name="Item">What.</param>
/// <param name="LateFrom">The first moment at which it was late.</param>
/// <param name="DoneAt">When it was done; empty when it was not.</param>
/// <param name="Because">Why, as far as the ledger tells.</param>
public sealed record LateCare(PatientId Patient, string PatientName, CareItem Item, Instant LateFrom, Instant? DoneAt, LateBecause Because);
