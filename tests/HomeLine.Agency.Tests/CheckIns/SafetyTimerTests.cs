using HomeLine.Agency.Access;
using HomeLine.Agency.CheckIns;
using HomeLine.Agency.Tests.Storage;
using HomeLine.Agency.Today;
using HomeLine.Agency.Visits;
using static HomeLine.Agency.Tests.DemoOnDatabase;

namespace HomeLine.Agency.Tests.CheckIns;

/// <summary>Wednesday 15:00 at the unlit lane of the demonstration, an hour, two people. Our own scenario, invented throughout.</summary>
public sealed class SafetyTimerTests(PostgresCluster cluster)
{
    private const string Visit = "2027-03-10-P16";

    private static readonly Actor Juniper = new("u-n1", "Juniper", [AgencyRole.Nurse], "N1");

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    private static async Task<MissedCheckIn[]> MissedAsync(TestAgency agency) =>
        [.. (await agency.Ask<AskToday>().AskAsync(TestAgency.Coordinator, Cancel)).Value.MissedCheckIns];

    [Theory]
    [MemberData(nameof(TestAgency.BothProviders), MemberType = typeof(TestAgency))]
    public async Task Without_a_sign_of_arrival_Today_says_so_and_names_whom_to_call(Provider provider)
    {
        await using TestAgency agency = await OpenAsync(provider, cluster, DemoAgency.At(10, 16, 14));
        Assert.Empty(await MissedAsync(agency));

        // The told hour from 15:00, and fifteen minutes.
        await agency.MoveClockAsync(10, 16, 15);

        MissedCheckIn missed = Assert.Single(await MissedAsync(agency));
        Assert.Equal("No sign that Juniper Brasslock and Bramble Quickstile arrived at Pimpernel Flapstone, Wed 10 Mar 15:00: due by 16:15.", missed.Sentence);
        Assert.Equal(["Juniper Brasslock", "Bramble Quickstile", "Pimpernel Flapstone", "clinical manager on call"], missed.Calls.Select(c => c.Who));
        Assert.Equal(DemoAgency.Roster.Profile.EmergencyNumber, missed.EmergencyNumber);
    }

    [Fact]
    public async Task Arrived_and_not_out_again_in_time_is_said_and_a_sign_ends_it()
    {
        await using TestAgency agency = await OpenAsync(Provider.Sqlite, cluster, DemoAgency.At(10, 15, 5));
        var signs = agency.Ask<KeepCheckIn>();
        Assert.True((await signs.KeepAsync(Juniper, Visit, isOut: false, Cancel)).Succeeded);
        Assert.True((await signs.KeepAsync(Juniper, Visit, isOut: false, Cancel)).Succeeded);

        await agency.MoveClockAsync(10, 16, 20);
        string sentence = Assert.Single(await MissedAsync(agency)).Sentence;
        MyStop stop = (await agency.Ask<AskMyDay>().AskAsync(Juniper, null, null, Cancel)).Value.Stops.Single(s => s.Visit.Id == Visit);
        Assert.True((await signs.KeepAsync(Juniper, Visit, isOut: true, Cancel)).Succeeded);

        Assert.Equal("No sign that Juniper Brasslock and Bramble Quickstile are out again at Pimpernel Flapstone: due by 16:20.", sentence);
        Assert.True(stop is { AsksForSigns: true, OutAt: null, ArrivedAt: not null });
        Assert.Empty(await MissedAsync(agency));
    }

    [Fact]
    public async Task A_sign_that_cannot_be_is_refused_in_words()
    {
        await using TestAgency agency = await OpenAsync(Provider.Sqlite, cluster, DemoAgency.At(10, 9, 0));
        async Task<string?> CodeAsync(Actor actor, string visit) => (await agency.Ask<KeepCheckIn>().KeepAsync(actor, visit, isOut: false, Cancel)).Refusal?.Code;

        Assert.Equal("visit-not-found", await CodeAsync(Juniper, "2027-03-09-P12"));
        Assert.Equal("check-in-not-yours", await CodeAsync(Nurse, Visit));
        Assert.Equal("check-in-not-asked", await CodeAsync(Juniper, DemoAgency.Published.Visits.First(v => v.Day.Day == 10 && v.Nurse == "N1" && v.Id != Visit).Id));
        Assert.Equal("not-allowed", await CodeAsync(TestAgency.Coordinator, Visit));
    }
}
