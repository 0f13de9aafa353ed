using Microsoft.AspNetCore.Identity;
using NodaTime;

namespace HomeLine.Agency.Access;

/// <summary>One person's way in. It is never deleted, so that old ledger entries keep their author; it is disabled instead.</summary>
public sealed class Account : IdentityUser
{
    /// <summary>Name as shown in the ledger and the audit trail.</summary>
    public string DisplayName { get; set; } = "";

    /// <summary>The nurse this account belongs to, if any.</summary>
    public string? NurseId { get; set; }

    /// <summary>When an administrator shut it; empty while it may sign in.</summary>
    public Instant? DisabledAt { get; set; }

    /// <summary>Lockouts since the last right password: each is longer than the one before.</summary>
    public int LockoutsInARow { get; set; }
}
