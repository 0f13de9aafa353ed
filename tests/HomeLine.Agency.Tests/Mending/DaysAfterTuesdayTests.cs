using HomeLine.Agency.Access;
using HomeLine.Agency.Due;
using HomeLine.Agency.Mending;
using HomeLine.Agency.Orders;
using HomeLine.Agency.Tests.Storage;
using HomeLine.Agency.Visits;
using HomeLine.Agency.WeekEditing;
using HomeLine.Agency.WeekPlanning;
using HomeLine.LineCare;
using HomeLine.LineCare.Ledger;
using HomeLine.LineCare.Lines;
using HomeLine.LineCare.Orders;
using HomeLine.LineCare.Windows;
using NodaTime;
using static HomeLine.Agency.Tests.DemoOnDatabase;
using static HomeLine.Agency.Tests.Visits.VisitOf;

namespace HomeLine.Agency.Tests.Mending;

/// <summary>Wednesday to Saturday of the demonstration week, one story each, through the real database. What should happen was worked out by hand; our own scenario, invented throughout.</summary>
public sealed class DaysAfterTuesdayTests(PostgresCluster cluster)
{
    private static readonly Actor Bramble = new("u-n6", "Bramble", [AgencyRole.Nurse], "N6");
    private static readonly Actor Saffron = new("u-n7", "Saffron", [AgencyRole.Nurse], "N7");
    private static readonly LocalDate Friday = new(2027, 3, 12);

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    private static async Task<PatientOverview> PatientAsync(TestAgency agency, string patient) =>
        (await agency.Ask<AskPatient>().AskAsync(Juniper, new PatientId(patient), Cancel)).Value;

    private static async Task<DueWindow> WindowAsync(TestAgency agency, string patient, CareItem item) =>
        (await PatientAsync(agency, patient)).Due.First(r => r.Window.Item == item).Window;

    private static async Task<VisitRecord> SignAsync(TestAgency agency, Actor nurse, VisitEntry entry)
    {
        Outcome<VisitRecord> signed = await agency.Ask<RecordVisit>().SignAsync(nurse, await entry.AnsweredAsync(agency, nurse), Cancel);
        Assert.True(signed.Succeeded, signed.Refusal?.ToString());
        return signed.Value;
    }

    [Theory]
    [MemberData(nameof(TestAgency.BothProviders), MemberType = typeof(TestAgency))]
    public async Task A_refused_dressing_that_is_accepted_on_Monday_is_done_late_and_counts_from_then(Provider provider)
    {
        await using TestAgency agency = await OpenAsync(provider, cluster, DemoAgency.At(8, 14, 0));
        Actor rowan = new("u-n2", "Rowan", [AgencyRole.Nurse], "N2");

        await SignAsync(agency, rowan, await DoneAsync(agency, rowan, Tuesday.Visit(8, "P30"), 8, 12, 32));

        PatientOverview patient = await PatientAsync(agency, "P30");
        Assert.Equal(new LocalDate(2027, 3, 15), patient.Due.First(r => r.Window.Item == CareItem.Dressing).Window.LastDay);
        // The refusal stays in the record beside the change: why it was late can be read.
        Assert.Contains(patient.Ledger, e => e.Kind == LineEventKind.Refused && e.Performed!.Value.Date == new LocalDate(2027, 3, 3));
    }

    [Theory]
    [InlineData("N1")]
    [InlineData("N6")]
    public async Task Whoever_of_the_two_cannot_come_nobody_goes_to_the_two_person_visit_alone(string nurse)
    {
        await using TestAgency agency = await OpenAsync(Provider.Sqlite, cluster, DemoAgency.At(10, 6, 30));
        WeekVisit pair = (await agency.WeekAsync()).Visits.Single(v => v.Patient.Value == "P16");
        Assert.Equal((new LocalTime(15, 0), "N1", "N6"), (pair.Start, pair.Nurse, pair.Second));

        FiledTrouble trouble = await agency.ReportAsync(new NurseIsOut(nurse, new LocalDateTime(2027, 3, 10, 0, 0), new LocalDate(2027, 3, 10), "ill"));

        Assert.Contains("two people", trouble.Offer!.CannotWait.Single(b => b.Visit.Patient.Value == "P16").Waits, StringComparison.Ordinal);
        Assert.NotEmpty(trouble.Offer.Answers);
        foreach (MendAnswer answer in trouble.Offer.Answers)
        {
            if (answer.Of("P16").After is { } after)
            {
                Assert.NotNull(after.Second);
                if (after.Day.Day == 10) Assert.DoesNotContain(nurse, new[] { after.Nurse, after.Second });
                // By daylight: the visit starts at 15:00 at the latest.
                Assert.InRange(after.Start, new LocalTime(9, 0), new LocalTime(15, 0));
            }
            else
            {
                Assert.Contains(answer.Unmet, u => u.Who.StartsWith("Pimpernel", StringComparison.Ordinal));
            }
        }
    }

    [Theory]
    [MemberData(nameof(TestAgency.BothProviders), MemberType = typeof(TestAgency))]
    public async Task Without_the_clinics_report_by_Thursday_18_00_a_visit_of_our_own_on_Friday_is_proposed(Provider provider)
    {
        await using TestAgency agency = await OpenAsync(provider, cluster, DemoAgency.At(11, 17, 59));
        Assert.Equal(PerformerKind.Outside, (await WindowAsync(agency, "P13", CareItem.Dressing)).Owner);

        await agency.MoveClockAsync(11, 18, 0);

        DueWindow ours = await WindowAsync(agency, "P13", CareItem.Dressing);
        Assert.Equal((PerformerKind.Nurse, new LocalDate(2027, 3, 11)), (ours.Owner, ours.LastDay));
        var editing = agency.Ask<EditWeek>();
        WorkingWeek week = (await editing.OpenAsync(TestAgency.Coordinator, DemoAgency.FirstDay, Cancel)).Value;
        string need = week.Hand.Unmet.First(t => t.Patient == "P13").Id;
        var places = (await editing.PlacesOfNeedAsync(TestAgency.Coordinator, DemoAgency.FirstDay, week.Revision, need, Cancel)).Value;
        Assert.Contains(places, p => p.Day == Friday);
        // Nobody is sent before the clinic's time to report is over.
        Assert.All(places, p => Assert.True(p.Day.At(p.Start) >= new LocalDateTime(2027, 3, 11, 18, 0)));
    }

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public async Task Once_the_line_is_out_all_its_clocks_stop_and_only_the_site_is_asked_about_on_Friday(bool lookedAtTheSite)
    {
        await using TestAgency agency = await OpenAsync(Provider.Sqlite, cluster, DemoAgency.At(11, 12, 0));
        VisitEntry entry = (await DoneAsync(agency, Juniper, Tuesday.Visit(11, "P19"), 11, 10, 16))
            .ButLine(l => l with { Looked = lookedAtTheSite, OutsideLength = null, RemovedLengthCm = 43 });
        Assert.Null((await agency.Ask<RecordVisit>().CheckAsync(Juniper, entry, null, Cancel)).Value.Stop);

        await SignAsync(agency, Juniper, entry);

        PatientOverview patient = await PatientAsync(agency, "P19");
        Assert.Empty(patient.InPlace);
        Assert.DoesNotContain(patient.Decisions, d => d.Code == DecisionCodes.RemovedShorter);
        DueWindow site = Assert.Single(patient.Due, r => r.Window.Line == new LineId("P19-1")).Window;
        Assert.Equal((CareItem.RemovalSiteCheck, Friday), (site.Item, site.OpensOn));
        // By phone: no nurse is sent for it.
        Assert.DoesNotContain((await agency.Ask<EditWeek>().OpenAsync(TestAgency.Coordinator, DemoAgency.FirstDay, Cancel)).Value.Hand.Unmet, t => t.Patient == "P19");
    }

    [Fact]
    public async Task A_catheter_that_comes_out_shorter_than_it_went_in_is_an_emergency()
    {
        await using TestAgency agency = await OpenAsync(Provider.Sqlite, cluster, DemoAgency.At(11, 12, 0));
        VisitEntry entry = (await DoneAsync(agency, Juniper, Tuesday.Visit(11, "P19"), 11, 10, 16))
            .ButLine(l => l with { Looked = false, OutsideLength = null, RemovedLengthCm = 40 });

        VisitStop stop = (await agency.Ask<RecordVisit>().CheckAsync(Juniper, entry, null, Cancel)).Value.Stop!;

        Assert.StartsWith("Call ", stop.Wording[0], StringComparison.Ordinal);
        await SignAsync(agency, Juniper, entry);
        Assert.Contains((await PatientAsync(agency, "P19")).Decisions, d => d.Code == DecisionCodes.RemovedShorter);
    }

    [Fact]
    public async Task A_series_of_lessons_shifts_by_an_evening_and_Thursdays_dressing_stays()
    {
        await using TestAgency agency = await OpenAsync(Provider.Sqlite, cluster, DemoAgency.At(9, 16, 20));
        var editing = agency.Ask<EditWeek>();
        WorkingWeek week = (await editing.OpenAsync(TestAgency.Coordinator, DemoAgency.FirstDay, Cancel)).Value;
        week = (await editing.MakeAsync(TestAgency.Coordinator, DemoAgency.FirstDay, week.Revision, new HandEdit.TakeOut(Tuesday.Visit(9, "P54")), Cancel)).Value;
        CareOrder lessons = DemoAgency.Roster.Orders.Single(o => o.Patient.Value == "P54" && o.Kind == OrderKind.Teaching);
        Outcome<OrderTaken> taken = await agency.Ask<TakeOrder>().TakeAsync(
            Nurse, new OrderEntry(new OrderDraft(lessons with { Id = "", StartsOn = Tuesday.Day, Dates = [Friday] }), "his wife is ill; the third evening is on Friday"), Cancel);
        Assert.True(taken.Succeeded, taken.Refusal?.ToString());

        week = (await editing.OpenAsync(TestAgency.Coordinator, DemoAgency.FirstDay, Cancel)).Value;

        var places = new List<WorkingPlace>();
        foreach (string need in week.Hand.Unmet.Where(t => t.Patient == "P54").Select(t => t.Id))
            places.AddRange((await editing.PlacesOfNeedAsync(TestAgency.Coordinator, DemoAgency.FirstDay, week.Revision, need, Cancel)).Value);
        // 17:00 to 17:30 where he lives is 18:00 to 18:30 at the branch.
        Assert.Contains(places, p => p.Day == Friday && p.Nurse == "N6" && p.Start >= new LocalTime(18, 0) && p.Start <= new LocalTime(18, 30));
        WeekVisit third = week.Week.Visits.Single(v => v.Patient.Value == "P54" && v.Day == new LocalDate(2027, 3, 11));
        Assert.Contains(third.Care, c => c.Key.Contains("Dressing", StringComparison.Ordinal));
        Assert.Contains(third.Care, c => c.Key.Contains("P54-lessons", StringComparison.Ordinal));
    }

    [Fact]
    public async Task A_third_lesson_that_still_needed_prompts_validates_nobody()
    {
        await using TestAgency agency = await OpenAsync(Provider.Sqlite, cluster, DemoAgency.At(11, 20, 30));
        VisitEntry entry = await DoneAsync(agency, Bramble, Tuesday.Visit(11, "P54"), 11, 17, 0);
        entry = entry with { Teaching = [new TeachBack("wife", CareItem.Set, new LineId("P54-1"), TeachLevel.WithPrompts, false)] };

        await SignAsync(agency, Bramble, entry);

        Assert.DoesNotContain((await PatientAsync(agency, "P54")).Caregivers, c => c.Person == "wife" && c.ValidThrough >= new LocalDate(2027, 3, 11));
    }

    [Fact]
    public async Task Four_centimetres_outside_lock_the_line_ask_for_a_decision_and_say_nothing_of_infusing()
    {
        await using TestAgency agency = await OpenAsync(Provider.Sqlite, cluster, DemoAgency.At(11, 17, 0));
        VisitEntry entry = (await DoneAsync(agency, Saffron, Tuesday.Visit(10, "P24"), 11, 15, 54)).ButLine(l => l with { OutsideLength = 4 });
        VisitStop stop = (await agency.Ask<RecordVisit>().CheckAsync(Saffron, entry, null, Cancel)).Value.Stop!;
        Assert.All(stop.Wording, line => Assert.DoesNotContain("infus", line, StringComparison.OrdinalIgnoreCase));

        await SignAsync(agency, Saffron, entry);

        PatientOverview patient = await PatientAsync(agency, "P24");
        Assert.Contains(patient.Locks, l => l.Line == new LineId("P24-1"));
        Assert.Contains(patient.Decisions, d => d.Code == DecisionCodes.LengthGrew);
    }

    /// <summary>An idle port is flushed every 28 days: the agency's policy. Friday 12 March and 28 days is Friday 9 April.</summary>
    [Fact]
    public async Task A_port_flushed_on_Friday_rather_than_Saturday_counts_28_days_from_Friday()
    {
        await using TestAgency agency = await OpenAsync(Provider.Sqlite, cluster, DemoAgency.At(12, 16, 0));
        Assert.Equal(new LocalDate(2027, 3, 13), (await WindowAsync(agency, "P25", CareItem.PortFlush)).LastDay);

        await SignAsync(agency, Saffron, await DoneAsync(agency, Saffron, Tuesday.Visit(12, "P25"), 12, 14, 41));

        Assert.Equal(new LocalDate(2027, 4, 9), (await WindowAsync(agency, "P25", CareItem.PortFlush)).LastDay);
    }

    /// <summary>Gauze is changed every 2 days (SHEA/IDSA/APIC 2022): Saturday's change makes Monday the next.</summary>
    [Fact]
    public async Task The_chain_of_gauze_crosses_the_weekend()
    {
        await using TestAgency agency = await OpenAsync(Provider.Sqlite, cluster, DemoAgency.At(13, 11, 0));
        VisitEntry entry = (await DoneAsync(agency, Bramble, Tuesday.Visit(13, "P06"), 13, 9, 9)).ButItem(CareItem.Dressing, i => i with { Dressing = DressingKind.Gauze });

        await SignAsync(agency, Bramble, entry);

        Assert.Equal(new LocalDate(2027, 3, 15), (await WindowAsync(agency, "P06", CareItem.Dressing)).LastDay);
    }

    [Fact]
    public async Task Gauze_changed_in_the_night_starts_the_chain_again()
    {
        await using TestAgency agency = await OpenAsync(Provider.Sqlite, cluster, DemoAgency.At(10, 8, 0));
        VisitEntry entry = (await DoneAsync(agency, Juniper, Tuesday.Visit(9, "P06"), 9, 22, 30)).ButItem(CareItem.Dressing, i => i with { Dressing = DressingKind.Gauze });

        await SignAsync(agency, Juniper, entry);

        Assert.Equal(new LocalDate(2027, 3, 11), (await WindowAsync(agency, "P06", CareItem.Dressing)).LastDay);
    }
}
