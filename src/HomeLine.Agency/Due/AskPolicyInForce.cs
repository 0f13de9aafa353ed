using HomeLine.Agency.Access;
using HomeLine.Agency.Roster;
using HomeLine.Agency.Storage;
using HomeLine.LineCare.Policy;
using Microsoft.EntityFrameworkCore;

namespace HomeLine.Agency.Due;

/// <summary>The policy book the agency works by: shipped defaults with its own versions above them.</summary>
public sealed record PolicyInForce(PolicyBook Book);

/// <summary>Answers with the agency's policy book.</summary>
public sealed class AskPolicyInForce(IDbContextFactory<AgencyDb> databases, AgencyClock clock)
{
    /// <summary>Needs <see cref="AgencyAction.SeePatient"/>: whoever may see a due date may see the rules behind it.</summary>
    public async Task<Outcome<PolicyInForce>> AskAsync(Actor actor, CancellationToken cancel)
    {
        ArgumentNullException.ThrowIfNull(actor);
        if (actor.Refuse(AgencyAction.SeePatient) is { } refusal) return refusal;
        await using AgencyDb db = await databases.CreateDbContextAsync(cancel);
        Outcome<AgencyAtHand> read = await AgencyAtHand.ReadAsync(db, clock, cancel);
        return read.Succeeded ? new PolicyInForce(read.Value.Files.Policy) : read.Refusal!;
    }
}
