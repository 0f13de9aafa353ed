using System.Collections.Immutable;
using System.Security.Claims;

namespace HomeLine.Agency.Access;

/// <summary>Who is asking, from the sign-in.</summary>
public static class Actors
{
    /// <summary>The program itself at set-up, before anybody has an account.</summary>
    public static Actor SetUp { get; } = new("set-up", "Set-up", [AgencyRole.Administrator]);

    /// <summary>The actor behind a signed-in principal.</summary>
    /// <exception cref="InvalidOperationException">Nobody is signed in: the page should have refused before.</exception>
    public static Actor From(ClaimsPrincipal principal)
    {
        ArgumentNullException.ThrowIfNull(principal);
        string? id = principal.FindFirstValue(ClaimTypes.NameIdentifier);
        if (principal.Identity is not { IsAuthenticated: true } || id is null)
            throw new InvalidOperationException("Nobody is signed in.");
        ImmutableArray<AgencyRole> roles =
        [
            .. Enum.GetValues<AgencyRole>().Where(role => principal.IsInRole(role.ToString())),
        ];
        string name = principal.FindFirstValue(AccountClaims.DisplayName) ?? principal.Identity.Name ?? id;
        return new Actor(id, name, roles, principal.FindFirstValue(AccountClaims.NurseId));
    }
}
