using System.Collections.Immutable;
using HomeLine.Agency.Storage;
using Microsoft.AspNetCore.Identity;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using NodaTime;

namespace HomeLine.Agency.Access;

/// <summary>
/// Accounts as an administrator looks after them. Nobody but its person ever knows a password: a new or forgotten one is set
/// through a link that the administrator hands over and that works once.
/// </summary>
public sealed class Accounts(IServiceScopeFactory scopes, IDbContextFactory<AgencyDb> databases, AgencyClock clock)
{
    /// <summary>How long a link works: our own default.</summary>
    public static readonly Duration LinkLife = Duration.FromDays(3);

    /// <summary>Everybody with an account, by name. Needs <see cref="AgencyAction.ManageAccounts"/>.</summary>
    public async Task<Outcome<ImmutableArray<AccountRow>>> ListAsync(Actor by, CancellationToken cancel)
    {
        if (by.Refuse(AgencyAction.ManageAccounts) is { } refusal) return refusal;
        await using AgencyDb db = await databases.CreateDbContextAsync(cancel);
        ILookup<string, string> roles = (await db.UserRoles.AsNoTracking().ToListAsync(cancel)).ToLookup(r => r.UserId, r => r.RoleId);
        List<Account> accounts = await db.Users.AsNoTracking().OrderBy(a => a.DisplayName).ToListAsync(cancel);
        return ImmutableArray.CreateRange(accounts.Select(a => new AccountRow(
            a.Id, a.DisplayName, a.Email ?? "", [.. roles[a.Id].Select(Enum.Parse<AgencyRole>).Order()], a.NurseId,
            a.PasswordHash is not null, a.DisabledAt)));
    }

    /// <summary>Adds an account without a password. Needs <see cref="AgencyAction.ManageAccounts"/>.</summary>
    public Task<Outcome<ActivationLink>> AddAsync(
        Actor by, string name, string email, ImmutableArray<AgencyRole> roles, string? nurseId, CancellationToken cancel) =>
        WorkAsync<ActivationLink>(by, async (db, accounts) =>
        {
            Outcome<Account> made = await NewAccount.MakeAsync(accounts, name, email, roles, nurseId, password: null);
            if (made.Refusal is { } refusal) return refusal;
            await Audit(db, by, "add-account", made.Value, string.Join(", ", roles), cancel);
            return await LinkAsync(db, made.Value, cancel);
        }, cancel);

    /// <summary>A new link for somebody who lost it or forgot the password; earlier links die. Needs <see cref="AgencyAction.ManageAccounts"/>.</summary>
    public Task<Outcome<ActivationLink>> NewLinkAsync(Actor by, string accountId, CancellationToken cancel) =>
        WorkAsync<ActivationLink>(by, async (db, accounts) =>
        {
            if (await accounts.FindByIdAsync(accountId) is not { DisabledAt: null } account) return Unknown;
            await db.Activations.Where(a => a.AccountId == accountId).ExecuteDeleteAsync(cancel);
            await Audit(db, by, "new-link", account, "", cancel);
            return await LinkAsync(db, account, cancel);
        }, cancel);

    /// <summary>Gives other roles; they count within a minute. Needs <see cref="AgencyAction.ManageAccounts"/>.</summary>
    public Task<Outcome<bool>> SetRolesAsync(Actor by, string accountId, ImmutableArray<AgencyRole> roles, CancellationToken cancel) =>
        WorkAsync<bool>(by, async (db, accounts) =>
        {
            if (await accounts.FindByIdAsync(accountId) is not { } account) return Unknown;
            if (roles.IsEmpty) return new Refusal("account-roles", "No role is chosen.", "Choose at least one role, or disable the account.");
            if (!roles.Contains(AgencyRole.Administrator) && await IsLastAdministratorAsync(db, accountId, cancel)) return LastOne;
            await accounts.RemoveFromRolesAsync(account, await accounts.GetRolesAsync(account));
            await accounts.AddToRolesAsync(account, roles.Distinct().Select(r => r.ToString()));
            await accounts.UpdateSecurityStampAsync(account);
            await Audit(db, by, "set-roles", account, string.Join(", ", roles), cancel);
            return true;
        }, cancel);

    /// <summary>Shuts an account and, within a minute, its open sessions. Needs <see cref="AgencyAction.ManageAccounts"/>.</summary>
    public Task<Outcome<bool>> DisableAsync(Actor by, string accountId, string reason, CancellationToken cancel) =>
        WorkAsync<bool>(by, async (db, accounts) =>
        {
            if (await accounts.FindByIdAsync(accountId) is not { } account) return Unknown;
            if (await IsLastAdministratorAsync(db, accountId, cancel)) return LastOne;
            account.DisabledAt = clock.RealNow();
            await accounts.UpdateSecurityStampAsync(account);
            await db.Activations.Where(a => a.AccountId == accountId).ExecuteDeleteAsync(cancel);
            await Audit(db, by, "disable-account", account, reason, cancel);
            return true;
        }, cancel);

    /// <summary>Opens a disabled account again. Needs <see cref="AgencyAction.ManageAccounts"/>.</summary>
    public Task<Outcome<bool>> EnableAsync(Actor by, string accountId, CancellationToken cancel) =>
        WorkAsync<bool>(by, async (db, accounts) =>
        {
            if (await accounts.FindByIdAsync(accountId) is not { } account) return Unknown;
            account.DisabledAt = null;
            await accounts.UpdateAsync(account);
            await Audit(db, by, "enable-account", account, "", cancel);
            return true;
        }, cancel);

    /// <summary>The person sets the password through the link, once. Refused with <c>link</c> when it is unknown, used or too old.</summary>
    public async Task<Outcome<Account>> ActivateAsync(string secret, string password, CancellationToken cancel)
    {
        await using AsyncServiceScope scope = scopes.CreateAsyncScope();
        var db = scope.ServiceProvider.GetRequiredService<AgencyDb>();
        var accounts = scope.ServiceProvider.GetRequiredService<UserManager<Account>>();
        await using var work = await db.BeginWorkAsync(cancel);
        string hash = OneTimeSecret.HashOf(secret);
        Activation? link = await db.Activations.SingleOrDefaultAsync(a => a.SecretHash == hash, cancel);
        if (link is not { UsedAt: null } || link.ExpiresAt <= clock.RealNow()) return DeadLink;
        if (await accounts.FindByIdAsync(link.AccountId) is not { DisabledAt: null } account) return DeadLink;
        if (account.PasswordHash is not null) await accounts.RemovePasswordAsync(account);
        IdentityResult set = await accounts.AddPasswordAsync(account, password);
        if (!set.Succeeded) return NewAccount.Why(set);
        link.UsedAt = clock.RealNow();
        await Audit(db, new Actor(account.Id, account.DisplayName, []), "set-password", account, "", cancel);
        await work.CommitAsync(cancel);
        return account;
    }

    private async Task<Outcome<T>> WorkAsync<T>(
        Actor by, Func<AgencyDb, UserManager<Account>, Task<Outcome<T>>> act, CancellationToken cancel)
    {
        if (by.Refuse(AgencyAction.ManageAccounts) is { } refusal) return refusal;
        await using AsyncServiceScope scope = scopes.CreateAsyncScope();
        var db = scope.ServiceProvider.GetRequiredService<AgencyDb>();
        await using var work = await db.BeginWorkAsync(cancel);
        Outcome<T> outcome = await act(db, scope.ServiceProvider.GetRequiredService<UserManager<Account>>());
        if (outcome.Succeeded) await work.CommitAsync(cancel);
        return outcome;
    }

    private async Task<ActivationLink> LinkAsync(AgencyDb db, Account account, CancellationToken cancel)
    {
        var link = new ActivationLink(account.Id, OneTimeSecret.New(), clock.RealNow() + LinkLife);
        db.Activations.Add(new Activation { SecretHash = OneTimeSecret.HashOf(link.Secret), AccountId = account.Id, ExpiresAt = link.ExpiresAt });
        await db.SaveChangesAsync(cancel);
        return link;
    }

    private Task<AuditEntry> Audit(AgencyDb db, Actor by, string action, Account account, string detail, CancellationToken cancel) =>
        AuditTrail.AppendAsync(db, by, action, $"account {account.Id}", detail, clock.RealNow(), cancel);

    private static async Task<bool> IsLastAdministratorAsync(AgencyDb db, string accountId, CancellationToken cancel)
    {
        List<string> administrators = await db.UserRoles.Where(r => r.RoleId == nameof(AgencyRole.Administrator))
            .Join(db.Users.Where(a => a.DisabledAt == null), r => r.UserId, a => a.Id, (r, a) => a.Id).ToListAsync(cancel);
        return administrators is [var only] && only == accountId;
    }

    private static Refusal Unknown { get; } = new("account-unknown", "There is no such account in use.", "Look at the list again.");

    private static Refusal LastOne { get; } = new(
        "last-administrator", "This is the last administrator.", "Give the role to somebody else first.");

    private static Refusal DeadLink { get; } = new(
        "link", "This link is not valid any more.", "Ask an administrator for a new one.");
}

/// <summary>One line of the list of accounts.</summary>
/// <param name="Id">The account.</param>
/// <param name="Name">As shown.</param>
/// <param name="Email">The sign-in name.</param>
/// <param name="Roles">Roles held.</param>
/// <param name="NurseId">The nurse it belongs to.</param>
/// <param name="Activated">Its person has set a password.</param>
/// <param name="DisabledAt">When it was shut; empty while it is open.</param>
public sealed record AccountRow(
    string Id, string Name, string Email, ImmutableArray<AgencyRole> Roles, string? NurseId, bool Activated, Instant? DisabledAt);

/// <summary>A link to hand over, shown once: whoever hosts the pages makes the address from the secret.</summary>
/// <param name="AccountId">Whose.</param>
/// <param name="Secret">The one-time part; never logged, never stored.</param>
/// <param name="ExpiresAt">When it dies unused.</param>
public sealed record ActivationLink(string AccountId, string Secret, Instant ExpiresAt);
