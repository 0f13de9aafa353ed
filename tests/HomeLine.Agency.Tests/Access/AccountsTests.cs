using HomeLine.Agency.Access;
using HomeLine.Agency.Storage;
using HomeLine.Agency.Tests.Storage;
using Microsoft.AspNetCore.Identity;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;

namespace HomeLine.Agency.Tests.Access;

public sealed class AccountsTests(PostgresCluster cluster)
{
    private const string GoodPassword = "blue ferry eats rye";

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Theory]
    [MemberData(nameof(TestAgency.BothProviders), MemberType = typeof(TestAgency))]
    public async Task A_new_account_is_activated_once_by_its_person(Provider provider)
    {
        await using TestAgency agency = await TestAgency.OnAsync(provider, cluster);
        var accounts = agency.Services.GetRequiredService<Accounts>();
        ActivationLink link = (await AddAsync(accounts)).Value;
        Assert.Equal("password-short", (await accounts.ActivateAsync(link.Secret, "too short", Cancel)).Refusal?.Code);
        Assert.True((await accounts.ActivateAsync(link.Secret, GoodPassword, Cancel)).Succeeded);
        Assert.Equal("link", (await accounts.ActivateAsync(link.Secret, GoodPassword + "!", Cancel)).Refusal?.Code);
        AccountRow row = (await accounts.ListAsync(TestAgency.Administrator, Cancel)).Value.Single();
        Assert.Equal(("N. Urse", true, "N1"), (row.Name, row.Activated, row.NurseId));
        Assert.Equal([AgencyRole.Coordinator, AgencyRole.Nurse], row.Roles);
        await using AgencyDb db = agency.Open();
        Assert.Equal(["add-account", "set-password"], await db.AuditEntries.OrderBy(e => e.Sequence).Select(e => e.Action).ToListAsync(Cancel));
        Assert.DoesNotContain(link.Secret, (await db.Activations.SingleAsync(Cancel)).SecretHash, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_link_dies_with_time_and_with_its_successor()
    {
        await using TestAgency agency = await TestAgency.OnAsync(Provider.Sqlite, cluster);
        var accounts = agency.Services.GetRequiredService<Accounts>();
        ActivationLink first = (await AddAsync(accounts)).Value;
        ActivationLink second = (await accounts.NewLinkAsync(TestAgency.Administrator, first.AccountId, Cancel)).Value;
        Assert.Equal("link", (await accounts.ActivateAsync(first.Secret, GoodPassword, Cancel)).Refusal?.Code);
        agency.Clock.Advance(Accounts.LinkLife);
        Assert.Equal("link", (await accounts.ActivateAsync(second.Secret, GoodPassword, Cancel)).Refusal?.Code);
    }

    [Fact]
    public async Task A_disabled_account_cannot_sign_in_and_its_sessions_lose_their_stamp()
    {
        await using TestAgency agency = await TestAgency.OnAsync(Provider.Sqlite, cluster);
        var accounts = agency.Services.GetRequiredService<Accounts>();
        ActivationLink link = (await AddAsync(accounts)).Value;
        await accounts.ActivateAsync(link.Secret, GoodPassword, Cancel);
        string before = await StampAsync(agency, link.AccountId, mayEnter: true);
        Assert.True((await accounts.DisableAsync(TestAgency.Administrator, link.AccountId, "left", Cancel)).Succeeded);
        Assert.NotEqual(before, await StampAsync(agency, link.AccountId, mayEnter: false));
        Assert.True((await accounts.EnableAsync(TestAgency.Administrator, link.AccountId, Cancel)).Succeeded);
        await StampAsync(agency, link.AccountId, mayEnter: true);
    }

    [Fact]
    public async Task The_last_administrator_stays()
    {
        await using TestAgency agency = await TestAgency.OnAsync(Provider.Sqlite, cluster);
        var first = agency.Services.GetRequiredService<FirstRun>();
        Account only = (await first.CreateFirstAdministratorAsync((await first.PrepareAsync(Cancel))!, "A. Min", "a@example.test", GoodPassword, [], Cancel)).Value;
        var accounts = agency.Services.GetRequiredService<Accounts>();
        Assert.Equal("last-administrator", (await accounts.DisableAsync(TestAgency.Administrator, only.Id, "", Cancel)).Refusal?.Code);
        Assert.Equal("last-administrator", (await accounts.SetRolesAsync(TestAgency.Administrator, only.Id, [AgencyRole.Nurse], Cancel)).Refusal?.Code);
    }

    [Fact]
    public async Task Only_an_administrator_looks_after_accounts()
    {
        await using TestAgency agency = await TestAgency.OnAsync(Provider.Sqlite, cluster);
        var accounts = agency.Services.GetRequiredService<Accounts>();
        Outcome<ActivationLink> refused = await accounts.AddAsync(TestAgency.Coordinator, "N. Urse", "n@example.test", [AgencyRole.Nurse], null, Cancel);
        Assert.Equal("not-allowed", refused.Refusal?.Code);
    }

    [Fact]
    public async Task Each_lockout_is_longer_than_the_one_before()
    {
        await using TestAgency agency = await TestAgency.OnAsync(Provider.Sqlite, cluster);
        var admin = agency.Services.GetRequiredService<Accounts>();
        string id = (await AddAsync(admin)).Value.AccountId;
        await using AsyncServiceScope scope = agency.Services.CreateAsyncScope();
        var accounts = scope.ServiceProvider.GetRequiredService<UserManager<Account>>();
        Account account = (await accounts.FindByIdAsync(id))!;
        var waits = new List<double>();
        for (int round = 0; round < 5; round++)
        {
            for (int i = 0; i < GrowingLockout.Failures; i++) await accounts.AccessFailedAsync(account);
            Assert.True(await accounts.IsLockedOutAsync(account));
            waits.Add(Math.Ceiling((account.LockoutEnd!.Value - DateTimeOffset.UtcNow).TotalMinutes));
            await accounts.SetLockoutEndDateAsync(account, DateTimeOffset.UtcNow.AddMinutes(-1));
        }
        Assert.Equal([1, 5, 15, 60, 60], waits);
        await accounts.ResetAccessFailedCountAsync(account);
        Assert.Equal(0, account.LockoutsInARow);
    }

    private static Task<Outcome<ActivationLink>> AddAsync(Accounts accounts) =>
        accounts.AddAsync(TestAgency.Administrator, "N. Urse", "n@example.test", [AgencyRole.Nurse, AgencyRole.Coordinator], "N1", Cancel);

    private static async Task<string> StampAsync(TestAgency agency, string accountId, bool mayEnter)
    {
        await using AsyncServiceScope scope = agency.Services.CreateAsyncScope();
        var signIn = scope.ServiceProvider.GetRequiredService<SignInManager<Account>>();
        Account account = (await signIn.UserManager.FindByIdAsync(accountId))!;
        Assert.Equal(mayEnter, await signIn.CanSignInAsync(account));
        return account.SecurityStamp!;
    }
}
