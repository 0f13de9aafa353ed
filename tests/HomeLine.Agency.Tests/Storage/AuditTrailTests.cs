using HomeLine.Agency.Access;
using HomeLine.Agency.Storage;
using Microsoft.EntityFrameworkCore;

namespace HomeLine.Agency.Tests.Storage;

public sealed class AuditTrailTests(PostgresCluster cluster)
{
    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Theory]
    [MemberData(nameof(TestAgency.BothProviders), MemberType = typeof(TestAgency))]
    public async Task An_untouched_chain_is_whole(Provider provider)
    {
        await using TestAgency agency = await ThreeEntriesAsync(provider);
        await using AgencyDb db = agency.Open();
        AuditCheck check = await AuditTrail.VerifyAsync(db, Cancel);
        Assert.Equal((3L, null), (check.Entries, check.BrokenAt));
        Assert.Equal(64, check.LastHash.Length);
    }

    [Theory]
    [MemberData(nameof(TestAgency.BothProviders), MemberType = typeof(TestAgency))]
    public async Task A_changed_entry_is_found(Provider provider)
    {
        await using TestAgency agency = await ThreeEntriesAsync(provider);
        await using AgencyDb db = agency.Open();
        await LetGoOfTheGuardAsync(db);
        await db.Database.ExecuteSqlAsync($"UPDATE audit_entries SET actor_name = 'Somebody Else' WHERE sequence = 2", Cancel);
        Assert.Equal(2, (await AuditTrail.VerifyAsync(db, Cancel)).BrokenAt);
    }

    [Theory]
    [MemberData(nameof(TestAgency.BothProviders), MemberType = typeof(TestAgency))]
    public async Task A_removed_entry_is_found(Provider provider)
    {
        await using TestAgency agency = await ThreeEntriesAsync(provider);
        await using AgencyDb db = agency.Open();
        await LetGoOfTheGuardAsync(db);
        await db.Database.ExecuteSqlAsync($"DELETE FROM audit_entries WHERE sequence = 1", Cancel);
        Assert.Equal(1, (await AuditTrail.VerifyAsync(db, Cancel)).BrokenAt);
    }

    [Theory]
    [MemberData(nameof(TestAgency.BothProviders), MemberType = typeof(TestAgency))]
    public async Task An_entry_is_lost_together_with_the_work_it_tells_of(Provider provider)
    {
        await using TestAgency agency = await ThreeEntriesAsync(provider);
        await using (AgencyDb db = agency.Open())
        {
            await using var work = await db.BeginWorkAsync(Cancel);
            await AuditTrail.AppendAsync(db, TestAgency.Coordinator, "test", "nothing", "undone", TestAgency.Now, Cancel);
        }
        await using AgencyDb after = agency.Open();
        Assert.Equal(3, (await AuditTrail.VerifyAsync(after, Cancel)).Entries);
    }

    [Fact]
    public async Task An_entry_outside_of_any_work_is_a_programming_mistake()
    {
        await using TestAgency agency = await TestAgency.OnAsync(Provider.Sqlite, cluster);
        await using AgencyDb db = agency.Open();
        await Assert.ThrowsAsync<InvalidOperationException>(() =>
            AuditTrail.AppendAsync(db, TestAgency.Coordinator, "test", "nothing", "", TestAgency.Now, Cancel));
    }

    internal static async Task AppendAsync(TestAgency agency, params string[] details)
    {
        await using AgencyDb db = agency.Open();
        await using var work = await db.BeginWorkAsync(Cancel);
        foreach (string detail in details)
            await AuditTrail.AppendAsync(db, TestAgency.Coordinator, "test", "nothing", detail, TestAgency.Now, Cancel);
        await work.CommitAsync(Cancel);
    }

    private async Task<TestAgency> ThreeEntriesAsync(Provider provider)
    {
        TestAgency agency = await TestAgency.OnAsync(provider, cluster);
        await AppendAsync(agency, "first");
        await AppendAsync(agency, "second", "third");
        return agency;
    }

    /// <summary>As somebody with the database's own password could.</summary>
    private static async Task LetGoOfTheGuardAsync(AgencyDb db)
    {
        if (db.Database.IsNpgsql())
        {
            await db.Database.ExecuteSqlAsync($"ALTER TABLE audit_entries DISABLE TRIGGER USER", Cancel);
            return;
        }
        await db.Database.ExecuteSqlAsync($"DROP TRIGGER audit_entries_no_update", Cancel);
        await db.Database.ExecuteSqlAsync($"DROP TRIGGER audit_entries_no_delete", Cancel);
    }
}
