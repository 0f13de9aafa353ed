using HomeLine.Agency.Access;
using Microsoft.AspNetCore.Components.Authorization;
using Microsoft.AspNetCore.Components.Server;

namespace HomeLine.Web.Pages.SignIn;

/// <summary>Looks every minute whether the person behind an open circuit may still be there: a disabled account ends now.</summary>
public sealed class SignedInStill(ILoggerFactory logs, SessionStanding standing)
    : RevalidatingServerAuthenticationStateProvider(logs)
{
    protected override TimeSpan RevalidationInterval => SessionStanding.AsksEvery;

    protected override Task<bool> ValidateAuthenticationStateAsync(AuthenticationState authenticationState, CancellationToken cancellationToken) =>
        standing.IsValidAsync(authenticationState.User);
}
