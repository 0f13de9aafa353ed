using System.Collections.Immutable;
using HomeLine.Agency.Absence;
using HomeLine.Agency.Due;
using HomeLine.Agency.Orders;
using HomeLine.Agency.Tests.Storage;
using HomeLine.LineCare.Ledger;
using HomeLine.LineCare.Lines;
using HomeLine.LineCare.Travel;
using HomeLine.LineCare.Windows;
using NodaTime;
using static HomeLine.Agency.Tests.DemoOnDatabase;

namespace HomeLine.Agency.Tests.Absence;

/// <summary>Holds and returns through the real database. P11 went to hospital on Saturday 6 March; film of Monday 1 March; invented data.</summary>
public sealed class KeepAbsenceTests(PostgresCluster cluster)
{
    private static readonly PatientId P11 = new("P11");
    private static readonly PatientId P01 = new("P01");
    private static readonly LineId Picc = new("P11-1");

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    private static async Task<PatientOverview> PatientAsync(TestAgency agency, PatientId patient) => (await agency.Ask<AskPatient>().AskAsync(Nurse, patient, Cancel)).Value;

    private static ReturnEntry Home(params ImmutableArray<ReconciledItem> items) => new(P11, DemoAgency.At(10, 11, 0), items);

    [Theory]
    [MemberData(nameof(TestAgency.BothProviders), MemberType = typeof(TestAgency))]
    public async Task On_return_a_date_read_off_the_dressing_counts_and_what_nobody_knows_has_no_date(Provider provider)
    {
        await using TestAgency agency = await OpenAsync(provider, cluster, DemoAgency.At(10, 12, 0));

        Assert.True((await agency.Ask<KeepAbsence>().ReturnAsync(Nurse, Home(
            new ReconciledItem(Picc, CareItem.Dressing, null, new LocalDate(2027, 3, 8), Certainty.WrittenOnDressing, DressingKind.Film),
            new ReconciledItem(Picc, CareItem.Connector, "A", null, Certainty.Guess)), Cancel)).Succeeded);

        PatientOverview patient = await PatientAsync(agency, P11);
        Assert.Null(patient.OnHold);
        Assert.Equal(new LocalDate(2027, 3, 15), patient.Due.First(r => r.Window.Item == CareItem.Dressing).Window.LastDay);
        Assert.Equal(WindowStanding.DateUnknown, patient.Due.First(r => r.Window.Item == CareItem.Connector).Window.Standing);
        Assert.Contains("No date known: Connector P11-1 A", Assert.Single(patient.Ledger, e => e.Kind == LineEventKind.ReturnedHome).Note, StringComparison.Ordinal);
    }

    /// <summary>Worked example 10 of the trade's arithmetic: film Monday 1, admitted Saturday 6, home Wednesday 10 with no date: due at the first contact.</summary>
    [Fact]
    public async Task Home_without_a_date_is_due_at_the_first_contact_and_a_nurse_is_owed_within_forty_eight_hours()
    {
        await using TestAgency agency = await OpenAsync(Provider.Sqlite, cluster, DemoAgency.At(10, 12, 0));

        Assert.True((await agency.Ask<KeepAbsence>().ReturnAsync(Nurse, Home(), Cancel)).Succeeded);

        Assert.Equal(Urgency.DateUnknown, (await PatientAsync(agency, P11)).Due.First(r => r.Window.Item == CareItem.Dressing).Urgency);
        FirstVisitRow owed = Assert.Single((await agency.Ask<AskOrders>().FirstVisitsAsync(Nurse, Cancel)).Value);
        Assert.Equal((P11, DemoAgency.At(12, 11, 0)), (owed.Patient!.Value, owed.Due.By));
    }

    [Fact]
    public async Task A_hold_without_a_first_day_starts_today_and_says_so()
    {
        await using TestAgency agency = await OpenAsync(Provider.Sqlite, cluster, DemoAgency.At(8, 6, 0));
        var keeping = agency.Ask<KeepAbsence>();

        KeptHold kept = (await keeping.HoldAsync(TestAgency.Coordinator, new HoldEntry(P01, false, null, null, "with the daughter"), Cancel)).Value;

        Assert.Equal(new LocalDate(2027, 3, 8), kept.Hold.From);
        Assert.Contains("starts today", kept.Flag, StringComparison.Ordinal);
        PatientOverview patient = await PatientAsync(agency, P01);
        Assert.Equal("with the daughter", patient.OnHold?.Reason);
        Assert.All(patient.Due, r => Assert.Equal(Urgency.OnHold, r.Urgency));
        Assert.Equal("on-hold-already", (await keeping.HoldAsync(TestAgency.Coordinator, new HoldEntry(P01, true, null, null, ""), Cancel)).Refusal?.Code);
        Assert.True((await keeping.ReturnAsync(TestAgency.Coordinator, new ReturnEntry(P01, DemoAgency.At(8, 5, 0), []), Cancel)).Refusal is null);
    }

    [Fact]
    public async Task What_cannot_be_is_refused()
    {
        await using TestAgency agency = await OpenAsync(Provider.Sqlite, cluster, DemoAgency.At(10, 12, 0));
        var keeping = agency.Ask<KeepAbsence>();

        Assert.Equal("not-on-hold", (await keeping.ReturnAsync(Nurse, Home() with { Patient = P01 }, Cancel)).Refusal?.Code);
        Assert.Equal("home-out-of-range", (await keeping.ReturnAsync(Nurse, Home() with { HomeAt = DemoAgency.At(5, 9, 0) }, Cancel)).Refusal?.Code);
        Assert.Equal("home-out-of-range", (await keeping.ReturnAsync(Nurse, Home() with { HomeAt = DemoAgency.At(10, 13, 0) }, Cancel)).Refusal?.Code);
        Assert.Equal("reconciled-in-future", (await keeping.ReturnAsync(Nurse, Home(
            new ReconciledItem(Picc, CareItem.Dressing, null, new LocalDate(2027, 3, 11), Certainty.DischargePaper)), Cancel)).Refusal?.Code);
        Assert.Equal("hold-in-future", (await keeping.HoldAsync(Nurse, new HoldEntry(P01, true, new LocalDate(2027, 3, 11), null, ""), Cancel)).Refusal?.Code);
        Assert.Equal("hold-ends-before-start", (await keeping.HoldAsync(Nurse, new HoldEntry(P01, false, new LocalDate(2027, 3, 12), new LocalDate(2027, 3, 11), ""), Cancel)).Refusal?.Code);
    }

    /// <summary>P01's film of Wednesday 3 March is late after Wednesday 10: it falls due while she is away.</summary>
    [Theory]
    [MemberData(nameof(TestAgency.BothProviders), MemberType = typeof(TestAgency))]
    public async Task A_stay_elsewhere_names_what_falls_due_there_and_whether_anybody_is_licensed(Provider provider)
    {
        await using TestAgency agency = await OpenAsync(provider, cluster, DemoAgency.At(8, 6, 0));
        var keeping = agency.Ask<KeepAbsence>();
        var place = new Elsewhere("Farstate", "America/Los_Angeles", "3 Lantern Row", "555-0140");
        var entry = new HoldEntry(P01, false, new LocalDate(2027, 3, 9), new LocalDate(2027, 3, 15), "with the daughter", place);

        Assert.Equal("stay-without-end", (await keeping.HoldAsync(TestAgency.Coordinator, entry with { Through = null }, Cancel)).Refusal?.Code);
        Assert.Equal("zone-unknown", (await keeping.HoldAsync(TestAgency.Coordinator, entry with { Elsewhere = place with { ZoneId = "Farstate/Nowhere" } }, Cancel)).Refusal?.Code);
        KeptHold kept = (await keeping.HoldAsync(TestAgency.Coordinator, entry, Cancel)).Value;

        Assert.Contains(kept.Told, told => told.Code == "stay-unlicensed");
        Assert.Contains(kept.Told, told => told.Code == "due-while-away" && told.Sentence.Contains("Wed 10 Mar", StringComparison.Ordinal));
        await agency.MoveClockAsync(10, 12);
        Assert.Equal(place, (await PatientAsync(agency, P01)).OnHold?.Elsewhere);
    }

    /// <summary>The day of a date clock is that of the place: at 01:00 on the 11th at home it is still the 10th three hours west.</summary>
    [Fact]
    public async Task Days_are_counted_where_the_patient_is()
    {
        await using TestAgency agency = await OpenAsync(Provider.Sqlite, cluster, DemoAgency.At(8, 6, 0));
        var place = new Elsewhere("Westling", "America/Los_Angeles");
        await agency.Ask<KeepAbsence>().HoldAsync(
            TestAgency.Coordinator, new HoldEntry(P01, false, new LocalDate(2027, 3, 9), new LocalDate(2027, 3, 15), "away", place), Cancel);

        DueRow dressing = (await PatientAsync(agency, P01)).Due.First(r => r.Window.Item == CareItem.Dressing);

        Assert.Equal(DemoAgency.At(11, 3, 0), dressing.Window.LateFrom);
    }
}
