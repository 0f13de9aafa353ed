using System.Text.Json.Nodes;
using HomeLine.Agency.Roster;
using HomeLine.Agency.Storage;
using HomeLine.Agency.Tests.Roster;
using HomeLine.LineCare;
using HomeLine.LineCare.Ledger;
using HomeLine.LineCare.Lines;
using Microsoft.EntityFrameworkCore;
using NodaTime;

namespace HomeLine.Agency.Tests.Storage;

public sealed class RosterStorageTests(PostgresCluster cluster)
{
    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Theory]
    [MemberData(nameof(TestAgency.BothProviders), MemberType = typeof(TestAgency))]
    public async Task A_roster_comes_back_as_it_was_stored(Provider provider)
    {
        await using TestAgency agency = await TestAgency.OnAsync(provider, cluster);
        AgencyRoster roster = RichRoster.Make();
        await StoreAsync(agency, null, roster);
        AgencyRoster back = await ReadAsync(agency);
        Assert.Equal(Say(roster), Say(back));
    }

    [Theory]
    [MemberData(nameof(TestAgency.BothProviders), MemberType = typeof(TestAgency))]
    public async Task Importing_the_same_roster_again_writes_nothing(Provider provider)
    {
        await using TestAgency agency = await TestAgency.OnAsync(provider, cluster);
        await StoreAsync(agency, null, RichRoster.Make());
        AgencyRoster back = await ReadAsync(agency);
        RosterChange change = RosterChange.Between(back, RichRoster.Make());
        Assert.Equal(0, change.Writes);
        Assert.Empty(change.Conflicts);
    }

    [Theory]
    [MemberData(nameof(TestAgency.BothProviders), MemberType = typeof(TestAgency))]
    public async Task A_change_touches_its_rows_and_leaves_the_others_alone(Provider provider)
    {
        await using TestAgency agency = await TestAgency.OnAsync(provider, cluster);
        AgencyRoster first = RichRoster.Make();
        await StoreAsync(agency, null, first);
        AgencyRoster incoming = first with
        {
            Patients = [first.Patients[0] with { Phone = "555-0199", RefusedNurses = [] }],
            Holds = [first.Holds[0] with { Through = new LocalDate(2027, 3, 9) }],
            Nurses = [],
        };
        AgencyRoster back = await ReadAsync(agency);
        RosterChange change = RosterChange.Between(back, incoming);
        Assert.Equal(["phone", "refusedNurses"], change.Patients.Changed.Single().Fields);
        Assert.Equal(2, (await ApplyAsync(agency, change)).Value);
        AgencyRoster after = await ReadAsync(agency);
        Assert.Equal(Say(first with { Patients = [incoming.Patients[0], first.Patients[1]], Holds = [incoming.Holds[0], first.Holds[1]] }), Say(after));
    }

    [Theory]
    [MemberData(nameof(TestAgency.BothProviders), MemberType = typeof(TestAgency))]
    public async Task A_preview_that_grew_old_is_refused_and_nothing_is_lost(Provider provider)
    {
        await using TestAgency agency = await TestAgency.OnAsync(provider, cluster);
        AgencyRoster first = RichRoster.Make();
        await StoreAsync(agency, null, first);
        RosterChange mine = RosterChange.Between(first, first with { Patients = [first.Patients[0] with { Phone = "555-0150" }] });
        RosterChange theirs = RosterChange.Between(first, first with { Patients = [first.Patients[0] with { Address = "3 River Row" }] });
        Assert.True((await ApplyAsync(agency, theirs)).Succeeded);
        Assert.Equal("stale-import", (await ApplyAsync(agency, mine)).Refusal?.Code);
        AgencyRoster after = await ReadAsync(agency);
        Assert.Equal("3 River Row", after.Patients[0].Address);
        Assert.Equal("555-0120", after.Patients[0].Phone);
    }

    [Theory]
    [MemberData(nameof(TestAgency.BothProviders), MemberType = typeof(TestAgency))]
    public async Task The_ledger_is_append_only_in_the_program(Provider provider)
    {
        await using TestAgency agency = await TestAgency.OnAsync(provider, cluster);
        await StoreAsync(agency, null, RichRoster.Make());
        await using AgencyDb db = agency.Open();
        LineEvent entry = await db.LineEvents.FirstAsync(Cancel);
        db.Entry(entry).Property(e => e.Note).CurrentValue = "rewritten";
        await Assert.ThrowsAsync<InvalidOperationException>(() => db.SaveChangesAsync(Cancel));
        db.Entry(entry).State = EntityState.Deleted;
        await Assert.ThrowsAsync<InvalidOperationException>(() => db.SaveChangesAsync(Cancel));
    }

    [Theory]
    [MemberData(nameof(TestAgency.BothProviders), MemberType = typeof(TestAgency))]
    public async Task Two_changes_of_one_row_from_one_version_do_not_both_land(Provider provider)
    {
        await using TestAgency agency = await TestAgency.OnAsync(provider, cluster);
        await StoreAsync(agency, null, RichRoster.Make());
        await using AgencyDb mine = agency.Open(), theirs = agency.Open();
        Patient a = await mine.Patients.FirstAsync(Cancel), b = await theirs.Patients.FirstAsync(Cancel);
        theirs.Entry(b).Property(p => p.Phone).CurrentValue = "555-0151";
        await theirs.SaveChangesAsync(Cancel);
        mine.Entry(a).Property(p => p.Address).CurrentValue = "4 River Row";
        await Assert.ThrowsAsync<DbUpdateConcurrencyException>(() => mine.SaveChangesAsync(Cancel));
    }

    [Fact]
    public void A_changed_entry_of_the_ledger_is_a_conflict()
    {
        AgencyRoster roster = RichRoster.Make();
        AgencyRoster rewritten = roster with { Events = [roster.Events[0] with { Note = "other" }] };
        Assert.Equal("event-rewritten", Assert.Single(RosterChange.Between(roster, rewritten).Conflicts).Refusal.Code);
    }

    [Fact]
    public void Rows_of_unknown_patients_and_lines_and_repeated_rows_are_conflicts()
    {
        AgencyRoster roster = RichRoster.Make();
        AgencyRoster bad = roster with
        {
            Holds = [new Hold(new PatientId("P99"), new LocalDate(2027, 3, 1), null, "away")],
            Infusions = [roster.Infusions[0] with { Line = new LineId("P99-1") }],
            Nurses = [roster.Nurses[0], roster.Nurses[0]],
        };
        Assert.Equal(
            ["row-repeated", "line-unknown", "patient-unknown"],
            RosterChange.Between(roster, bad).Conflicts.Select(c => c.Refusal.Code));
    }

    private static async Task StoreAsync(TestAgency agency, AgencyRoster? current, AgencyRoster incoming) =>
        Assert.True((await ApplyAsync(agency, RosterChange.Between(current, incoming))).Succeeded);

    private static async Task<Outcome<int>> ApplyAsync(TestAgency agency, RosterChange change)
    {
        await using AgencyDb db = agency.Open();
        return await RosterWriter.ApplyAsync(db, TestAgency.Coordinator, change, TestAgency.Now, Cancel);
    }

    private static async Task<AgencyRoster> ReadAsync(TestAgency agency)
    {
        await using AgencyDb db = agency.Open();
        return await RosterReader.ReadAsync(db, Cancel);
    }

    /// <summary>Everything the roster says, as indented text, so that a difference can be read.</summary>
    private static string Say(AgencyRoster roster) => JsonNode.Parse(StoredJson.Write(roster))!.ToString();
}
