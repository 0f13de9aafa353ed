using System.Security.Claims;
using Microsoft.AspNetCore.Identity;
using Microsoft.Extensions.Options;

namespace HomeLine.Agency.Access;

/// <summary>What the sign-in cookie says about a person: who, which roles, which nurse; nothing else.</summary>
public sealed class AccountClaims(UserManager<Account> accounts, RoleManager<IdentityRole> roles, IOptions<IdentityOptions> options)
    : UserClaimsPrincipalFactory<Account, IdentityRole>(accounts, roles, options)
{
    public const string DisplayName = "homeline:name";
    public const string NurseId = "homeline:nurse";

    /// <inheritdoc/>
    protected override async Task<ClaimsIdentity> GenerateClaimsAsync(Account user)
    {
        ArgumentNullException.ThrowIfNull(user);
        ClaimsIdentity identity = await base.GenerateClaimsAsync(user);
        identity.AddClaim(new Claim(DisplayName, user.DisplayName));
        if (user.NurseId is { } nurse) identity.AddClaim(new Claim(NurseId, nurse));
        return identity;
    }
}
