using System.Collections.Immutable;
using HomeLine.Agency.Access;
using HomeLine.Agency.Roster;
using HomeLine.Agency.Storage;
using HomeLine.Agency.WeekPlanning;
using HomeLine.LineCare.Lines;
using Microsoft.EntityFrameworkCore;
using NodaTime;

namespace HomeLine.Agency.Decisions;

/// <summary>One open question as the list shows it.</summary>
/// <param name="Question">The question.</param>
/// <param name="PatientName">Name as shown.</param>
/// <param name="LineLabel">For example <c>PICC, 2 lumens</c>; empty when it is about the patient.</param>
/// <param name="IsYours">Whether the person who asks may decide it.</param>
public sealed record DecisionRow(OpenDecision Question, string PatientName, string LineLabel, bool IsYours);

/// <summary>The list of what waits for a licensed person, and what was decided last.</summary>
/// <param name="Open">What cannot wait first, then the oldest.</param>
/// <param name="Made">The latest decisions, newest first.</param>
/// <param name="LongestEnd">The latest end an acceptance may have.</param>
public sealed record DecisionList(ImmutableArray<DecisionRow> Open, ImmutableArray<DecisionRecord> Made, LocalDate LongestEnd);

/// <summary>What waits for a licensed decision.</summary>
public sealed class AskDecisions(IDbContextFactory<AgencyDb> databases, AgencyClock clock)
{
    private const int MostMade = 30;
    private Counted last = new(-1, Instant.MinValue, 0);

    /// <summary>Needs <see cref="AgencyAction.SeeDecisions"/>.</summary>
    public async Task<Outcome<DecisionList>> ListAsync(Actor actor, CancellationToken cancel)
    {
        if (actor.Refuse(AgencyAction.SeeDecisions) is { } refusal) return refusal;
        await using AgencyDb db = await databases.CreateDbContextAsync(cancel);
        Outcome<AgencyAtHand> read = await AgencyAtHand.ReadAsync(db, clock, cancel);
        if (!read.Succeeded) return read.Refusal!;
        DecisionFacts facts = await DecisionFacts.ReadAsync(db, read.Value, cancel);
        return new DecisionList(
            Rows(OpenDecisions.Of(facts), facts.Agency.Roster, actor),
            [.. facts.Records.OrderByDescending(r => r.DecidedAt).ThenByDescending(r => r.Id.Length).ThenByDescending(r => r.Id, StringComparer.Ordinal).Take(MostMade)],
            DecisionFaults.LongestEnd(facts));
    }

    /// <summary>
    /// How many questions are open; needs <see cref="AgencyAction.SeeDecisions"/>. Every change is in the audit trail, so the number is worked out
    /// anew only when the trail has grown or the clock has moved by five minutes.
    /// </summary>
    public async Task<Outcome<int>> CountAsync(Actor actor, CancellationToken cancel)
    {
        if (actor.Refuse(AgencyAction.SeeDecisions) is { } refusal) return refusal;
        await using AgencyDb db = await databases.CreateDbContextAsync(cancel);
        long entry = await db.AuditEntries.MaxAsync(e => (long?)e.Sequence, cancel) ?? 0;
        AgencyProfile? profile = await db.Profile.AsNoTracking().SingleOrDefaultAsync(cancel);
        if (profile is null) return 0;
        Instant now = clock.Now(profile);
        Counted known = last;
        if (known.Entry == entry && now >= known.At && now - known.At < Duration.FromMinutes(5)) return known.Open;
        Outcome<DecisionList> list = await ListAsync(actor, cancel);
        if (!list.Succeeded) return list.Refusal!;
        last = new Counted(entry, now, list.Value.Open.Length);
        return list.Value.Open.Length;
    }

    /// <summary>The number as of one audit entry and moment; replaced whole, so that nobody reads half of it.</summary>
    private sealed record Counted(long Entry, Instant At, int Open);

    private static ImmutableArray<DecisionRow> Rows(ImmutableArray<OpenDecision> open, AgencyRoster roster, Actor actor)
    {
        var names = roster.Patients.ToDictionary(p => p.Id, p => p.Name);
        var lines = roster.Lines.ToDictionary(l => l.Id);
        return
        [
            .. open.Select(d => new DecisionRow(
                d,
                names[d.Patient],
                d.Line is { } id && lines.TryGetValue(id, out Line? line) ? CareLabels.Of(line) : "",
                d.Right.Allows(actor) && actor.Allows(AgencyAction.Decide))),
        ];
    }
}
