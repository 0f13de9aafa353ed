using System.Collections.Immutable;
using HomeLine.Agency.Access;
using HomeLine.Agency.Roster;
using HomeLine.Agency.Storage;
using Microsoft.EntityFrameworkCore;

namespace HomeLine.Agency.PolicyLibrary;

/// <summary>A draft with every due date it would move.</summary>
/// <param name="Version">The draft.</param>
/// <param name="Moved">The due dates, soonest first.</param>
/// <param name="Mark">Names exactly this preview; given back with the approval, so that nobody approves what was not shown.</param>
public sealed record DraftPreview(PolicyVersion Version, ImmutableArray<MovedDue> Moved, string Mark);

/// <summary>Answers questions about the agency's policy: what is in force, what was, what a draft would move.</summary>
public sealed class AskPolicyShelf(IDbContextFactory<AgencyDb> databases, AgencyClock clock)
{
    /// <summary>Needs <see cref="AgencyAction.SeePatient"/>: whoever may see a due date may see the rules behind it.</summary>
    public async Task<Outcome<PolicyShelf>> AskAsync(Actor actor, CancellationToken cancel)
    {
        if (actor.Refuse(AgencyAction.SeePatient) is { } refusal) return refusal;
        await using AgencyDb db = await databases.CreateDbContextAsync(cancel);
        Outcome<AgencyAtHand> read = await AgencyAtHand.ReadAsync(db, clock, cancel);
        return read.Succeeded ? await ShelfAsync(db, read.Value, cancel) : read.Refusal!;
    }

    /// <summary>What a waiting draft would move. Needs <see cref="AgencyAction.EditPolicy"/>. Stores nothing.</summary>
    public async Task<Outcome<DraftPreview>> PreviewAsync(Actor actor, int number, CancellationToken cancel)
    {
        if (actor.Refuse(AgencyAction.EditPolicy) is { } refusal) return refusal;
        await using AgencyDb db = await databases.CreateDbContextAsync(cancel);
        Outcome<AgencyAtHand> read = await AgencyAtHand.ReadAsync(db, clock, cancel);
        return read.Succeeded ? await PreviewAsync(db, read.Value, number, cancel) : read.Refusal!;
    }

    internal static async Task<PolicyShelf> ShelfAsync(AgencyDb db, AgencyAtHand agency, CancellationToken cancel)
    {
        var verdicts = (await db.PolicyVerdicts.AsNoTracking().ToListAsync(cancel)).ToDictionary(v => v.Draft);
        List<PolicyDraft> drafts = await db.PolicyDrafts.AsNoTracking().OrderBy(d => d.Number).ToListAsync(cancel);
        return new PolicyShelf(
            agency.Files.Policy, [.. drafts.Select(d => new PolicyVersion(d, verdicts.GetValueOrDefault(d.Number)))], agency.Today);
    }

    internal static async Task<Outcome<DraftPreview>> PreviewAsync(AgencyDb db, AgencyAtHand agency, int number, CancellationToken cancel)
    {
        PolicyVersion? version = (await ShelfAsync(db, agency, cancel)).Versions.FirstOrDefault(v => v.Number == number);
        if (version is null) return new Refusal("policy-draft-unknown", "There is no such draft.", "Look at the list of versions again.");
        if (!version.IsWaiting)
            return new Refusal("policy-draft-closed", $"{version.Verdict!.By} has {(version.IsApproved ? "approved" : "withdrawn")} this draft.", "Look at the list of versions again.");
        if (PolicyFaults.Of(version.Draft, agency.Files.Policy, agency.Today) is { } fault) return fault;
        ImmutableArray<MovedDue> moved = PolicyPreview.Of(agency, version.Draft);
        return new DraftPreview(version, moved, PreviewMark.Of(moved));
    }
}
