using System.Collections.Immutable;
using HomeLine.Agency.Access;
using HomeLine.Agency.Storage;
using HomeLine.Agency.Storage.Mapping;
using HomeLine.Agency.WeekPlanning;
using HomeLine.LineCare.Lines;
using HomeLine.Planning.Plans;
using Microsoft.EntityFrameworkCore;
using NodaTime;

namespace HomeLine.Agency.Tests.Storage;

public sealed class WeekStoreTests(PostgresCluster cluster)
{
    private static readonly LocalDate Monday = new(2027, 3, 8);

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Theory]
    [MemberData(nameof(TestAgency.BothProviders), MemberType = typeof(TestAgency))]
    public async Task A_published_week_comes_back_with_its_history(Provider provider)
    {
        await using TestAgency agency = await TestAgency.OnAsync(provider, cluster);
        PlannedWeek first = (await PublishAsync(agency, Week(0, Visit("V2", "N1", 9), Visit("V1", "N2", 9)))).Value;
        PlannedWeek second = (await PublishAsync(agency, first with { Visits = [Visit("V2", "N1", 10)], Unmet = [] })).Value;
        await using AgencyDb db = agency.Open();
        StoredWeek stored = (await WeekStore.PublishedAsync(db, Monday, Cancel))!;
        Assert.Equal(StoredJson.Write(second), StoredJson.Write(stored.Week));
        Assert.Equal(2, stored.Week.Version);
        Assert.Equal(TestAgency.Coordinator.Name, stored.SavedBy);
        ImmutableArray<PublishedVersion> history = await WeekStore.HistoryAsync(db, Monday, Cancel);
        Assert.Equal([StoredJson.Write(first), StoredJson.Write(second)], history.Select(v => StoredJson.Write(v.Week)));
    }

    [Theory]
    [MemberData(nameof(TestAgency.BothProviders), MemberType = typeof(TestAgency))]
    public async Task A_published_week_is_read_again_once_another_process_published_and_work_not_kept_leaves_no_trace(Provider provider)
    {
        await using TestAgency agency = await TestAgency.OnAsync(provider, cluster);
        PlannedWeek first = (await PublishAsync(agency, Week(0, Visit("V1", "N1", 9)))).Value;
        StoredWeek seen = await StandsAsync(agency);
        Assert.Same(seen, await StandsAsync(agency));
        await using (AgencyDb never = agency.Open())
        {
            await using var work = await never.BeginWorkAsync(Cancel);
            Assert.True((await WeekStore.PublishAsync(never, TestAgency.Coordinator, first with { Visits = [Visit("V1", "N3", 9)] }, "test", TestAgency.Now, Cancel)).Succeeded);
            Assert.Equal("N3", (await WeekStore.PublishedAsync(never, Monday, Cancel))!.Week.Visits.Single().Nurse);
        }

        Assert.Same(seen, await StandsAsync(agency));
        await using (AgencyDb other = agency.Open())
        {
            // Another process has a memory of its own: a context without one stands for it.
            other.Memory = null;
            Assert.True((await WeekStore.PublishAsync(other, TestAgency.Coordinator, first with { Visits = [Visit("V1", "N2", 9)] }, "test", TestAgency.Now, Cancel)).Succeeded);
        }

        Assert.Equal("N2", (await StandsAsync(agency)).Week.Visits.Single().Nurse);
    }

    [Theory]
    [MemberData(nameof(TestAgency.BothProviders), MemberType = typeof(TestAgency))]
    public async Task A_stale_publish_is_refused_and_nothing_is_lost(Provider provider)
    {
        await using TestAgency agency = await TestAgency.OnAsync(provider, cluster);
        PlannedWeek seen = (await PublishAsync(agency, Week(0, Visit("V1", "N1", 9)))).Value;
        Assert.True((await PublishAsync(agency, seen with { Visits = [Visit("V1", "N2", 9)] })).Succeeded);
        Outcome<PlannedWeek> late = await PublishAsync(agency, seen with { Visits = [Visit("V1", "N3", 9)] });
        Assert.Equal("stale-week", late.Refusal?.Code);
        await using AgencyDb db = agency.Open();
        Assert.Equal("N2", (await WeekStore.PublishedAsync(db, Monday, Cancel))!.Week.Visits.Single().Nurse);
        Assert.Equal(2, (await WeekStore.HistoryAsync(db, Monday, Cancel)).Length);
    }

    [Theory]
    [MemberData(nameof(TestAgency.BothProviders), MemberType = typeof(TestAgency))]
    public async Task Of_many_who_publish_the_same_version_at_once_exactly_one_succeeds(Provider provider)
    {
        await using TestAgency agency = await TestAgency.OnAsync(provider, cluster);
        PlannedWeek seen = (await PublishAsync(agency, Week(0, Visit("V1", "N1", 9)))).Value;
        Outcome<PlannedWeek>[] outcomes = await Task.WhenAll(Enumerable.Range(0, 8).Select(i =>
            Task.Run(() => PublishAsync(agency, seen with { Visits = [Visit("V1", $"N{i}", 9)] }))));
        Assert.Single(outcomes, o => o.Succeeded);
        Assert.All(outcomes.Where(o => !o.Succeeded), o => Assert.Equal("stale-week", o.Refusal!.Code));
        await using AgencyDb db = agency.Open();
        Assert.Equal(
            outcomes.Single(o => o.Succeeded).Value.Visits.Single().Nurse,
            (await WeekStore.PublishedAsync(db, Monday, Cancel))!.Week.Visits.Single().Nurse);
        Assert.True((await AuditTrail.VerifyAsync(db, Cancel)).IsWhole);
    }

    [Theory]
    [MemberData(nameof(TestAgency.BothProviders), MemberType = typeof(TestAgency))]
    public async Task A_draft_stands_beside_the_published_week_until_it_is_published(Provider provider)
    {
        await using TestAgency agency = await TestAgency.OnAsync(provider, cluster);
        PlannedWeek published = (await PublishAsync(agency, Week(0, Visit("V1", "N1", 9)))).Value;
        StoredWeek draft = (await SaveDraftAsync(agency, published with { Visits = [Visit("V1", "N1", 11)] }, 0)).Value;
        Assert.Equal("stale-draft", (await SaveDraftAsync(agency, published, 0)).Refusal?.Code);
        draft = (await SaveDraftAsync(agency, draft.Week with { Visits = [Visit("V1", "N1", 12)] }, draft.Revision)).Value;
        Assert.Equal((2, 1), (draft.Revision, draft.Week.Version));
        await using AgencyDb db = agency.Open();
        Assert.Equal(new LocalTime(9, 0), (await WeekStore.PublishedAsync(db, Monday, Cancel))!.Week.Visits[0].Start);
        Assert.Equal(new LocalTime(12, 0), (await WeekStore.DraftAsync(db, Monday, Cancel))!.Week.Visits[0].Start);
        Assert.True((await PublishAsync(agency, draft.Week)).Succeeded);
        Assert.Null(await WeekStore.DraftAsync(db, Monday, Cancel));
    }

    [Theory]
    [MemberData(nameof(TestAgency.BothProviders), MemberType = typeof(TestAgency))]
    public async Task A_nurse_at_two_doors_is_refused_with_a_reason(Provider provider)
    {
        await using TestAgency agency = await TestAgency.OnAsync(provider, cluster);
        WeekVisit pair = Visit("V2", "N2", 9) with { Second = "N1" };
        Assert.Equal("double-booked", (await PublishAsync(agency, Week(0, Visit("V1", "N1", 9), pair))).Refusal?.Code);
        Assert.Equal("double-booked", (await SaveDraftAsync(agency, Week(0, Visit("V1", "N1", 9), Visit("V2", "N1", 9)), 0)).Refusal?.Code);
    }

    [Theory]
    [MemberData(nameof(TestAgency.BothProviders), MemberType = typeof(TestAgency))]
    public async Task The_database_itself_refuses_a_double_booking(Provider provider)
    {
        await using TestAgency agency = await TestAgency.OnAsync(provider, cluster);
        Assert.True((await PublishAsync(agency, Week(0, Visit("V1", "N1", 9)))).Succeeded);
        await using AgencyDb db = agency.Open();
        var entry = db.Entry(Visit("V2", "N1", 9));
        entry.Property(VisitMapping.Week).CurrentValue = await db.Weeks.Select(w => w.Row).SingleAsync(Cancel);
        entry.State = EntityState.Added;
        await Assert.ThrowsAsync<DbUpdateException>(() => db.SaveChangesAsync(Cancel));
    }

    private static PlannedWeek Week(int version, params ImmutableArray<WeekVisit> visits) => new()
    {
        FirstDay = Monday,
        Version = version,
        Visits = visits,
        Unmet =
        [
            new UnmetNeed(new PatientId("P09"), "dressing, PICC", [new PlanningReason("skill-missing", "Nobody.", "Train.")], [new Relaxation("overtime", "20 min.", 20)]),
        ],
    };

    private static WeekVisit Visit(string id, string nurse, int hour) => new()
    {
        Id = id,
        Patient = new PatientId("P01"),
        Nurse = nurse,
        Day = Monday,
        Start = new LocalTime(hour, 0),
        Minutes = 45,
        Care = [new VisitCare("P01|Dressing|P01-1", "dressing, PICC")],
        Promise = PromiseState.Told,
        ToldFrom = new LocalTime(hour, 0),
        Held = "decision open",
    };

    private static async Task<StoredWeek> StandsAsync(TestAgency agency)
    {
        await using AgencyDb db = agency.Open();
        return (await WeekStore.PublishedAsync(db, Monday, Cancel))!;
    }

    private static async Task<Outcome<PlannedWeek>> PublishAsync(TestAgency agency, PlannedWeek week)
    {
        await using AgencyDb db = agency.Open();
        return await WeekStore.PublishAsync(db, TestAgency.Coordinator, week, "test", TestAgency.Now, Cancel);
    }

    private static async Task<Outcome<StoredWeek>> SaveDraftAsync(TestAgency agency, PlannedWeek week, int seenRevision)
    {
        await using AgencyDb db = agency.Open();
        return await WeekStore.SaveDraftAsync(db, TestAgency.Coordinator, week, seenRevision, TestAgency.Now, Cancel);
    }
}
