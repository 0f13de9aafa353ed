using HomeLine.Agency.Mending;
using HomeLine.Agency.Reports;
using HomeLine.Agency.Tests.Mending;
using HomeLine.Agency.Tests.Storage;
using HomeLine.Agency.Today;
using HomeLine.Agency.WeekPlanning;
using HomeLine.LineCare.Lines;
using NodaTime;
using static HomeLine.Agency.Tests.DemoOnDatabase;

namespace HomeLine.Agency.Tests.Today;

/// <summary>What is open, whom to call, what the night hands over, and the step back, through the real database. Invented data.</summary>
public sealed class TodayTests(PostgresCluster cluster)
{
    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    private static async Task<TodayBoard> BoardAsync(TestAgency agency) => (await agency.Ask<AskToday>().AskAsync(TestAgency.Coordinator, Cancel)).Value;

    private static NurseIsOut Absent(string nurse) => new(nurse, Tuesday.Day.AtMidnight(), Tuesday.Day, "ill");

    [Theory]
    [MemberData(nameof(TestAgency.BothProviders), MemberType = typeof(TestAgency))]
    public async Task A_pump_alarm_of_the_night_stands_on_the_morning_card_as_closed(Provider provider)
    {
        await using TestAgency agency = await OpenAsync(provider, cluster, DemoAgency.At(9, 2, 10));
        await agency.ReportAsync(new PumpAlarm
        {
            Patient = new PatientId("P36"),
            Line = new LineId("P36-1"),
            Caller = "patient",
            Answers = Tuesday.AllNoBut(),
            Alarm = AlarmKind.Air,
            Solved = true,
        });
        await agency.MoveClockAsync(9, 6, 45);

        TodayBoard board = await BoardAsync(agency);

        HandOverLine line = Assert.Single(board.HandOver);
        Assert.Equal((DemoAgency.At(9, 2, 10), false), (line.At, line.IsOpen));
        Assert.Contains("No visit", line.Came, StringComparison.Ordinal);
        Assert.Empty(board.Open);
        Assert.Single(board.Calls);
    }

    [Fact]
    public async Task An_open_trouble_stays_open_until_it_is_answered()
    {
        await using TestAgency agency = await OpenAsync(Provider.Sqlite, cluster, DemoAgency.At(9, 6, 45));
        FiledTrouble trouble = await agency.ReportAsync(Absent("N1"));
        Assert.Equal(trouble.Id, Assert.Single((await BoardAsync(agency)).Open).Id);

        await agency.ApplyAsync(trouble);

        TodayBoard board = await BoardAsync(agency);
        Assert.Empty(board.Open);
        Assert.Equal(2, board.WeekVersion);
        Assert.NotEmpty(board.Calls);
        Assert.Equal(board.Calls.Select(c => c.Person.By).Order(), board.Calls.Select(c => c.Person.By));
    }

    [Fact]
    public async Task A_call_that_reaches_nobody_is_written_down_and_stays_until_somebody_is_told()
    {
        await using TestAgency agency = await OpenAsync(Provider.Sqlite, cluster, DemoAgency.At(9, 6, 45));
        await agency.ApplyAsync(await agency.ReportAsync(Absent("N1")));
        ToTell first = (await BoardAsync(agency)).Calls[0];
        var outbox = agency.Ask<KeepOutbox>();

        Assert.Equal("try-empty", (await outbox.TriedAsync(TestAgency.Coordinator, first.Id, " ", Cancel)).Refusal?.Code);
        Assert.True((await outbox.TriedAsync(TestAgency.Coordinator, first.Id, "no answer", Cancel)).Succeeded);
        Assert.Equal("no answer", Assert.Single((await BoardAsync(agency)).Calls.Single(c => c.Id == first.Id).Tries).What);
        Assert.True((await outbox.TellAsync(TestAgency.Coordinator, first.Id, Cancel)).Succeeded);

        Assert.DoesNotContain((await BoardAsync(agency)).Calls, c => c.Id == first.Id);
        Assert.Equal("told-already", (await outbox.TellAsync(TestAgency.Coordinator, first.Id, Cancel)).Refusal?.Code);
    }

    [Fact]
    public async Task Without_a_number_the_other_contact_is_named()
    {
        await using TestAgency agency = await OpenAsync(Provider.Sqlite, cluster, DemoAgency.At(9, 6, 45), roster => roster with
        {
            Patients = [.. roster.Patients.Select(p => p.Id.Value == "P01" ? p with { Phone = "", Contact = "neighbour" } : p)],
        });

        AppliedTrouble applied = await agency.ApplyAsync(await agency.ReportAsync(Absent("N1")));

        Assert.Contains("neighbour", applied.ToTell.Single(p => p.Who.StartsWith("Anise", StringComparison.Ordinal)).Channel, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Without_a_number_and_any_other_contact_the_clinical_manager_is_asked()
    {
        await using TestAgency agency = await OpenAsync(Provider.Sqlite, cluster, DemoAgency.At(9, 6, 45), roster => roster with
        {
            Patients = [.. roster.Patients.Select(p => p.Id.Value == "P01" ? p with { Phone = "", Contact = "" } : p)],
            Caregivers = [.. roster.Caregivers.Where(c => c.Patient.Value != "P01")],
        });

        AppliedTrouble applied = await agency.ApplyAsync(await agency.ReportAsync(Absent("N1")));

        Assert.Contains("ask the clinical manager", applied.ToTell.Single(p => p.Who.StartsWith("Anise", StringComparison.Ordinal)).Channel, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Who_is_told_are_those_whose_visit_changed_and_the_nurses_of_changed_days_and_nobody_else()
    {
        await using TestAgency agency = await OpenAsync(Provider.Sqlite, cluster, DemoAgency.At(9, 6, 45));

        FiledTrouble trouble = await agency.ReportAsync(Absent("N1"));

        foreach (MendAnswer answer in trouble.Offer!.Answers)
        {
            string[] families = [.. answer.Changes.Select(c => DemoAgency.Roster.Patients.Single(p => p.Id == c.Before!.Patient).Name)];
            var nurses = answer.Changes.SelectMany(c => new[] { c.Before?.Nurse, c.Before?.Second, c.After?.Nurse, c.After?.Second }).OfType<string>().ToHashSet();
            Assert.All(answer.ToTell.Where(p => p.Nurse is not null), p => Assert.Contains(p.Nurse!, nurses));
            Assert.All(answer.ToTell.Where(p => p.Nurse is null && p.Who != "Clinical manager on duty"), p => Assert.Contains(families, f => p.Who.StartsWith(f, StringComparison.Ordinal)));
        }
    }

    [Theory]
    [MemberData(nameof(TestAgency.BothProviders), MemberType = typeof(TestAgency))]
    public async Task The_week_goes_back_while_nothing_has_begun_and_everybody_is_told_again(Provider provider)
    {
        await using TestAgency agency = await OpenAsync(provider, cluster, DemoAgency.At(8, 18, 0));
        await agency.ApplyAsync(await agency.ReportAsync(Absent("N1")));
        int told = (await BoardAsync(agency)).Calls.Length;
        var steps = agency.Ask<StepBack>();

        Assert.Equal("back-reason-missing", (await steps.BackAsync(TestAgency.Coordinator, DemoAgency.FirstDay, 2, " ", Cancel)).Refusal?.Code);
        Assert.Equal("stale-week", (await steps.BackAsync(TestAgency.Coordinator, DemoAgency.FirstDay, 1, "she comes", Cancel)).Refusal?.Code);
        PlannedWeek back = (await steps.BackAsync(TestAgency.Coordinator, DemoAgency.FirstDay, 2, "she comes after all", Cancel)).Value;

        Assert.Equal(3, back.Version);
        Assert.Equal(DemoAgency.Published.Visits.Select(v => (v.Id, v.Nurse, v.Day, v.Start)).Order(), back.Visits.Select(v => (v.Id, v.Nurse, v.Day, v.Start)).Order());
        Assert.True((await BoardAsync(agency)).Calls.Length > told);
    }

    [Fact]
    public async Task Once_a_visit_has_begun_it_only_goes_forward()
    {
        await using TestAgency agency = await OpenAsync(Provider.Sqlite, cluster, DemoAgency.At(9, 6, 45));
        await agency.ApplyAsync(await agency.ReportAsync(Absent("N1")));
        await agency.MoveClockAsync(9, 8, 30);

        Assert.Equal("begun-since", (await agency.Ask<StepBack>().BackAsync(TestAgency.Coordinator, DemoAgency.FirstDay, 2, "she comes", Cancel)).Refusal?.Code);
    }

    [Fact]
    public async Task A_visit_taken_out_for_hospital_is_not_put_back_by_a_step()
    {
        await using TestAgency agency = await OpenAsync(Provider.Sqlite, cluster, DemoAgency.At(8, 18, 0));
        await agency.ReportAsync(new InHospital(new PatientId("P44"), new LocalDate(2027, 3, 8), "hospital"));

        Assert.Equal("back-over-decision", (await agency.Ask<StepBack>().BackAsync(TestAgency.Coordinator, DemoAgency.FirstDay, 2, "wrong", Cancel)).Refusal?.Code);
    }

    [Fact]
    public async Task Time_that_became_free_shows_on_the_board_and_nothing_is_moved_by_itself()
    {
        await using TestAgency agency = await OpenAsync(Provider.Sqlite, cluster, DemoAgency.At(9, 7, 52));
        await agency.PromiseP03Async();
        await agency.MoveClockAsync(9, 8, 12);
        await agency.ReportAsync(new InHospital(new PatientId("P44"), Tuesday.Day, "hospital"));

        VisitToday earlier = Assert.Single((await BoardAsync(agency)).Earlier);

        Assert.Equal(("P03", new LocalTime(10, 8)), (earlier.Visit.Patient.Value, earlier.Visit.Start));
        FiledTrouble offered = await agency.ReportAsync(new TimeFreed(earlier.Visit.Id));
        Assert.Equal(new LocalTime(8, 43), offered.Offer!.Answers.Single().Of("P03").After!.Start);
    }
}
