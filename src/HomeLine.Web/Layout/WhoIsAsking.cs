using HomeLine.Agency.Access;
using Microsoft.AspNetCore.Components.Authorization;

namespace HomeLine.Web.Layout;

/// <summary>The person at this page, as the use cases want to know them. Asked anew each time: a session may end while a page is open.</summary>
public sealed class WhoIsAsking(AuthenticationStateProvider signedIn)
{
    public async Task<Actor> AskAsync() => Actors.From((await signedIn.GetAuthenticationStateAsync()).User);
}
