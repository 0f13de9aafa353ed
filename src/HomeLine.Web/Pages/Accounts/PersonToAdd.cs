using System.Collections.Immutable;
using HomeLine.Agency.Access;

namespace HomeLine.Web.Pages.Accounts;

/// <summary>What is typed to add a person. Nobody types another's password.</summary>
public sealed record PersonToAdd(string Name, string UserName, ImmutableArray<AgencyRole> Roles, string? NurseId);

/// <summary>Roles in words.</summary>
public static class RoleWords
{
    public static string InWords(this AgencyRole role) => role switch
    {
        AgencyRole.Administrator => "administrator",
        AgencyRole.ClinicalManager => "clinical manager",
        AgencyRole.Coordinator => "coordinator",
        AgencyRole.Nurse => "nurse",
        _ => throw new ArgumentOutOfRangeException(nameof(role), role, "Unknown role"),
    };
}
