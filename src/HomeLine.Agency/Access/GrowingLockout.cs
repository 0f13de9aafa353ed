using Microsoft.AspNetCore.Identity;
using Microsoft.Extensions.Logging;
using Microsoft.Extensions.Options;

namespace HomeLine.Agency.Access;

/// <summary>
/// Five wrong passwords in a row lock an account for 1, then 5, 15 and 60 minutes (our own default): slow for a guesser, and never
/// for good, so that nobody can shut a colleague out.
/// </summary>
public sealed class GrowingLockout(
    IUserStore<Account> store,
    IOptions<IdentityOptions> options,
    IPasswordHasher<Account> hasher,
    IEnumerable<IUserValidator<Account>> userRules,
    IEnumerable<IPasswordValidator<Account>> passwordRules,
    ILookupNormalizer normalizer,
    IdentityErrorDescriber errors,
    IServiceProvider services,
    ILogger<UserManager<Account>> log)
    : UserManager<Account>(store, options, hasher, userRules, passwordRules, normalizer, errors, services, log)
{
    /// <summary>Failures in a row that lock an account.</summary>
    public const int Failures = 5;

    private static readonly TimeSpan[] Waits =
        [TimeSpan.FromMinutes(1), TimeSpan.FromMinutes(5), TimeSpan.FromMinutes(15), TimeSpan.FromMinutes(60)];

    /// <inheritdoc/>
    public override async Task<IdentityResult> AccessFailedAsync(Account user)
    {
        IdentityResult result = await base.AccessFailedAsync(user);
        if (!result.Succeeded || !await IsLockedOutAsync(user)) return result;
        TimeSpan wait = Waits[Math.Min(user.LockoutsInARow, Waits.Length - 1)];
        user.LockoutsInARow++;
        return await SetLockoutEndDateAsync(user, DateTimeOffset.UtcNow + wait);
    }

    /// <inheritdoc/>
    public override Task<IdentityResult> ResetAccessFailedCountAsync(Account user)
    {
        ArgumentNullException.ThrowIfNull(user);
        user.LockoutsInARow = 0;
        return base.ResetAccessFailedCountAsync(user);
    }
}
