using System.Security.Claims;
using Microsoft.AspNetCore.Identity;
using Microsoft.Extensions.DependencyInjection;

namespace HomeLine.Agency.Access;

/// <summary>An account may be used once its person has set a password, and until an administrator disables it.</summary>
internal sealed class AccountStanding : IUserConfirmation<Account>
{
    /// <inheritdoc/>
    public Task<bool> IsConfirmedAsync(UserManager<Account> manager, Account user) =>
        Task.FromResult(user.PasswordHash is not null && user.DisabledAt is null);
}

/// <summary>Whether somebody who signed in earlier may still be here. Open pages ask this every minute.</summary>
public sealed class SessionStanding(IServiceScopeFactory scopes)
{
    /// <summary>How often a session asks again: a disabled account ends within it (our own default).</summary>
    public static readonly TimeSpan AsksEvery = TimeSpan.FromSeconds(60);

    /// <summary>False once the account is disabled, its roles or password changed, or it is gone.</summary>
    public async Task<bool> IsValidAsync(ClaimsPrincipal principal)
    {
        await using AsyncServiceScope scope = scopes.CreateAsyncScope();
        var signIn = scope.ServiceProvider.GetRequiredService<SignInManager<Account>>();
        return await signIn.ValidateSecurityStampAsync(principal) is { } account && account.DisabledAt is null;
    }
}
