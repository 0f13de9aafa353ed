using HomeLine.Agency.Storage;
using Microsoft.AspNetCore.Identity;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;

namespace HomeLine.Agency.Access;

/// <summary>
/// The way in when there is no administrator yet: a code, made new at each start, shown on the console and nowhere else, and dead
/// once it was used. There is no default account.
/// </summary>
public sealed class FirstRun(IServiceScopeFactory scopes, IDbContextFactory<AgencyDb> databases, AgencyClock clock) : IDisposable
{
    private readonly SemaphoreSlim _turn = new(1, 1);
    private string? _code;

    /// <summary>Whether anybody has an account.</summary>
    public async Task<bool> AnAccountExistsAsync(CancellationToken cancel)
    {
        await using AgencyDb db = await databases.CreateDbContextAsync(cancel);
        return await db.Users.AnyAsync(cancel);
    }

    /// <summary>The code to show on the console; nothing when there is an administrator. Call once at start-up.</summary>
    public async Task<string?> PrepareAsync(CancellationToken cancel)
    {
        await using AgencyDb db = await databases.CreateDbContextAsync(cancel);
        return _code = await HasAdministratorAsync(db, cancel) ? null : OneTimeSecret.New();
    }

    /// <summary>
    /// Makes the first administrator, who in a small agency also plans or visits: <paramref name="alsoAs"/> names the further roles.
    /// Refused with <c>setup-code</c> when the code is wrong, used, or no longer needed.
    /// </summary>
    public async Task<Outcome<Account>> CreateFirstAdministratorAsync(
        string code, string name, string email, string password, IEnumerable<AgencyRole> alsoAs, CancellationToken cancel)
    {
        await _turn.WaitAsync(cancel);
        try
        {
            if (_code is not { } expected || !OneTimeSecret.Same(code, expected)) return WrongCode;
            await using AsyncServiceScope scope = scopes.CreateAsyncScope();
            var db = scope.ServiceProvider.GetRequiredService<AgencyDb>();
            await using var work = await db.BeginWorkAsync(cancel);
            if (await HasAdministratorAsync(db, cancel)) return WrongCode;
            Outcome<Account> made = await NewAccount.MakeAsync(
                scope.ServiceProvider.GetRequiredService<UserManager<Account>>(), name, email, [.. alsoAs.Append(AgencyRole.Administrator).Distinct()], null, password);
            if (!made.Succeeded) return made;
            await AuditTrail.AppendAsync(db, Actors.SetUp, "first-administrator", made.Value.Id, name, clock.RealNow(), cancel);
            await work.CommitAsync(cancel);
            _code = null;
            return made;
        }
        finally
        {
            _turn.Release();
        }
    }

    /// <inheritdoc/>
    public void Dispose() => _turn.Dispose();

    private static Refusal WrongCode { get; } = new(
        "setup-code", "This set-up link is not valid.", "Start the program again and use the link it prints, or ask an administrator for an account.");

    private static Task<bool> HasAdministratorAsync(AgencyDb db, CancellationToken cancel) =>
        db.UserRoles.AnyAsync(r => r.RoleId == nameof(AgencyRole.Administrator), cancel);
}
