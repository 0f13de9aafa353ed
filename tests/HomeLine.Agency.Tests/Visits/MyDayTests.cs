using HomeLine.Agency.Reports;
using HomeLine.Agency.Storage;
using HomeLine.Agency.Tests.Storage;
using HomeLine.Agency.Visits;
using NodaTime;
using static HomeLine.Agency.Tests.DemoOnDatabase;
using static HomeLine.Agency.Tests.Visits.VisitOf;

namespace HomeLine.Agency.Tests.Visits;

/// <summary>The nurse's day, the kit in the bag, and later visits that a recorded one replaces.</summary>
public sealed class MyDayTests(PostgresCluster cluster)
{
    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task The_next_door_stands_first_and_a_recorded_one_last()
    {
        await using TestAgency agency = await OpenAsync(Provider.Sqlite, cluster, DemoAgency.At(9, 9, 10));
        var asking = agency.Ask<AskMyDay>();
        Assert.Equal("P12", (await asking.AskAsync(Juniper, null, null, Cancel)).Value.Next?.Visit.Patient.Value);

        Assert.True((await agency.Ask<RecordVisit>().SignAsync(Juniper, await DoneAsync(agency, Juniper, "2027-03-09-P12", 9, 8, 10), Cancel)).Succeeded);

        MyDay day = (await asking.AskAsync(Juniper, null, null, Cancel)).Value;
        Assert.Equal(["P04", "P06", "P01", "P12"], day.Stops.Select(s => s.Visit.Patient.Value));
        Assert.Equal((new LocalTime(9, 31), new LocalTime(10, 31)), (day.Next!.Sheet.ToldFrom, day.Next.Sheet.ToldTo));
    }

    [Fact]
    public async Task A_nurse_sees_her_own_day_and_who_plans_sees_anybodys()
    {
        await using TestAgency agency = await OpenAsync(Provider.Sqlite, cluster, DemoAgency.At(9, 6, 0));
        var asking = agency.Ask<AskMyDay>();

        Assert.Equal("not-allowed", (await asking.AskAsync(Juniper, "N3", null, Cancel)).Refusal?.Code);
        Assert.Equal("Sorrel Mudlark", (await asking.AskAsync(TestAgency.Coordinator, "N3", null, Cancel)).Value.NurseName);
        Assert.Equal("nurse-unknown", (await asking.AskAsync(TestAgency.Coordinator, null, null, Cancel)).Refusal?.Code);
        Assert.Equal("not-allowed", (await asking.AskAsync(TestAgency.Administrator, "N3", null, Cancel)).Refusal?.Code);
    }

    /// <summary>P05 is allergic to chlorhexidine, P40 is seven weeks old: neither bag holds any.</summary>
    [Theory]
    [InlineData("2027-03-09-P05")]
    [InlineData("2027-03-09-P40")]
    public async Task The_kit_follows_allergy_and_age(string visit)
    {
        await using TestAgency agency = await OpenAsync(Provider.Sqlite, cluster, DemoAgency.At(9, 6, 0));

        VisitBrief brief = (await agency.Ask<AskVisit>().PlannedAsync(Juniper, visit, Cancel)).Value;

        Assert.DoesNotContain(brief.Kit.Things, t => t.Contains("chlorhexidine with alcohol", StringComparison.Ordinal));
        Assert.Contains(brief.Kit.Things, t => t.Contains("without chlorhexidine", StringComparison.Ordinal));
        Assert.Contains(brief.Kit.Warnings, w => w.StartsWith("Nothing with chlorhexidine", StringComparison.Ordinal));
    }

    /// <summary>P03's bundle done unplanned on Tuesday 9: Wednesday's visit is offered to be taken out, by who plans, and never by itself.</summary>
    [Fact]
    public async Task A_later_visit_whose_care_is_done_is_offered_and_not_dropped_by_itself()
    {
        await using TestAgency agency = await OpenAsync(Provider.Sqlite, cluster, DemoAgency.At(9, 12, 0));
        VisitBrief planned = (await agency.Ask<AskVisit>().PlannedAsync(Juniper, "2027-03-10-P03", Cancel)).Value;
        VisitEntry entry = Done(planned, null, 9, 10, 8) with { UnplannedBecause = "dressing lifting, called at 07:52" };
        VisitRecord record = (await agency.Ask<RecordVisit>().SignAsync(Juniper, await entry.AnsweredAsync(agency, Juniper), Cancel)).Value;

        ReplacedVisit offered = Assert.Single((await agency.Ask<AskVisit>().RecordAsync(Juniper, record.Id, Cancel)).Value.Replaces);
        Assert.True(offered.MayBeTakenOut);
        Assert.True(await HasAsync(agency, "2027-03-10-P03"));
        Assert.Equal("not-allowed", (await agency.Ask<DropReplacedVisit>().DropAsync(Juniper, record.Id, offered.Visit, Cancel)).Refusal?.Code);
        PersonToTell[] told = [.. (await agency.Ask<DropReplacedVisit>().DropAsync(TestAgency.Coordinator, record.Id, offered.Visit, Cancel)).Value];

        Assert.False(await HasAsync(agency, "2027-03-10-P03"));
        Assert.Equal(["spouse, Clover Zigzagby", "Juniper Brasslock"], told.Select(p => p.Who));
        Assert.Equal("no-longer-replaced", (await agency.Ask<DropReplacedVisit>().DropAsync(TestAgency.Coordinator, record.Id, offered.Visit, Cancel)).Refusal?.Code);
    }

    private static async Task<bool> HasAsync(TestAgency agency, string visit)
    {
        await using AgencyDb db = agency.Open();
        return (await WeekStore.PublishedAsync(db, DemoAgency.FirstDay, Cancel))!.Week.Visits.Any(v => v.Id == visit);
    }
}
