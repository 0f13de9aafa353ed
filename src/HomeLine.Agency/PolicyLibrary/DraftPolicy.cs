using System.Collections.Immutable;
using HomeLine.Agency.Access;
using HomeLine.Agency.Roster;
using HomeLine.Agency.Storage;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using NodaTime.Text;

namespace HomeLine.Agency.PolicyLibrary;

/// <summary>A drafted policy as entered.</summary>
/// <param name="EffectiveFrom">First day it would be in force.</param>
/// <param name="Note">Why.</param>
/// <param name="Changes">Rule by rule.</param>
public sealed record PolicyEntry(LocalDate EffectiveFrom, string Note, ImmutableArray<RuleChange> Changes);

/// <summary>Drafts, approves and withdraws versions of the agency's policy. What was approved is never changed.</summary>
public sealed class DraftPolicy(IDbContextFactory<AgencyDb> databases, AgencyClock clock)
{
    /// <summary>Keeps a draft. Needs <see cref="AgencyAction.EditPolicy"/>. Refused when a value is outside its limits or the day is in the past.</summary>
    public Task<Outcome<PolicyDraft>> DraftAsync(Actor actor, PolicyEntry entry, CancellationToken cancel) => WorkAsync<PolicyDraft>(actor, async (db, agency) =>
    {
        var draft = new PolicyDraft
        {
            Number = (await db.PolicyDrafts.MaxAsync(d => (int?)d.Number, cancel) ?? 0) + 1,
            EffectiveFrom = entry.EffectiveFrom,
            Changes = entry.Changes,
            Note = entry.Note.Trim(),
            DraftedById = actor.UserId,
            DraftedBy = actor.Name,
            DraftedAt = agency.Now,
        };
        if (PolicyFaults.Of(draft, agency.Files.Policy, agency.Today) is { } fault) return fault;
        db.PolicyDrafts.Add(draft);
        await AuditTrail.AppendAsync(db, actor, "draft-policy", Subject(draft.Number), $"{draft.Changes.Length} rules from {LocalDatePattern.Iso.Format(draft.EffectiveFrom)}", clock.RealNow(), cancel);
        return draft;
    }, cancel);

    /// <summary>
    /// Makes a draft the agency's policy. Needs <see cref="AgencyAction.EditPolicy"/>, and, where policy says so and the agency has one, another clinical
    /// manager than the one who drafted it. <paramref name="mark"/> is that of the preview shown; when the dates that would move are others by now it is refused.
    /// </summary>
    public Task<Outcome<PolicyVersion>> ApproveAsync(Actor actor, int number, string mark, CancellationToken cancel) => WorkAsync<PolicyVersion>(actor, async (db, agency) =>
    {
        Outcome<DraftPreview> preview = await AskPolicyShelf.PreviewAsync(db, agency, number, cancel);
        if (!preview.Succeeded) return preview.Refusal!;
        PolicyDraft draft = preview.Value.Version.Draft;
        if (preview.Value.Mark != mark)
            return new Refusal("stale-preview", "The dates that would move are others by now.", "Look at the preview again, then approve.");
        if (draft.DraftedById == actor.UserId && await NeedsAnotherAsync(db, agency, actor, cancel))
            return new Refusal("policy-second-person", "Whoever drafts a policy does not approve it.", "Ask another clinical manager to look at the preview and approve.");
        db.PolicyRules.AddRange(draft.Rules(actor.Name));
        var verdict = new PolicyVerdict(number, PolicyFate.Approved, actor.UserId, actor.Name, agency.Now, "");
        db.PolicyVerdicts.Add(verdict);
        await AuditTrail.AppendAsync(db, actor, "approve-policy", Subject(number), $"{preview.Value.Moved.Length} due dates move", clock.RealNow(), cancel);
        return new PolicyVersion(draft, verdict);
    }, cancel);

    /// <summary>Takes a waiting draft back, with the reason. Needs <see cref="AgencyAction.EditPolicy"/>.</summary>
    public Task<Outcome<PolicyVersion>> WithdrawAsync(Actor actor, int number, string reason, CancellationToken cancel) => WorkAsync<PolicyVersion>(actor, async (db, agency) =>
    {
        PolicyVersion? version = (await AskPolicyShelf.ShelfAsync(db, agency, cancel)).Versions.FirstOrDefault(v => v.Number == number);
        if (version is not { IsWaiting: true })
            return new Refusal("policy-draft-closed", "This draft does not wait any more.", "Look at the list of versions again.");
        if (string.IsNullOrWhiteSpace(reason))
            return new Refusal("policy-note-missing", "It is not said why the draft is taken back.", "Say why in a few words.");
        var verdict = new PolicyVerdict(number, PolicyFate.Withdrawn, actor.UserId, actor.Name, agency.Now, reason.Trim());
        db.PolicyVerdicts.Add(verdict);
        await AuditTrail.AppendAsync(db, actor, "withdraw-policy", Subject(number), reason.Trim(), clock.RealNow(), cancel);
        return version with { Verdict = verdict };
    }, cancel);

    private async Task<Outcome<T>> WorkAsync<T>(Actor actor, Func<AgencyDb, AgencyAtHand, Task<Outcome<T>>> work, CancellationToken cancel)
    {
        if (actor.Refuse(AgencyAction.EditPolicy) is { } refusal) return refusal;
        await using AgencyDb db = await databases.CreateDbContextAsync(cancel);
        await using var turn = await db.BeginWorkAsync(cancel);
        Outcome<AgencyAtHand> read = await AgencyAtHand.ReadInTurnAsync(db, clock, cancel);
        if (!read.Succeeded) return read.Refusal!;
        Outcome<T> done = await work(db, read.Value);
        if (!done.Succeeded) return done;
        await db.SaveChangesAsync(cancel);
        await turn.CommitAsync(cancel);
        return done;
    }

    /// <summary>Whether policy asks for a second person and there is another clinical manager who can sign in.</summary>
    private static async Task<bool> NeedsAnotherAsync(AgencyDb db, AgencyAtHand agency, Actor actor, CancellationToken cancel) =>
        agency.Files.Policy.ValueOf("policy.approval.secondperson", agency.Today) == 1
        && await db.UserRoles.Where(r => r.RoleId == nameof(AgencyRole.ClinicalManager) && r.UserId != actor.UserId)
            .Join(db.Users.Where(u => u.DisabledAt == null), r => r.UserId, u => u.Id, (r, u) => u.Id).AnyAsync(cancel);

    private static string Subject(int number) => $"policy version {number}";
}
