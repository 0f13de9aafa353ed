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

    /// <summary>Whether a device may go on keeping this account's day.</summary>
    public async Task<DayOnDevice> MayKeepDayAsync(string account)
    {
        await using AsyncServiceScope scope = scopes.CreateAsyncScope();
        var accounts = scope.ServiceProvider.GetRequiredService<UserManager<Account>>();
        if (await accounts.FindByIdAsync(account) is not { DisabledAt: null, NurseId: not null } found) return DayOnDevice.Over;
        return await accounts.IsLockedOutAsync(found) ? DayOnDevice.Locked : DayOnDevice.Stays;
    }
}

/// <summary>Whether a nurse's day may stay on a device.</summary>
public enum DayOnDevice
{
    /// <summary>It may.</summary>
    Stays,

    /// <summary>Not while the account is locked after wrong passwords; a session that is open goes on.</summary>
    Locked,

    /// <summary>No: the account is disabled, gone, or no nurse's any more.</summary>
    Over,
}
