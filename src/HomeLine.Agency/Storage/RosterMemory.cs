using System.Collections.Concurrent;
using NodaTime;

namespace HomeLine.Agency.Storage;

/// <summary>
/// The roster as last read, so that a page does not read years of ledger to show a day. What is remembered is used only while the
/// audit chain still ends where it ended when it was read: every change of the roster makes an entry there, whichever process made it.
/// The ledger is append-only, so after a change only its new entries are read.
/// </summary>
public sealed class RosterMemory
{
    /// <summary>So many weeks are looked at in turn: the one that runs, those ahead, one looked back at.</summary>
    private const int WeeksKept = 4;

    private readonly ConcurrentDictionary<LocalDate, RememberedWeek> weeks = [];
    private volatile RememberedRoster? last;

    /// <summary>The published week of a first day as last read, whichever version that was; nothing when it was not read lately.</summary>
    internal RememberedWeek? Week(LocalDate firstDay) => weeks.GetValueOrDefault(firstDay);

    /// <summary>Remembers a published week. Only what was read outside of any work under way: that may still be taken back.</summary>
    internal void Remember(RememberedWeek read)
    {
        if (weeks.Count >= WeeksKept && !weeks.ContainsKey(read.Week.Week.FirstDay)) weeks.Clear();
        weeks[read.Week.Week.FirstDay] = read;
    }

    /// <summary>The roster as of one moment; nothing when no agency was opened.</summary>
    /// <param name="db">A context with no transaction open: work under way sees its own changes and must read for itself.</param>
    /// <param name="cancel">Stops the reading.</param>
    internal async Task<RememberedRoster?> ReadAsync(AgencyDb db, CancellationToken cancel)
    {
        await using var reading = await db.BeginReadingAsync(cancel);
        string? end = await RememberedRoster.ChainEndAsync(db, cancel);
        RememberedRoster? known = last;
        if (known is not null && known.ChainEnd == end) return known;
        RememberedRoster? read = await RememberedRoster.ReadAsync(db, known, cancel);
        // Without an audit entry there is nothing to notice a change by.
        if (read?.ChainEnd is not null) last = read;
        return read;
    }

    /// <summary>
    /// The roster for work that has just got its turn to write and has written nothing yet: what is remembered when nothing moved since, else only what moved on
    /// is read. It is not remembered, for the turn may still be taken back.
    /// </summary>
    /// <param name="db">A context whose transaction is open and empty.</param>
    /// <param name="cancel">Stops the reading.</param>
    internal async Task<RememberedRoster?> ReadInTurnAsync(AgencyDb db, CancellationToken cancel)
    {
        RememberedRoster? known = last;
        return known is not null && known.ChainEnd == await RememberedRoster.ChainEndAsync(db, cancel) ? known : await RememberedRoster.ReadAsync(db, known, cancel);
    }
}
