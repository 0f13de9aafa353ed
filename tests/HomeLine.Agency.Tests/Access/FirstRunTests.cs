using HomeLine.Agency.Access;
using HomeLine.Agency.Storage;
using HomeLine.Agency.Tests.Storage;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;

namespace HomeLine.Agency.Tests.Access;

public sealed class FirstRunTests(PostgresCluster cluster)
{
    private const string GoodPassword = "blue ferry eats rye";

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Theory]
    [MemberData(nameof(TestAgency.BothProviders), MemberType = typeof(TestAgency))]
    public async Task The_set_up_code_makes_one_administrator_and_is_dead(Provider provider)
    {
        await using TestAgency agency = await TestAgency.OnAsync(provider, cluster);
        var first = agency.Services.GetRequiredService<FirstRun>();
        string code = (await first.PrepareAsync(Cancel))!;
        // 128 bits are 22 characters of base64url (RFC 4648).
        Assert.Equal(22, code.Length);
        Assert.False(await first.AnAccountExistsAsync(Cancel));
        Assert.Equal("setup-code", (await MakeAsync(first, "wrong")).Refusal?.Code);
        Outcome<Account>[] both = await Task.WhenAll(MakeAsync(first, code), MakeAsync(first, code, "b@example.test"));
        Assert.Single(both, o => o.Succeeded);
        Assert.Equal("setup-code", (await MakeAsync(first, code, "c@example.test")).Refusal?.Code);
        Assert.True(await first.AnAccountExistsAsync(Cancel));
        Assert.Null(await first.PrepareAsync(Cancel));
        await using AgencyDb db = agency.Open();
        Assert.Equal(nameof(AgencyRole.Administrator), (await db.UserRoles.SingleAsync(Cancel)).RoleId);
        Assert.Equal("first-administrator", (await db.AuditEntries.SingleAsync(Cancel)).Action);
    }

    [Fact]
    public async Task A_bad_password_leaves_nothing_behind_and_the_code_alive()
    {
        await using TestAgency agency = await TestAgency.OnAsync(Provider.Sqlite, cluster);
        var first = agency.Services.GetRequiredService<FirstRun>();
        string code = (await first.PrepareAsync(Cancel))!;
        Outcome<Account> refused = await first.CreateFirstAdministratorAsync(code, "A. Min", "a@example.test", "password", [], Cancel);
        Assert.Equal("password-short", refused.Refusal?.Code);
        Assert.False(await first.AnAccountExistsAsync(Cancel));
        Assert.True((await MakeAsync(first, code)).Succeeded);
    }

    private static Task<Outcome<Account>> MakeAsync(FirstRun first, string code, string email = "a@example.test") =>
        first.CreateFirstAdministratorAsync(code, "A. Min", email, GoodPassword, [], Cancel);
}
