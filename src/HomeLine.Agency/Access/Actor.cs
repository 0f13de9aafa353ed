using System.Collections.Immutable;

namespace HomeLine.Agency.Access;

/// <summary>Who is asking. Every use case takes one and checks it before anything else.</summary>
/// <param name="UserId">The account's id.</param>
/// <param name="Name">Name as shown in the ledger and the audit trail.</param>
/// <param name="Roles">Roles held.</param>
/// <param name="NurseId">The nurse this account belongs to, if any.</param>
public sealed record Actor(string UserId, string Name, ImmutableArray<AgencyRole> Roles, string? NurseId = null);

/// <summary>The roles of an agency.</summary>
public enum AgencyRole
{
    /// <summary>Accounts, imports, settings; sees no more care data than needed.</summary>
    Administrator,

    /// <summary>Licensed decisions: orders, exceptions, red flags, locks.</summary>
    ClinicalManager,

    /// <summary>Plans, publishes and mends the week.</summary>
    Coordinator,

    /// <summary>Visits patients and records care.</summary>
    Nurse,
}
