using HomeLine.Agency.Mending;
using HomeLine.Agency.Reports;
using HomeLine.Agency.Storage;
using HomeLine.Agency.Tests.Storage;
using HomeLine.Agency.Today;
using HomeLine.LineCare.Ledger;
using HomeLine.LineCare.Lines;
using Microsoft.EntityFrameworkCore;
using static HomeLine.Agency.Tests.DemoOnDatabase;

namespace HomeLine.Agency.Tests.Mending;

/// <summary>What was offered and not answered is opened again with answers that fit the week as it stands. Our own scenario, invented throughout.</summary>
public sealed class LookAgainTests(PostgresCluster cluster)
{
    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    private static NurseIsOut Absent(string nurse) => new(nurse, Tuesday.Day.AtMidnight(), Tuesday.Day, "ill");

    private static ProblemReport P03(string? yes = null) => new()
    {
        Patient = new PatientId("P03"),
        Line = new LineId("P03-1"),
        Caller = "spouse",
        SeenAt = DemoAgency.At(9, 6, 45),
        Answers = Tuesday.AllNoBut(yes),
        Finding = SealFinding.EdgeLifted | SealFinding.Moisture,
    };

    [Theory]
    [MemberData(nameof(TestAgency.BothProviders), MemberType = typeof(TestAgency))]
    public async Task A_trouble_whose_week_changed_gets_new_answers_and_keeps_nothing_twice(Provider provider)
    {
        await using TestAgency agency = await OpenAsync(provider, cluster, DemoAgency.At(9, 6, 45));
        FiledTrouble waits = await agency.ReportAsync(Absent("N1"));
        await agency.ApplyAsync(await agency.ReportAsync(Absent("N4")));
        Assert.Equal("stale-week", (await agency.Ask<MendTrouble>().ApplyAsync(TestAgency.Coordinator, waits.Id, "A", "", Cancel)).Refusal?.Code);

        FiledTrouble again = (await agency.Ask<MendTrouble>().LookAgainAsync(TestAgency.Coordinator, waits.Id, Cancel)).Value;

        Assert.Equal((TroubleState.Open, 2), (again.State, again.WeekVersion));
        Assert.Superset(new HashSet<string>(["P04", "P12", "P06", "P01"]), again.Offer!.CannotWait.Patients().ToHashSet());
        await agency.ApplyAsync(again);
        Assert.DoesNotContain((await agency.WeekAsync()).Visits, v => v.Day == Tuesday.Day && v.Nurse is "N1" or "N4");
        await using AgencyDb db = agency.Open();
        Assert.Single((await db.Nurses.SingleAsync(n => n.Id == "N1", Cancel)).Leaves);
        Assert.Equal("already-ended", (await agency.Ask<MendTrouble>().LookAgainAsync(TestAgency.Coordinator, waits.Id, Cancel)).Refusal?.Code);
    }

    [Fact]
    public async Task A_first_refusal_does_not_become_the_second_when_it_is_looked_at_again()
    {
        await using TestAgency agency = await OpenAsync(Provider.Sqlite, cluster, DemoAgency.At(9, 12, 15));
        FiledTrouble refused = await agency.ReportAsync(new AtTheDoor(Tuesday.Visit(9, "P01"), DoorAnswer.Refused, [], "Not today."));
        Assert.NotEmpty(refused.Offer!.Answers);

        FiledTrouble again = (await agency.Ask<MendTrouble>().LookAgainAsync(TestAgency.Coordinator, refused.Id, Cancel)).Value;

        Assert.NotEmpty(again.Offer!.Answers);
        await using AgencyDb db = agency.Open();
        Assert.Equal(1, await db.LineEvents.CountAsync(e => e.Patient == new PatientId("P01") && e.Kind == LineEventKind.Refused, Cancel));
    }

    [Fact]
    public async Task A_report_that_waits_stands_under_today_and_gets_answers_that_can_be_applied()
    {
        await using TestAgency agency = await OpenAsync(Provider.Sqlite, cluster, DemoAgency.At(9, 6, 45));
        var reporting = agency.Ask<ReportProblem>();
        string id = (await reporting.ReportAsync(TestAgency.Coordinator, P03(), Cancel)).Value.ReportId;
        await agency.ApplyAsync(await agency.ReportAsync(Absent("N1")));
        await agency.MoveClockAsync(9, 7, 30);
        Assert.Contains((await agency.Ask<AskToday>().AskAsync(TestAgency.Coordinator, Cancel)).Value.Open, o => o.Id == id && !o.IsTrouble);

        FiledReport again = (await reporting.LookAgainAsync(TestAgency.Coordinator, id, Cancel)).Value;

        Assert.Equal(DemoAgency.At(9, 7, 30), again.Result!.AnsweredAt);
        Assert.All(again.Result.Offer!.Answers, a => Assert.False(a.Visit.Nurse == "N1" && a.Visit.Day == Tuesday.Day));
        Outcome<AppliedAnswer> applied = await reporting.ApplyAsync(TestAgency.Coordinator, id, "A", "", Cancel);
        Assert.True(applied.Succeeded, applied.Refusal?.ToString());
        await using AgencyDb db = agency.Open();
        Assert.Equal(1, await db.LineEvents.CountAsync(e => e.Patient == new PatientId("P03") && e.Kind == LineEventKind.SealReported, Cancel));
    }

    [Fact]
    public async Task After_a_red_flag_no_time_is_looked_for_again_and_none_that_waited_is_applied()
    {
        await using TestAgency agency = await OpenAsync(Provider.Sqlite, cluster, DemoAgency.At(9, 6, 45));
        var reporting = agency.Ask<ReportProblem>();
        string id = (await reporting.ReportAsync(TestAgency.Coordinator, P03(), Cancel)).Value.ReportId;
        await agency.MoveClockAsync(9, 7, 0);
        string anyStop = HomeLine.LineCare.RedFlags.SymptomScreen.Questions(HomeLine.LineCare.RedFlags.ScreenContext.Unknown)[0].Id;
        Assert.NotNull((await reporting.ReportAsync(TestAgency.Coordinator, P03(anyStop), Cancel)).Value.Stopped);

        Assert.Equal("stopped-since", (await reporting.LookAgainAsync(TestAgency.Coordinator, id, Cancel)).Refusal?.Code);
        Assert.Equal("stopped-since", (await reporting.ApplyAsync(TestAgency.Coordinator, id, "A", "", Cancel)).Refusal?.Code);
    }

    [Fact]
    public async Task After_a_red_flag_no_answer_to_a_closed_door_is_applied_either()
    {
        await using TestAgency agency = await OpenAsync(Provider.Sqlite, cluster, DemoAgency.At(9, 12, 30));
        FiledTrouble door = await agency.ReportAsync(new AtTheDoor(Tuesday.Visit(9, "P01"), DoorAnswer.Refused, [], "Not today."));
        Assert.NotEmpty(door.Offer!.Answers);
        await agency.MoveClockAsync(9, 12, 45);
        string anyStop = HomeLine.LineCare.RedFlags.SymptomScreen.Questions(HomeLine.LineCare.RedFlags.ScreenContext.Unknown)[0].Id;
        ProblemReport call = P03(anyStop) with { Patient = new PatientId("P01"), Line = new LineId("P01-1") };
        Assert.NotNull((await agency.Ask<ReportProblem>().ReportAsync(TestAgency.Coordinator, call, Cancel)).Value.Stopped);

        var mending = agency.Ask<MendTrouble>();
        Assert.Equal("stopped-since", (await mending.LookAgainAsync(TestAgency.Coordinator, door.Id, Cancel)).Refusal?.Code);
        Assert.Equal("stopped-since", (await mending.ApplyAsync(TestAgency.Coordinator, door.Id, "A", "", Cancel)).Refusal?.Code);
    }
}
