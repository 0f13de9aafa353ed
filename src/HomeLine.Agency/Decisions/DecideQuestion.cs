using System.Collections.Immutable;
using System.Globalization;
using HomeLine.Agency.Access;
using HomeLine.Agency.Reports;
using HomeLine.Agency.Roster;
using HomeLine.Agency.Storage;
using Microsoft.EntityFrameworkCore;
using NodaTime;

namespace HomeLine.Agency.Decisions;

/// <summary>Keeps a licensed decision with what it changes: all of it or nothing, and each question once.</summary>
public sealed class DecideQuestion(IDbContextFactory<AgencyDb> databases, AgencyClock clock)
{
    /// <summary>
    /// Needs <see cref="AgencyAction.Decide"/> and the right of the question. Refused with <c>already-decided</c> or <c>decision-gone</c> when it is no
    /// longer open, and without a licensed name or a reason.
    /// </summary>
    public async Task<Outcome<KeptDecision>> DecideAsync(Actor actor, DecisionMade made, CancellationToken cancel)
    {
        if (actor.Refuse(AgencyAction.Decide) is { } refusal) return refusal;
        await using AgencyDb db = await databases.CreateDbContextAsync(cancel);
        await using var turn = await db.BeginWorkAsync(cancel);
        Outcome<AgencyAtHand> read = await AgencyAtHand.ReadInTurnAsync(db, clock, cancel);
        if (!read.Succeeded) return read.Refusal!;
        DecisionFacts facts = await DecisionFacts.ReadAsync(db, read.Value, cancel);
        OpenDecision? question = OpenDecisions.Of(facts).FirstOrDefault(d => d.Key == made.Key);
        if (DecisionFaults.Of(made, question, facts, actor) is { } fault) return fault;
        Outcome<KeptDecision> kept = await KeepAsync(db, actor, made, question!, facts, cancel);
        if (kept.Succeeded) await turn.CommitAsync(cancel);
        return kept;
    }

    private async Task<Outcome<KeptDecision>> KeepAsync(
        AgencyDb db, Actor actor, DecisionMade made, OpenDecision question, DecisionFacts facts, CancellationToken cancel)
    {
        Instant realNow = clock.RealNow();
        string id = string.Create(CultureInfo.InvariantCulture, $"D{facts.Records.Length + 1}");
        Outcome<ImmutableArray<PersonToTell>> told = await new DecisionEffects(db, actor, facts, question, made, id, realNow).ApplyAsync(cancel);
        if (!told.Succeeded) return told.Refusal!;
        var record = new DecisionRecord
        {
            Id = id,
            Key = question.Key,
            Round = question.Round,
            Code = question.Code,
            Patient = question.Patient,
            Line = question.Line,
            Question = question.Sentence,
            Choice = made.Choice,
            Reason = made.Reason.Trim(),
            LicensedName = made.LicensedName.Trim(),
            EnteredBy = actor.Name,
            DecidedAt = facts.Agency.Now,
            Until = DecisionRights.NeedsEnd(made.Choice) ? made.Until ?? DecisionFaults.LongestEnd(facts) : null,
        };
        db.Decisions.Add(record);
        for (int i = 0; i < told.Value.Length; i++)
            db.ToTell.Add(new ToTell { Id = $"{id}-{i + 1}", Week = facts.Agency.ThisWeek, Person = told.Value[i] });
        await AuditTrail.AppendAsync(db, actor, "decide", $"{question.Patient} {question.Code}", $"{id} {made.Choice}: {record.LicensedName}", realNow, cancel);
        await db.SaveChangesAsync(cancel);
        return new KeptDecision(record, told.Value);
    }
}
