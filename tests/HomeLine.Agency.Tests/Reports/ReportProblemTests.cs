using System.Collections.Immutable;
using HomeLine.Agency.Access;
using HomeLine.Agency.Due;
using HomeLine.Agency.Reports;
using HomeLine.Agency.Roster;
using HomeLine.Agency.Sheets;
using HomeLine.Agency.Storage;
using HomeLine.Agency.Tests.Storage;
using HomeLine.Agency.WeekPlanning;
using HomeLine.LineCare.Ledger;
using HomeLine.LineCare.Lines;
using HomeLine.LineCare.RedFlags;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using NodaTime;

namespace HomeLine.Agency.Tests.Reports;

/// <summary>Tuesday through the real database, both kinds. Invented data.</summary>
public sealed class ReportProblemTests(PostgresCluster cluster)
{
    private static readonly Actor Nurse = new("u-nurse", "Sorrel", [AgencyRole.Nurse], "N3");
    private static readonly Actor Manager = new("u-manager", "Hyssop", [AgencyRole.ClinicalManager]);

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    private static async Task<TestAgency> OnTuesdayAsync(Provider provider, PostgresCluster cluster, int hour, int minute)
    {
        TestAgency agency = await TestAgency.OnAsync(provider, cluster);
        AgencyRoster tuesday = DemoAgency.Roster with { Profile = DemoAgency.Roster.Profile with { FixedNow = DemoAgency.At(9, hour, minute) } };
        Assert.True((await agency.Services.GetRequiredService<OpenAgency>().OpenAsync(Actors.SetUp, tuesday, DemoAgency.Published, Cancel)).Succeeded);
        return agency;
    }

    private static ProblemReport Lifting(string patient, string? yes = null) => new()
    {
        Patient = new PatientId(patient),
        Line = new LineId($"{patient}-1"),
        Caller = "spouse",
        SeenAt = DemoAgency.At(9, 7, 52),
        Answers = SymptomScreen.Questions(ScreenContext.Unknown)
            .ToImmutableDictionary(q => q.Id, q => q.Id == yes ? ScreenAnswer.Yes : ScreenAnswer.No),
        Finding = SealFinding.EdgeLifted | SealFinding.Moisture,
    };

    [Theory]
    [MemberData(nameof(TestAgency.BothProviders), MemberType = typeof(TestAgency))]
    public async Task A_lifting_dressing_is_answered_and_the_chosen_answer_becomes_the_week(Provider provider)
    {
        await using TestAgency agency = await OnTuesdayAsync(provider, cluster, 7, 52);
        var reporting = agency.Services.GetRequiredService<ReportProblem>();

        ReportResult result = (await reporting.ReportAsync(TestAgency.Coordinator, Lifting("P03"), Cancel)).Value;
        Assert.Equal(["N3", "N1", "N1"], result.Offer!.Answers.Select(a => a.Visit.Nurse));
        Assert.Equal("reason-missing", (await reporting.ApplyAsync(TestAgency.Coordinator, result.ReportId, "B", " ", Cancel)).Refusal?.Code);
        Assert.Equal("not-allowed", (await reporting.ApplyAsync(Nurse, result.ReportId, "A", "", Cancel)).Refusal?.Code);

        AppliedAnswer applied = (await reporting.ApplyAsync(TestAgency.Coordinator, result.ReportId, "A", "", Cancel)).Value;

        Assert.Equal(2, applied.Week.Version);
        WeekVisit visit = Assert.Single(applied.Week.Visits, v => v.Patient.Value == "P03");
        Assert.Equal(("N3", new LocalTime(10, 8)), (visit.Nurse, visit.Start));
        Assert.Equal("already-applied", (await reporting.ApplyAsync(TestAgency.Coordinator, result.ReportId, "A", "", Cancel)).Refusal?.Code);
        await using AgencyDb db = agency.Open();
        Assert.Equal(2, (await db.Orders.SingleAsync(o => o.Id == "P03-visits", Cancel)).AsNeededUsed);
        Assert.Equal(4, await db.ToTell.CountAsync(Cancel));
        var ticking = agency.Services.GetRequiredService<TickTold>();
        ImmutableArray<ToTell> list = (await ticking.TickAsync(TestAgency.Coordinator, result.ReportId, $"{result.ReportId}-1", true, Cancel)).Value;
        Assert.Equal([TestAgency.Coordinator.Name, "", "", ""], list.Select(t => t.DoneBy));
        Assert.Equal("no-such-person", (await ticking.TickAsync(TestAgency.Coordinator, result.ReportId, "R9-1", true, Cancel)).Refusal?.Code);
        Assert.True((await AuditTrail.VerifyAsync(db, Cancel)).IsWhole);
        WeekBoard board = (await agency.Services.GetRequiredService<AskWeek>().AskAsync(Nurse, DemoAgency.FirstDay, false, Cancel)).Value;
        Assert.True(board.Check.Accepted, string.Join("\n", board.Check.Findings.Select(f => f.Reason.Sentence)));
        DueRow dressing = (await agency.Services.GetRequiredService<AskDueList>().AskAsync(Nurse, Cancel)).Value
            .First(r => r.Patient.Value == "P03" && r.Window.Item == CareItem.Dressing);
        Assert.Equal(Urgency.CutShort, dressing.Urgency);
        Assert.Equal("Tue 9 Mar 10:08, Sorrel Mudlark", dressing.PlannedFor);
    }

    [Fact]
    public async Task The_later_visit_stays_beside_the_new_one_only_with_a_reason_and_nobody_is_told_that_it_goes()
    {
        await using TestAgency agency = await OnTuesdayAsync(Provider.Sqlite, cluster, 7, 52);
        var reporting = agency.Services.GetRequiredService<ReportProblem>();
        ReportResult result = (await reporting.ReportAsync(TestAgency.Coordinator, Lifting("P03"), Cancel)).Value;

        Outcome<AppliedAnswer> silent = await reporting.ApplyAsync(TestAgency.Coordinator, result.ReportId, "A", " ", Cancel, keepLater: true);
        AppliedAnswer applied = (await reporting.ApplyAsync(TestAgency.Coordinator, result.ReportId, "A", "the daughter is taught on Wednesday", Cancel, keepLater: true)).Value;

        Assert.Equal("keep-both-without-reason", silent.Refusal?.Code);
        Assert.Equal([9, 10], applied.Week.Visits.Where(v => v.Patient.Value == "P03").Select(v => v.Day.Day));
        Assert.DoesNotContain(applied.ToTell, p => p.What.Contains("cancelled", StringComparison.Ordinal) || p.What.Contains("no longer needed", StringComparison.Ordinal));
        WeekBoard board = (await agency.Services.GetRequiredService<AskWeek>().AskAsync(Nurse, DemoAgency.FirstDay, false, Cancel)).Value;
        Assert.True(board.Check.Accepted, string.Join("\n", board.Check.Findings.Select(f => f.Reason.Sentence)));
        await using AgencyDb db = agency.Open();
        Assert.Contains("the later visit kept", (await db.AuditEntries.AsNoTracking().SingleAsync(e => e.Action == "apply-answer", Cancel)).Detail, StringComparison.Ordinal);
    }

    [Theory]
    [MemberData(nameof(TestAgency.BothProviders), MemberType = typeof(TestAgency))]
    public async Task Chills_lock_the_line_hold_the_visit_and_find_no_time(Provider provider)
    {
        await using TestAgency agency = await OnTuesdayAsync(provider, cluster, 8, 5);
        var reporting = agency.Services.GetRequiredService<ReportProblem>();

        ReportResult result = (await reporting.ReportAsync(TestAgency.Coordinator, Lifting("P44", "chills"), Cancel)).Value;

        Assert.Null(result.Offer);
        Assert.NotEmpty(result.Stopped!.Wording);
        Assert.Equal("no-offer", (await reporting.ApplyAsync(Manager, result.ReportId, "A", "because", Cancel)).Refusal?.Code);
        PatientOverview patient = (await agency.Services.GetRequiredService<AskPatient>().AskAsync(Nurse, new PatientId("P44"), Cancel)).Value;
        Assert.Contains(patient.Locks, l => l.Line.Value == "P44-1");
        Assert.All(patient.Visits, v => Assert.NotNull(v.Held));
        Assert.DoesNotContain(patient.Ledger, e => e.Kind == LineEventKind.SealReported);
        DaySheetContent sheet = (await agency.Services.GetRequiredService<AskSheets>().DaySheetAsync(Nurse, "N3", new LocalDate(2027, 3, 9), Cancel)).Value;
        Assert.Contains(sheet.Stops.Single().Unusual, u => u.Contains("Do not ring the bell", StringComparison.Ordinal));
        CareSheetContent care = (await agency.Services.GetRequiredService<AskSheets>().CareSheetAsync(Nurse, new PatientId("P44"), Cancel)).Value;
        Assert.NotEmpty(care.Locks);
    }

    [Fact]
    public async Task Only_the_demonstration_can_have_its_clock_moved()
    {
        await using TestAgency agency = await OnTuesdayAsync(Provider.Sqlite, cluster, 7, 52);
        var clock = agency.Services.GetRequiredService<MoveDemoClock>();

        Assert.True((await clock.MoveAsync(Nurse, new LocalDateTime(2027, 3, 10, 13, 45), Cancel)).Succeeded);

        await using AgencyDb db = agency.Open();
        Assert.Equal(DemoAgency.At(10, 13, 45), (await RosterReader.ReadAsync(db, Cancel)).Profile.FixedNow);
    }

    [Fact]
    public async Task A_week_that_changed_since_the_answers_were_found_is_not_overwritten()
    {
        await using TestAgency agency = await OnTuesdayAsync(Provider.Sqlite, cluster, 7, 52);
        var reporting = agency.Services.GetRequiredService<ReportProblem>();
        ReportResult first = (await reporting.ReportAsync(TestAgency.Coordinator, Lifting("P03"), Cancel)).Value;
        Assert.NotNull((await reporting.ReportAsync(TestAgency.Coordinator, Lifting("P44", "chills"), Cancel)).Value.Stopped);

        Outcome<AppliedAnswer> late = await reporting.ApplyAsync(TestAgency.Coordinator, first.ReportId, "A", "", Cancel);

        Assert.Equal("stale-week", late.Refusal?.Code);
        await using AgencyDb db = agency.Open();
        Assert.Contains((await WeekStore.PublishedAsync(db, DemoAgency.FirstDay, Cancel))!.Week.Visits, v => v.Patient.Value == "P03" && v.Day.Day == 10);
    }

    [Fact]
    public async Task An_unfinished_screen_offers_nothing_and_stores_nothing()
    {
        await using TestAgency agency = await OnTuesdayAsync(Provider.Sqlite, cluster, 7, 52);
        ProblemReport unfinished = Lifting("P03") with { Answers = Lifting("P03").Answers.Remove("chills") };

        Outcome<ReportResult> refused = await agency.Services.GetRequiredService<ReportProblem>().ReportAsync(TestAgency.Coordinator, unfinished, Cancel);

        Assert.Equal("screen-incomplete", refused.Refusal?.Code);
        await using AgencyDb db = agency.Open();
        Assert.Equal(0, await db.Reports.CountAsync(Cancel));
        Assert.DoesNotContain(await db.LineEvents.ToListAsync(Cancel), e => e.Kind == LineEventKind.SealReported);
    }

    [Theory]
    [InlineData("P99", "P03-1", "patient-unknown")]
    [InlineData("P03", "P04-1", "line-unknown")]
    public async Task A_wrong_patient_or_line_is_refused_with_what_to_ask(string patient, string line, string code)
    {
        await using TestAgency agency = await OnTuesdayAsync(Provider.Sqlite, cluster, 7, 52);
        ProblemReport wrong = Lifting("P03") with { Patient = new PatientId(patient), Line = new LineId(line) };

        Assert.Equal(code, (await agency.Services.GetRequiredService<ReportProblem>().ReportAsync(TestAgency.Coordinator, wrong, Cancel)).Refusal?.Code);
    }
}
