using HomeLine.Agency.Access;
using HomeLine.Agency.CheckIns;
using HomeLine.Agency.Roster;
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

    /// <summary>P12, Tuesday 08:08 with Juniper alone, told from 08:00: C12 of homes where she goes by daylight or escorted only.</summary>
    [Theory]
    [MemberData(nameof(TestAgency.BothProviders), MemberType = typeof(TestAgency))]
    public async Task A_home_may_ask_a_nurse_who_goes_alone_for_signs_and_a_missed_one_alarms_the_same_way(Provider provider)
    {
        await using TestAgency agency = await OpenAsync(provider, cluster, DemoAgency.At(9, 8, 0));
        var alone = DemoAgency.Published.Visits.Single(v => v.Id == "2027-03-09-P12");
        var homes = agency.Ask<AskHomeForSigns>();
        Assert.True((await homes.KeepAsync(Juniper, alone.Patient, asks: true, "unlit yard, by daylight only", Cancel)).Value.AsksForSigns);
        MyStop stop = (await agency.Ask<AskMyDay>().AskAsync(Juniper, null, null, Cancel)).Value.Stops.Single(s => s.Visit.Id == alone.Id);
        Assert.True(stop is { AsksForSigns: true, IsForTwo: false });
        Assert.Contains("Give a sign on arrival", string.Join(' ', stop.Sheet.Unusual), StringComparison.Ordinal);

        await agency.MoveClockAsync(9, 9, 30);
        MissedCheckIn missed = Assert.Single(await MissedAsync(agency));
        Assert.StartsWith("No sign that Juniper Brasslock arrived at Larkspur Cogglewick", missed.Sentence, StringComparison.Ordinal);
        Assert.Equal(1, missed.People);

        Assert.True((await agency.Ask<KeepCheckIn>().KeepAsync(Juniper, alone.Id, isOut: true, Cancel)).Succeeded);
        Assert.Empty(await MissedAsync(agency));
    }

    [Fact]
    public async Task Asking_a_home_for_signs_needs_a_reason_is_written_down_and_outlives_an_import()
    {
        await using TestAgency agency = await OpenAsync(Provider.Sqlite, cluster, DemoAgency.At(9, 8, 0));
        var homes = agency.Ask<AskHomeForSigns>();
        var p12 = new LineCare.Lines.PatientId("P12");

        Assert.Equal("signs-reason-missing", (await homes.KeepAsync(Juniper, p12, asks: true, " ", Cancel)).Refusal?.Code);
        Assert.Equal("signs-by-two", (await homes.KeepAsync(Juniper, new LineCare.Lines.PatientId("P16"), asks: true, "dark", Cancel)).Refusal?.Code);
        Assert.Equal("patient-unknown", (await homes.KeepAsync(Juniper, new LineCare.Lines.PatientId("P99"), asks: true, "dark", Cancel)).Refusal?.Code);
        Assert.Equal("not-allowed", (await homes.KeepAsync(TestAgency.Administrator, p12, asks: true, "dark", Cancel)).Refusal?.Code);

        Assert.True((await homes.KeepAsync(Juniper, p12, asks: true, "dark", Cancel)).Succeeded);
        RosterChange import = (await agency.Ask<ImportRoster>().PreviewAsync(TestAgency.Coordinator, DemoAgency.Roster, Cancel)).Value;
        Assert.DoesNotContain(import.Rows, r => r is { Kind: "patient", Key: "P12", State: RowState.Changed });
        Assert.True((await homes.KeepAsync(Juniper, p12, asks: false, "a lamp was put up", Cancel)).Succeeded);
    }
}
