using System.Globalization;
using HomeLine.Agency.Storage;
using Microsoft.EntityFrameworkCore;

namespace HomeLine.Agency.Tests.Storage;

public sealed class AgencyDatabaseTests(PostgresCluster cluster)
{
    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Theory]
    [MemberData(nameof(TestAgency.BothProviders), MemberType = typeof(TestAgency))]
    public async Task Every_change_of_the_stored_records_has_its_migration(Provider provider)
    {
        await using TestAgency agency = await TestAgency.OnAsync(provider, cluster);
        await using AgencyDb db = agency.Open();
        Assert.False(db.Database.HasPendingModelChanges(), "Add a migration for both providers: see docs/decisions/0003-one-model-two-providers.md.");
    }

    [Theory]
    [MemberData(nameof(TestAgency.BothProviders), MemberType = typeof(TestAgency))]
    public async Task Preparing_twice_changes_nothing(Provider provider)
    {
        await using TestAgency agency = await TestAgency.OnAsync(provider, cluster);
        await agency.PrepareAsync();
        await using AgencyDb db = agency.Open();
        Assert.Empty(await db.Database.GetPendingMigrationsAsync(Cancel));
    }

    [Fact]
    public async Task Every_connection_to_the_file_waits_its_turn_and_syncs_each_commit()
    {
        await using TestAgency agency = await TestAgency.OnAsync(Provider.Sqlite, cluster);
        await using AgencyDb db = agency.Open();
        await db.Database.OpenConnectionAsync(Cancel);
        var found = new List<string>();
        foreach (string pragma in (string[])["PRAGMA journal_mode", "PRAGMA synchronous", "PRAGMA foreign_keys", "PRAGMA busy_timeout"])
        {
            await using var command = db.Database.GetDbConnection().CreateCommand();
            command.CommandText = pragma;
            found.Add(Convert.ToString(await command.ExecuteScalarAsync(Cancel), CultureInfo.InvariantCulture)!);
        }
        // SQLite documentation, pragma: synchronous 2 is FULL. The waiting time is our own default.
        Assert.Equal(["wal", "2", "1", "10000"], found);
    }

    [Theory]
    [InlineData("")]
    [InlineData("this is not a database, it is a letter that somebody saved under the wrong name")]
    public async Task A_damaged_file_is_refused_and_stays_as_it_is(string content)
    {
        string folder = Directory.CreateTempSubdirectory("agency-").FullName;
        string file = Path.Combine(folder, "homeline.db");
        await File.WriteAllTextAsync(file, content, Cancel);
        await using TestAgency agency = TestAgency.Make(Provider.Sqlite, $"Data Source={file}", folder);
        await Assert.ThrowsAsync<DamagedDatabaseException>(agency.PrepareAsync);
        Assert.Equal(content, await File.ReadAllTextAsync(file, Cancel));
    }

    [Fact]
    public async Task A_log_whose_database_is_gone_is_refused()
    {
        string folder = Directory.CreateTempSubdirectory("agency-").FullName;
        string file = Path.Combine(folder, "homeline.db");
        await File.WriteAllTextAsync(file + "-wal", "left behind", Cancel);
        await using TestAgency agency = TestAgency.Make(Provider.Sqlite, $"Data Source={file}", folder);
        await Assert.ThrowsAsync<DamagedDatabaseException>(agency.PrepareAsync);
        Assert.False(File.Exists(file));
    }

    [Fact]
    public async Task A_database_with_overwritten_pages_is_refused()
    {
        string folder = Directory.CreateTempSubdirectory("agency-").FullName;
        string file = Path.Combine(folder, "homeline.db");
        await using (TestAgency agency = TestAgency.Make(Provider.Sqlite, $"Data Source={file};Pooling=False", null))
            await agency.PrepareAsync();
        byte[] bytes = await File.ReadAllBytesAsync(file, Cancel);
        Array.Fill(bytes, (byte)0xA5, bytes.Length / 2, 4096);
        await File.WriteAllBytesAsync(file, bytes, Cancel);
        await using TestAgency again = TestAgency.Make(Provider.Sqlite, $"Data Source={file};Pooling=False", folder);
        await Assert.ThrowsAsync<DamagedDatabaseException>(again.PrepareAsync);
        Assert.Equal(bytes.Length, new FileInfo(file).Length);
    }

    [Fact]
    public async Task A_reader_waits_for_no_writer()
    {
        await using TestAgency agency = await TestAgency.OnAsync(Provider.Sqlite, cluster);
        await using AgencyDb writer = agency.Open(), reader = agency.Open();
        await using var work = await writer.BeginWorkAsync(Cancel);
        Assert.Null(await RosterReader.FindAsync(reader, Cancel));
    }

    [Theory]
    [MemberData(nameof(TestAgency.BothProviders), MemberType = typeof(TestAgency))]
    public async Task The_database_itself_refuses_to_rewrite_the_audit_trail(Provider provider)
    {
        await using TestAgency agency = await TestAgency.OnAsync(provider, cluster);
        await AuditTrailTests.AppendAsync(agency, "first");
        await using AgencyDb db = agency.Open();
        await Assert.ThrowsAnyAsync<Exception>(() => db.AuditEntries.ExecuteUpdateAsync(set => set.SetProperty(e => e.Detail, "other"), Cancel));
        await Assert.ThrowsAnyAsync<Exception>(() => db.AuditEntries.ExecuteDeleteAsync(Cancel));
        Assert.Equal("first", (await db.AuditEntries.AsNoTracking().SingleAsync(Cancel)).Detail);
    }
}
