using HomeLine.Agency.Access;
using HomeLine.Agency.Due;
using HomeLine.Agency.Roster;
using HomeLine.Agency.Storage;
using HomeLine.Agency.Tests.Roster;
using HomeLine.LineCare.Ledger;
using Microsoft.Extensions.DependencyInjection;
using NodaTime;

namespace HomeLine.Agency.Tests.Storage;

/// <summary>What is remembered of the roster is never older than the database.</summary>
public sealed class RosterMemoryTests(PostgresCluster cluster)
{
    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Theory]
    [MemberData(nameof(TestAgency.BothProviders), MemberType = typeof(TestAgency))]
    public async Task Nothing_changed_means_the_same_roster_without_reading_it_again(Provider provider)
    {
        await using TestAgency agency = await OpenedAsync(provider);

        Assert.Same((await ReadAsync(agency)).Roster, (await ReadAsync(agency)).Roster);
    }

    [Theory]
    [MemberData(nameof(TestAgency.BothProviders), MemberType = typeof(TestAgency))]
    public async Task A_new_ledger_entry_by_another_process_is_seen_at_the_next_question(Provider provider)
    {
        await using TestAgency agency = await OpenedAsync(provider);
        AgencyRoster before = (await ReadAsync(agency)).Roster;

        await AppendAsync(agency, before.Events[0] with { Id = new EventId("later") });

        AgencyRoster after = (await ReadAsync(agency)).Roster;
        Assert.Equal(before.Events.Length + 1, after.Events.Length);
        Assert.Equal("later", after.Events[^1].Id.Value);
        await using AgencyDb fresh = agency.Open();
        Assert.Equal((await RosterReader.ReadAsync(fresh, Cancel)).Events.Select(e => e.Id), after.Events.Select(e => e.Id));
    }

    [Fact]
    public async Task A_new_entry_touches_the_file_of_its_patient_and_leaves_the_others_as_read()
    {
        await using TestAgency agency = await OpenedAsync(Provider.Sqlite);
        AgencyAtHand before = await ReadAsync(agency);
        LineEvent entry = before.Roster.Events[0];
        await AppendAsync(agency, entry with { Id = new EventId("later") });

        AgencyAtHand after = await ReadAsync(agency);

        var other = before.Roster.Patients.First(patient => patient.Id != entry.Patient).Id;
        Assert.Same(before.Files[other], after.Files[other]);
        var fresh = HomeLine.Agency.WeekPlanning.CareFiles.Of(after.Roster);
        Assert.All(after.Roster.Patients, patient => Assert.Equal(fresh[patient.Id].Events, after.Files[patient.Id].Events));
    }

    [Theory]
    [MemberData(nameof(TestAgency.BothProviders), MemberType = typeof(TestAgency))]
    public async Task A_changed_row_is_read_again_and_its_table_alone(Provider provider)
    {
        await using TestAgency agency = await OpenedAsync(provider);
        AgencyRoster before = (await ReadAsync(agency)).Roster;
        AgencyRoster incoming = before with { Patients = before.Patients.SetItem(0, before.Patients[0] with { Phone = "555-0199" }) };
        await using (AgencyDb db = agency.Open())
            await RosterWriter.ApplyAsync(db, TestAgency.Coordinator, RosterChange.Between(before, incoming), TestAgency.Now, Cancel);

        AgencyRoster after = (await ReadAsync(agency)).Roster;

        Assert.Equal("555-0199", after.Patients[0].Phone);
        Assert.True(before.Lines == after.Lines, "the lines were not read again");
    }

    [Theory]
    [MemberData(nameof(TestAgency.BothProviders), MemberType = typeof(TestAgency))]
    public async Task Work_that_was_not_kept_leaves_no_trace_in_memory(Provider provider)
    {
        await using TestAgency agency = await OpenedAsync(provider);
        AgencyRoster before = (await ReadAsync(agency)).Roster;

        await using (AgencyDb db = agency.Open())
        {
            await using var work = await db.BeginWorkAsync(Cancel);
            db.LineEvents.Add(before.Events[0] with { Id = new EventId("never") });
            await AuditTrail.AppendAsync(db, TestAgency.Coordinator, "test", "ledger", "", TestAgency.Now, Cancel);
            Outcome<AgencyAtHand> inside = await AgencyAtHand.ReadAsync(db, agency.Services.GetRequiredService<AgencyClock>(), Cancel);
            Assert.Contains(inside.Value.Roster.Events, e => e.Id.Value == "never");
        }

        Assert.DoesNotContain((await ReadAsync(agency)).Roster.Events, e => e.Id.Value == "never");
    }

    [Theory]
    [MemberData(nameof(TestAgency.BothProviders), MemberType = typeof(TestAgency))]
    public async Task Work_that_gets_its_turn_sees_what_another_process_wrote_since_and_reads_only_that(Provider provider)
    {
        await using TestAgency agency = await OpenedAsync(provider);
        AgencyRoster before = (await ReadAsync(agency)).Roster;
        await AppendAsync(agency, before.Events[0] with { Id = new EventId("later") });

        await using AgencyDb db = agency.Open();
        await using var turn = await db.BeginWorkAsync(Cancel);
        AgencyRoster inTurn = (await AgencyAtHand.ReadInTurnAsync(db, agency.Services.GetRequiredService<AgencyClock>(), Cancel)).Value.Roster;

        Assert.Equal("later", inTurn.Events[^1].Id.Value);
        Assert.True(before.Patients == inTurn.Patients, "the patients were not read again");
    }

    [Fact]
    public async Task An_agency_that_was_never_opened_is_refused_and_found_once_it_is()
    {
        await using TestAgency agency = await TestAgency.OnAsync(Provider.Sqlite, cluster);
        Outcome<System.Collections.Immutable.ImmutableArray<DueRow>> before =
            await agency.Services.GetRequiredService<AskDueList>().AskAsync(TestAgency.Coordinator, Cancel);
        Assert.Equal("no-agency", before.Refusal!.Code);

        await OpenAsync(agency);

        Assert.NotEmpty((await agency.Services.GetRequiredService<AskDueList>().AskAsync(TestAgency.Coordinator, Cancel)).Value);
    }

    private async Task<TestAgency> OpenedAsync(Provider provider)
    {
        TestAgency agency = await TestAgency.OnAsync(provider, cluster);
        await OpenAsync(agency);
        return agency;
    }

    private static async Task OpenAsync(TestAgency agency)
    {
        await using AgencyDb db = agency.Open();
        await RosterWriter.ApplyAsync(db, TestAgency.Administrator, RosterChange.Between(null, RichRoster.Make()), TestAgency.Now, Cancel);
    }

    private static async Task<AgencyAtHand> ReadAsync(TestAgency agency)
    {
        await using AgencyDb db = agency.Open();
        return (await AgencyAtHand.ReadAsync(db, agency.Services.GetRequiredService<AgencyClock>(), Cancel)).Value;
    }

    /// <summary>Another process has a memory of its own: a context without one stands for it.</summary>
    private static async Task AppendAsync(TestAgency agency, LineEvent entry)
    {
        await using AgencyDb db = agency.Open();
        db.Memory = null;
        await using var work = await db.BeginWorkAsync(Cancel);
        db.LineEvents.Add(entry);
        await AuditTrail.AppendAsync(db, TestAgency.Coordinator, "record", "ledger", "", Instant.FromUtc(2027, 3, 8, 12, 0), Cancel);
        await work.CommitAsync(Cancel);
    }
}
