using System.Collections.Immutable;
using HomeLine.Agency.Due;
using HomeLine.Agency.Orders;
using HomeLine.Agency.Roster;
using HomeLine.Agency.Storage;
using HomeLine.Agency.Tests.Storage;
using HomeLine.Agency.WeekPlanning;
using HomeLine.LineCare;
using HomeLine.LineCare.Lines;
using HomeLine.LineCare.Orders;
using HomeLine.LineCare.Scope;
using NodaTime;
using static HomeLine.Agency.Tests.DemoOnDatabase;

namespace HomeLine.Agency.Tests.Orders;

/// <summary>Orders, first visits and exceptions through the real database, on the invented agency's Monday 8 March 06:00.</summary>
public sealed class OrdersTests(PostgresCluster cluster)
{
    private static readonly PatientId P01 = new("P01");
    private static readonly LocalDate Today = new(2027, 3, 8);

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    private static CareOrder Order(OrderKind kind) => new() { Id = "", Patient = P01, Kind = kind, StartsOn = Today, Practitioner = "Practitioner A", Text = "by telephone" };

    private Task<TestAgency> MondayAsync(Provider provider = Provider.Sqlite) => OpenAsync(provider, cluster, DemoAgency.At(8, 6, 0));

    private static Task<Outcome<OrderTaken>> TakeAsync(TestAgency agency, OrderDraft draft, string answer = "") =>
        agency.Ask<TakeOrder>().TakeAsync(Nurse, new OrderEntry(draft, answer), Cancel);

    private static async Task<OrdersOverview> OverviewAsync(TestAgency agency) => (await agency.Ask<AskOrders>().AskAsync(Nurse, Cancel)).Value;

    [Theory]
    [MemberData(nameof(TestAgency.BothProviders), MemberType = typeof(TestAgency))]
    public async Task A_spoken_order_is_read_back_counts_at_once_and_waits_for_its_signature(Provider provider)
    {
        await using TestAgency agency = await MondayAsync(provider);
        CareOrder everySix = Order(OrderKind.Interval) with { Item = CareItem.Dressing, EveryDays = 6 };
        var spoken = new VerbalOrder("", DemoAgency.At(8, 5, 50), "Sorrel Mudlark RN", false);

        Assert.Equal("verbal-order-not-read-back", (await TakeAsync(agency, new OrderDraft(everySix, Verbal: spoken))).Refusal?.Code);
        Assert.Equal("frequency-short-of-interval", (await TakeAsync(agency, new OrderDraft(everySix, Verbal: spoken with { ReadBack = true }))).Refusal?.Code);
        OrderTaken taken = (await TakeAsync(agency, new OrderDraft(everySix, Verbal: spoken with { ReadBack = true }), "the interval stands; visits are asked for")).Value;

        DueRow dressing = (await agency.Ask<AskPatient>().AskAsync(Nurse, P01, Cancel)).Value.Due.First(r => r.Window.Item == CareItem.Dressing);
        Assert.Equal(new LocalDate(2027, 3, 9), dressing.Window.LastDay);
        UnsignedRow waits = Assert.Single((await OverviewAsync(agency)).ToSign);
        Assert.Equal((taken.Order.Id, 0, false), (waits.Order.Id, waits.Waits.AgeInDays, waits.Waits.Overdue));

        await agency.MoveClockAsync(25, 6);
        Assert.True(Assert.Single((await OverviewAsync(agency)).ToSign).Waits is { AgeInDays: 17, Overdue: true });
        var taking = agency.Ask<TakeOrder>();
        Assert.Equal("signed-out-of-range", (await taking.SignAsync(Nurse, taken.Order.Id, new LocalDate(2027, 3, 26), Cancel)).Refusal?.Code);
        Assert.True((await taking.SignAsync(Nurse, taken.Order.Id, new LocalDate(2027, 3, 24), Cancel)).Succeeded);
        Assert.Empty((await OverviewAsync(agency)).ToSign);
        Assert.Equal("not-waiting-for-signature", (await taking.SignAsync(Nurse, taken.Order.Id, new LocalDate(2027, 3, 24), Cancel)).Refusal?.Code);
    }

    /// <summary>The invented agency's courier comes from Monday to Saturday.</summary>
    [Fact]
    public async Task A_Sunday_draw_for_the_courier_asks_who_takes_the_specimen()
    {
        await using TestAgency agency = await MondayAsync();
        CareOrder draw = Order(OrderKind.Labs) with { Weekdays = [IsoDayOfWeek.Monday, IsoDayOfWeek.Sunday], NeedsCourier = true, Skills = ["LAB"] };

        Refusal asked = (await TakeAsync(agency, new OrderDraft(draw))).Refusal!;
        Outcome<OrderTaken> kept = await TakeAsync(agency, new OrderDraft(draw), "the nurse brings it to the laboratory");

        Assert.Equal("no-courier-that-day", asked.Code);
        Assert.Contains("Sunday", asked.Sentence, StringComparison.Ordinal);
        Assert.True(kept.Succeeded);
        Assert.True((await TakeAsync(agency, new OrderDraft(draw with { Weekdays = [IsoDayOfWeek.Saturday] }))).Succeeded);
    }

    /// <summary>As-needed visits need signs and a limit: 42 CFR 409.43(b). An interval is 1 to 365 days: our own limit.</summary>
    [Fact]
    public async Task What_an_order_may_not_say_is_refused()
    {
        await using TestAgency agency = await MondayAsync();
        CareOrder visits = Order(OrderKind.VisitFrequency) with { VisitsPerWeek = 1 };
        CareOrder interval = Order(OrderKind.Interval) with { Item = CareItem.Dressing };

        Assert.Equal("as-needed-without-limit", (await TakeAsync(agency, new OrderDraft(visits, AsNeeded: true, Signs: "lifting"))).Refusal?.Code);
        Assert.Equal("as-needed-without-signs", (await TakeAsync(agency, new OrderDraft(visits with { AsNeededVisits = 3 }, AsNeeded: true))).Refusal?.Code);
        foreach (int days in (int[])[0, -1, 366])
            Assert.Equal("order-interval-out-of-range", (await TakeAsync(agency, new OrderDraft(interval with { EveryDays = days }))).Refusal?.Code);
        Assert.Equal("order-ends-before-start", (await TakeAsync(agency, new OrderDraft(interval with { EveryDays = 6, EndsOn = Today.PlusDays(-1) }))).Refusal?.Code);
        Assert.Equal("not-allowed", (await agency.Ask<TakeOrder>().TakeAsync(TestAgency.Coordinator, new OrderEntry(new OrderDraft(visits)), Cancel)).Refusal?.Code);
    }

    /// <summary>P03's published visit is on Wednesday 10 March from 13:12 to 14:27.</summary>
    [Fact]
    public async Task An_order_spoken_during_the_visit_is_kept_and_marked_so()
    {
        await using TestAgency agency = await OpenAsync(Provider.Sqlite, cluster, DemoAgency.At(10, 13, 20));
        CareOrder visits = Order(OrderKind.VisitFrequency) with { Patient = new PatientId("P03"), VisitsPerWeek = 2, StartsOn = new LocalDate(2027, 3, 10) };
        var spoken = new VerbalOrder("", DemoAgency.At(10, 13, 12), "Juniper Brasslock RN", true);

        OrderTaken taken = (await TakeAsync(agency, new OrderDraft(visits, Verbal: spoken))).Value;

        Assert.Contains(taken.Told, r => r.Code == OrderCodes.AfterVisitStart);
    }

    [Fact]
    public async Task A_looser_order_is_kept_told_and_does_not_count_until_it_is_confirmed()
    {
        await using TestAgency agency = await MondayAsync();

        OrderTaken taken = (await TakeAsync(agency, new OrderDraft(Order(OrderKind.Interval) with { Item = CareItem.Dressing, EveryDays = 14 }))).Value;

        Assert.Contains(taken.Told, r => r.Code == DecisionCodes.LooserOrder);
        PatientOverview patient = (await agency.Ask<AskPatient>().AskAsync(Nurse, P01, Cancel)).Value;
        Assert.Equal(new LocalDate(2027, 3, 10), patient.Due.First(r => r.Window.Item == CareItem.Dressing).Window.LastDay);
        Assert.Contains(patient.Decisions, d => d.Code == DecisionCodes.LooserOrder);
    }

    [Fact]
    public async Task Orders_that_end_are_listed_with_their_notice_and_a_renewal_takes_them_off()
    {
        await using TestAgency agency = await MondayAsync();
        EndingRow ending = Assert.Single((await OverviewAsync(agency)).Ending, e => e.Ending.Order.Patient.Value == "P18" && e.Ending.Order.Kind == OrderKind.VisitFrequency);
        Assert.Equal((2, 3), (ending.Ending.DaysLeft, ending.Ending.Notice));

        CareOrder renewal = Order(OrderKind.VisitFrequency) with { Patient = new PatientId("P18"), VisitsPerWeek = 1, StartsOn = new LocalDate(2027, 3, 11), EndsOn = new LocalDate(2027, 5, 9) };
        Assert.True((await TakeAsync(agency, new OrderDraft(renewal))).Succeeded);

        Assert.DoesNotContain((await OverviewAsync(agency)).Ending, e => e.Ending.Order.Id == ending.Ending.Order.Id);
    }

    /// <summary>Within 48 hours of the referral, or on the ordered day: 42 CFR 484.55(a)(1).</summary>
    [Theory]
    [MemberData(nameof(TestAgency.BothProviders), MemberType = typeof(TestAgency))]
    public async Task A_referral_runs_for_forty_eight_hours_and_without_a_time_from_its_entry(Provider provider)
    {
        await using TestAgency agency = await MondayAsync(provider);
        var keeping = agency.Ask<KeepReferral>();
        Assert.Equal("referral-name-missing", (await keeping.AddAsync(TestAgency.Coordinator, new ReferralEntry(" ", null, null, null, ""), Cancel)).Refusal?.Code);
        Assert.Equal("referred-in-future", (await keeping.AddAsync(TestAgency.Coordinator, new ReferralEntry("V.", DemoAgency.At(8, 9, 0), null, null, ""), Cancel)).Refusal?.Code);
        Assert.True((await keeping.AddAsync(TestAgency.Coordinator, new ReferralEntry("Vervain Thistlecomb", DemoAgency.At(7, 16, 0), null, null, ""), Cancel)).Succeeded);
        Referral untimed = (await keeping.AddAsync(TestAgency.Coordinator, new ReferralEntry("Somebody Invented", null, null, null, ""), Cancel)).Value;

        ImmutableArray<FirstVisitRow> rows = (await agency.Ask<AskOrders>().FirstVisitsAsync(Nurse, Cancel)).Value;

        Assert.Equal([(DemoAgency.At(9, 16, 0), false), (DemoAgency.At(10, 6, 0), true)], rows.Select(r => (r.Due.By, r.Due.Assumed)));
        Assert.Equal("referral-reason-missing", (await keeping.CloseAsync(TestAgency.Coordinator, untimed.Id, "", Cancel)).Refusal?.Code);
        Assert.True((await keeping.CloseAsync(TestAgency.Coordinator, untimed.Id, "declined: out of area", Cancel)).Succeeded);
        Assert.Equal("referral-closed", (await keeping.CloseAsync(TestAgency.Coordinator, untimed.Id, "again", Cancel)).Refusal?.Code);
        await agency.MoveClockAsync(9, 16);
        Assert.True(Assert.Single((await agency.Ask<AskOrders>().FirstVisitsAsync(Nurse, Cancel)).Value).IsLate);
    }

    [Fact]
    public async Task An_exception_has_an_owner_a_reason_and_an_end_and_a_new_one_takes_its_place()
    {
        await using TestAgency agency = await MondayAsync();
        var excepting = agency.Ask<ExceptPatient>();
        var entry = new ExceptionEntry(P01, "dressing.film.max", 5, "H. Educator RN", null, "fragile skin");

        Assert.Equal("exception-unowned", (await excepting.ExceptAsync(ClinicalLead, entry with { Owner = "" }, Cancel)).Refusal?.Code);
        Assert.Equal("exception-too-long", (await excepting.ExceptAsync(ClinicalLead, entry with { Through = Today.PlusDays(91) }, Cancel)).Refusal?.Code);
        Assert.Equal("not-allowed", (await excepting.ExceptAsync(Nurse, entry, Cancel)).Refusal?.Code);
        Assert.Equal(Today.PlusDays(90), (await excepting.ExceptAsync(ClinicalLead, entry, Cancel)).Value.Exception.Through);
        Assert.True((await excepting.ExceptAsync(ClinicalLead, entry with { Value = 6, Through = Today.PlusDays(1) }, Cancel)).Succeeded);

        ExceptionRow row = Assert.Single((await OverviewAsync(agency)).Exceptions);
        Assert.Equal((6m, "7 days"), (row.Exception.Value, row.PolicyValue));
        await agency.MoveClockAsync(10, 6);
        Assert.Empty((await OverviewAsync(agency)).Exceptions);
    }

    /// <summary>Orders count weeks from Sunday (common practice, no source): of the week of Sunday 7 March one visit is planned and one ordered.</summary>
    [Fact]
    public async Task The_frequency_ledger_stands_beside_the_clocks()
    {
        await using TestAgency agency = await MondayAsync();

        FrequencyLedger ledger = Assert.Single((await agency.Ask<AskPatient>().AskAsync(Nurse, P01, Cancel)).Value.Frequency);

        Assert.Equal((new LocalDate(2027, 3, 7), (int?)2), (ledger.ThisWeek, ledger.AsNeededLeft));
        Assert.Equal((1, 1, FrequencyStanding.Met), ledger.Weeks.Where(w => w.FirstDay == ledger.ThisWeek).Select(w => (w.Visits, w.Ordered, w.Standing)).Single());
    }

    /// <summary>Minutes before and after by policy, common practice; what a first dose at home needs: IDSA outpatient parenteral antimicrobial guideline 2018, second hand.</summary>
    [Fact]
    public async Task A_first_dose_is_not_planned_before_history_kit_and_drug_are_there()
    {
        await using TestAgency agency = await MondayAsync();
        CareOrder dose = Order(OrderKind.NurseDose) with { Text = "first dose", Dates = [new LocalDate(2027, 3, 10)], FirstDose = new FirstDoseFacts(false, null, 60) };

        OrderTaken taken = (await TakeAsync(agency, new OrderDraft(dose))).Value;

        Assert.Equal(["first-dose-history", "first-dose-kit", "first-dose-drug"], taken.Told.Select(t => t.Code));
        Assert.Equal((120, true), (taken.Order.WorkMinutes, taken.Order.Skills.Contains("FD")));
        Assert.Equal(["first-dose-history", "first-dose-kit", "first-dose-drug"], (await UnmetAsync()).SelectMany(u => u.Reasons).Select(r => r.Code));

        var facts = new FirstDoseFacts(true, new LocalDate(2027, 3, 9), 60);
        var van = new LocalDateTime(2027, 3, 9, 18, 0);
        Assert.Equal("first-dose-kit-expired", Assert.Single((await CompleteAsync(facts)).Told).Code);
        Assert.Empty((await CompleteAsync(facts with { KitGoodThrough = new LocalDate(2027, 6, 30) })).Told);
        Assert.Empty(await UnmetAsync());
        Assert.Equal("no-first-dose", (await agency.Ask<TakeOrder>().CompleteFirstDoseAsync(Nurse, "P01-visits", facts, van, Cancel)).Refusal?.Code);

        async Task<OrderTaken> CompleteAsync(FirstDoseFacts known) => (await agency.Ask<TakeOrder>().CompleteFirstDoseAsync(Nurse, taken.Order.Id, known, van, Cancel)).Value;

        async Task<IEnumerable<UnmetNeed>> UnmetAsync()
        {
            await using AgencyDb db = agency.Open();
            AgencyRoster roster = await RosterReader.ReadAsync(db, Cancel);
            return WeekDemand.Of(roster, CareFiles.Of(roster), Today, 7, DemoAgency.At(8, 6, 0)).NotPlannable.Where(u => u.Patient == P01);
        }
    }
}
