using System.Collections.Concurrent;
using System.Collections.Immutable;
using HomeLine.Agency.Roster;
using NodaTime;

namespace HomeLine.Agency.WeekPlanning;

/// <summary>
/// Boards as they were last drawn, one for each week and its draft. A board is handed out again only for the very roster, week, closures and held places it was
/// drawn from, and for a minute at most: what it says by the clock (behind, frozen, locked) is then no older than a clock on the wall.
/// </summary>
internal sealed class DrawnWeeks
{
    private static readonly Duration AMinute = Duration.FromMinutes(1);

    private readonly ConcurrentDictionary<(LocalDate FirstDay, bool Draft), (Source From, WeekBoard Board)> boards = new();

    /// <summary>What a board is drawn from.</summary>
    /// <param name="Agency">As read, before held places are put in.</param>
    /// <param name="Week">The week asked for.</param>
    /// <param name="Before">The published week of today, from which care of a later week is foreseen.</param>
    public sealed record Source(AgencyAtHand Agency, StoredWeek Week, StoredWeek? Before);

    /// <summary>The board, drawn when nothing drawn before still holds.</summary>
    public WeekBoard Of(LocalDate firstDay, bool draft, Source from, Func<WeekBoard> draw)
    {
        if (boards.TryGetValue((firstDay, draft), out var known) && Holds(known.From, from)) return known.Board;
        WeekBoard board = draw();
        boards[(firstDay, draft)] = (from, board);
        return board;
    }

    private static bool Holds(Source then, Source now) =>
        ReferenceEquals(then.Agency.Roster, now.Agency.Roster)
        && now.Agency.Now >= then.Agency.Now && now.Agency.Now - then.Agency.Now < AMinute
        && Same(then.Agency.Closures, now.Agency.Closures) && Same(then.Agency.Held, now.Agency.Held)
        && IsSame(then.Week, now.Week) && IsSame(then.Before, now.Before);

    private static bool IsSame(StoredWeek? a, StoredWeek? b) =>
        (a?.Revision, a?.SavedAt, a?.SavedBy, a?.IsDraft, a?.Week.Version) == (b?.Revision, b?.SavedAt, b?.SavedBy, b?.IsDraft, b?.Week.Version);

    private static bool Same<T>(ImmutableArray<T> a, ImmutableArray<T> b) => a == b || a.SequenceEqual(b);
}
