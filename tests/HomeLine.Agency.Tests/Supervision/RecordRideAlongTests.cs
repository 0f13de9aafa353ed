using HomeLine.Agency.Access;
using HomeLine.Agency.Storage;
using HomeLine.Agency.Supervision;
using HomeLine.Agency.Tests.Storage;
using Microsoft.EntityFrameworkCore;
using NodaTime;

namespace HomeLine.Agency.Tests.Supervision;

/// <summary>Ride-alongs of the demonstration agency, on Monday morning. Invented data.</summary>
public sealed class RecordRideAlongTests(PostgresCluster cluster)
{
    private static readonly LocalDate Monday = DemoAgency.FirstDay;

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    private Task<TestAgency> OpenAsync(Provider provider = Provider.Sqlite) => DemoOnDatabase.OpenAsync(provider, cluster, DemoAgency.Now);

    private static async Task<RideAlongDue> DueAsync(TestAgency agency) =>
        (await agency.Ask<AskRideAlongs>().AskAsync(TestAgency.Coordinator, null, Cancel)).Value.Due.Single();

    [Theory]
    [MemberData(nameof(TestAgency.BothProviders), MemberType = typeof(TestAgency))]
    public async Task What_took_place_moves_the_next_one_to_the_days_of_policy_later(Provider provider)
    {
        await using TestAgency agency = await OpenAsync(provider);
        RideAlongDue before = await DueAsync(agency);

        Outcome<RideAlong> kept = await agency.Ask<RecordRideAlong>().RecordAsync(
            DemoOnDatabase.ClinicalLead, new RideAlongEntry("N5", "N3", Monday, " Hands and dressing. "), Cancel);

        // Her first published day is the Thursday of the demonstration week.
        Assert.Equal(("N5", Monday.PlusDays(3), true), (before.Nurse, before.DueBy, before.Last is null));
        Assert.True(kept.Succeeded);
        RideAlongDue after = await DueAsync(agency);
        Assert.Equal((Monday.PlusDays(60), "Hands and dressing."), (after.DueBy, after.Last!.Note));
        await using AgencyDb db = agency.Open();
        AuditEntry entry = await db.AuditEntries.AsNoTracking().SingleAsync(e => e.Action == "record-ride-along", Cancel);
        Assert.Equal("nurse N5", entry.Subject);
    }

    [Fact]
    public async Task Who_went_along_may_record_it_herself()
    {
        await using TestAgency agency = await OpenAsync();

        Outcome<RideAlong> own = await agency.Ask<RecordRideAlong>().RecordAsync(DemoOnDatabase.Nurse, new RideAlongEntry("N5", "N3", Monday, ""), Cancel);
        Outcome<RideAlong> others = await agency.Ask<RecordRideAlong>().RecordAsync(DemoOnDatabase.Nurse, new RideAlongEntry("N5", "N1", Monday, ""), Cancel);

        Assert.True(own.Succeeded);
        Assert.Equal("ride-not-yours", others.Refusal?.Code);
    }

    [Theory]
    [InlineData("N5", "N1", 1, "ride-in-future")]
    [InlineData("N5", "N5", 0, "ride-no-supervisor")]
    [InlineData("N2", "N1", 0, "ride-not-needed")]
    [InlineData("N99", "N1", 0, "nurse-unknown")]
    [InlineData("N5", "", 0, "nurse-unknown")]
    [InlineData("N5", "N1", null, "ride-day-missing")]
    public async Task A_ride_along_that_cannot_be_is_refused_in_words(string nurse, string supervisor, int? days, string code)
    {
        await using TestAgency agency = await OpenAsync();

        Outcome<RideAlong> refused = await agency.Ask<RecordRideAlong>().RecordAsync(
            DemoOnDatabase.ClinicalLead, new RideAlongEntry(nurse, supervisor, days is { } d ? Monday.PlusDays(d) : null, ""), Cancel);

        Assert.Equal(code, refused.Refusal?.Code);
    }

    [Fact]
    public async Task The_same_day_counts_once_and_a_coordinator_records_none()
    {
        await using TestAgency agency = await OpenAsync();
        var entry = new RideAlongEntry("N5", "N1", Monday, "");

        Assert.True((await agency.Ask<RecordRideAlong>().RecordAsync(DemoOnDatabase.ClinicalLead, entry, Cancel)).Succeeded);
        Assert.Equal("ride-twice", (await agency.Ask<RecordRideAlong>().RecordAsync(DemoOnDatabase.ClinicalLead, entry with { Supervisor = "N3" }, Cancel)).Refusal?.Code);
        Assert.Equal("not-allowed", (await agency.Ask<RecordRideAlong>().RecordAsync(TestAgency.Coordinator, entry, Cancel)).Refusal?.Code);
    }

    [Theory]
    [MemberData(nameof(TestAgency.BothProviders), MemberType = typeof(TestAgency))]
    public async Task Recorded_wrongly_it_is_taken_back_with_a_reason_and_counts_no_more(Provider provider)
    {
        await using TestAgency agency = await OpenAsync(provider);
        var entry = new RideAlongEntry("N5", "N1", Monday, "Hands.");
        RideAlong wrong = (await agency.Ask<RecordRideAlong>().RecordAsync(DemoOnDatabase.ClinicalLead, entry, Cancel)).Value;
        RideAlongDue counted = await DueAsync(agency);
        var back = agency.Ask<TakeRideAlongBack>();

        Assert.Equal("ride-back-without-reason", (await back.TakeBackAsync(DemoOnDatabase.ClinicalLead, wrong.Id, " ", Cancel)).Refusal?.Code);
        Assert.Equal("ride-not-yours", (await back.TakeBackAsync(DemoOnDatabase.Nurse, wrong.Id, "x", Cancel)).Refusal?.Code);
        Assert.Equal("not-allowed", (await back.TakeBackAsync(TestAgency.Coordinator, wrong.Id, "x", Cancel)).Refusal?.Code);
        Assert.True((await back.TakeBackAsync(DemoOnDatabase.ClinicalLead, wrong.Id, "It was N3.", Cancel)).Succeeded);

        Assert.Equal(Monday.PlusDays(60), counted.DueBy);
        Assert.Null((await DueAsync(agency)).Last);
        RideAlongList list = (await agency.Ask<AskRideAlongs>().AskAsync(TestAgency.Coordinator, null, Cancel)).Value;
        Assert.Empty(list.Made);
        Assert.Equal(("Hands.", "It was N3."), (list.TakenBack.Single().Ride.Note, list.TakenBack.Single().Back.Why));
        Assert.Equal("ride-unknown", (await back.TakeBackAsync(DemoOnDatabase.ClinicalLead, wrong.Id, "again", Cancel)).Refusal?.Code);
        Assert.True((await agency.Ask<RecordRideAlong>().RecordAsync(DemoOnDatabase.ClinicalLead, entry with { Supervisor = "N3" }, Cancel)).Succeeded);
    }
}
