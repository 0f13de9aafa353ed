using System.Collections.Immutable;
using HomeLine.Agency.WeekEditing;
using HomeLine.Agency.WeekPlanning;
using HomeLine.Web.Pages.WeekEditing;
using NodaTime;

namespace HomeLine.Web.Pages.Week;

/// <summary>One day of the strip a phone shows above the day's visits.</summary>
/// <param name="Day">The day.</param>
/// <param name="Visits">Visits of the nurses shown; a second person's coming along is not one more.</param>
/// <param name="Late">Visits with late care in them.</param>
/// <param name="Unmet">Needs nobody covers whose last day on time it is.</param>
public sealed record DayInStrip(LocalDate Day, int Visits, int Late, int Unmet)
{
    /// <summary>Places for what is in hand; empty while nothing is carried.</summary>
    public int? Places { get; init; }

    /// <summary>Whether there is a plan to count in.</summary>
    public bool IsPlanned { get; init; } = true;

    /// <summary>The seven days of a week without a plan, or before it is read.</summary>
    public static ImmutableArray<DayInStrip> Blank(LocalDate monday) => [.. Enumerable.Range(0, 7).Select(n => new DayInStrip(monday.PlusDays(n), 0, 0, 0) { IsPlanned = false })];

    public static ImmutableArray<DayInStrip> Of(WeekBoard board) =>
    [
        .. board.Days.Select(day =>
        {
            BoardStop[] stops = [.. board.Nurses.SelectMany(n => n.Days).Where(d => d.Day == day).SelectMany(d => d.Stops).Where(s => !s.AsSecond)];
            return new DayInStrip(day, stops.Length, stops.Count(s => s.HasLateCare), board.Unmet.Count(u => u.LastDay == day));
        }),
    ];

    public static ImmutableArray<DayInStrip> Of(DraftBoard board, ImmutableArray<UnmetCareNeed> unmet, InHand? held) =>
    [
        .. board.Days.Select(day =>
        {
            DraftStop[] stops = [.. board.Nurses.SelectMany(n => n.Days).Where(d => d.Day == day).SelectMany(d => d.Stops).Where(s => !s.AsSecond)];
            return new DayInStrip(day, stops.Length, stops.Count(s => s.IsLate), unmet.Count(u => u.LastDate == day))
            {
                Places = held is { IsCarried: true } ? held.Places.Count(p => p.Day == day) : null,
            };
        }),
    ];

    /// <summary>The day in words, as a listener hears it.</summary>
    public string InWords => string.Join(", ", Parts());

    private IEnumerable<string> Parts()
    {
        if (!IsPlanned)
        {
            yield return "no plan";
            yield break;
        }

        yield return Visits switch { 0 => "no visit", 1 => "1 visit", _ => $"{Visits} visits" };
        if (Late > 0) yield return Late == 1 ? "1 late" : $"{Late} late";
        if (Unmet > 0) yield return $"{Unmet} unmet";
        if (Places is { } places) yield return places switch { 0 => "no place works", 1 => "1 place works", _ => $"{places} places work" };
    }
}
