using HomeLine.Agency.Mending;
using HomeLine.Agency.Reports;
using HomeLine.Agency.Storage;
using HomeLine.Agency.Tests.Storage;
using HomeLine.Agency.Today;
using HomeLine.Agency.WeekPlanning;
using HomeLine.LineCare.Ledger;
using HomeLine.LineCare.Lines;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using static HomeLine.Agency.Tests.DemoOnDatabase;

namespace HomeLine.Agency.Tests.Mending;

/// <summary>What follows is said before anything is changed: next due dates by the clocks, visits no longer needed. Dates worked out by hand; our own scenario, invented throughout.</summary>
public sealed class AfterThisTests(PostgresCluster cluster)
{
    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    /// <summary>A film of five to seven days counted from Tuesday the 9th: Sunday the 14th to Tuesday the 16th.</summary>
    [Fact]
    public async Task A_dressing_changed_today_is_next_due_from_Sunday_and_Wednesdays_visit_goes()
    {
        await using TestAgency agency = await OpenAsync(Provider.Sqlite, cluster, DemoAgency.At(9, 7, 52));

        ReportResult result = (await agency.Ask<ReportProblem>().ReportAsync(TestAgency.Coordinator, new ProblemReport
        {
            Patient = new PatientId("P03"),
            Line = new LineId("P03-1"),
            Caller = "spouse",
            SeenAt = DemoAgency.At(9, 7, 52),
            Answers = Tuesday.AllNoBut(),
            Finding = SealFinding.EdgeLifted | SealFinding.Moisture,
        }, Cancel)).Value;

        foreach (AnswerInWords answer in result.Offer!.Answers)
        {
            Assert.Contains(answer.After, line => line.StartsWith("Dressing", StringComparison.Ordinal) && line.Contains("next due Sun 14 Mar to Tue 16 Mar", StringComparison.Ordinal));
            Assert.Contains(answer.Replaces, line => line.StartsWith("Wed 10 Mar", StringComparison.Ordinal));
        }
    }

    /// <summary>P39 is seen on Tuesday and Thursday; made on Thursday instead of Tuesday the weekly care counts from Thursday.</summary>
    [Fact]
    public async Task A_visit_on_another_day_moves_the_next_due_date_and_it_is_said_before()
    {
        await using TestAgency agency = await OpenAsync(Provider.Sqlite, cluster, DemoAgency.At(9, 10, 15));

        FiledTrouble car = await agency.ReportAsync(new NurseIsOut("N4", Tuesday.Day.At(new LocalTime(10, 15)), Tuesday.Day, "car"));

        MendAnswer later = car.Offer!.Answers.First(a => a.Changes.Any(c => c.Before!.Patient.Value == "P39" && c.After is { } after && after.Day != c.Before.Day));
        LocalDate day = later.Of("P39").After!.Day;
        Assert.Contains(later.After, line => line.Contains("next due", StringComparison.Ordinal));
        Assert.True(day > Tuesday.Day);
    }

    [Fact]
    public async Task Another_nurse_on_the_same_day_moves_no_due_date()
    {
        await using TestAgency agency = await OpenAsync(Provider.Sqlite, cluster, DemoAgency.At(9, 6, 0));

        FiledTrouble trouble = await agency.ReportAsync(new NurseIsOut("N1", Tuesday.Day.AtMidnight(), Tuesday.Day, "ill"));

        Assert.All(trouble.Offer!.Answers.Where(a => a.Changes.All(c => c.After?.Day == c.Before?.Day)), a => Assert.Empty(a.After));
    }

    [Fact]
    public async Task When_the_clinic_is_silent_at_six_a_visit_of_our_own_is_one_press_away()
    {
        await using TestAgency agency = await OpenAsync(Provider.Sqlite, cluster, DemoAgency.At(11, 17, 59));
        var silent = new ClinicSilent(new PatientId("P13"));
        Assert.False(Assert.Single((await BoardAsync(agency)).Clinics).IsOverdue);
        Assert.Equal("clinic-has-time", (await agency.Ask<MendTrouble>().ReportAsync(TestAgency.Coordinator, silent, Cancel)).Refusal!.Code);
        Assert.Equal("clinic-not-awaited", (await agency.Ask<MendTrouble>().ReportAsync(TestAgency.Coordinator, new ClinicSilent(new PatientId("P01")), Cancel)).Refusal!.Code);
        await agency.MoveClockAsync(11, 18);
        Assert.True(Assert.Single((await BoardAsync(agency)).Clinics).IsOverdue);

        FiledTrouble trouble = await agency.ReportAsync(silent);

        Assert.Empty((await BoardAsync(agency)).Clinics);
        Assert.Contains(trouble.Offer!.ToTell, p => p.Who == "Dunmallow infusion clinic");
        Assert.Contains(trouble.Offer.Answers, a => a.Changes[0].After!.Day == new LocalDate(2027, 3, 12));
        PlannedWeek week = (await agency.ApplyAsync(trouble)).Week!;
        WeekVisit ours = week.Visits.Single(v => v.Patient.Value == "P13");
        Assert.Contains(ours.Care, c => c.Key.Contains("Dressing", StringComparison.Ordinal));
        Assert.True(ours.Day.At(ours.Start) > new LocalDateTime(2027, 3, 11, 18, 0));
        // Once it is planned, the clinic is still asked, and no second visit is found.
        Assert.Empty((await agency.ReportAsync(silent)).Offer!.Answers);
    }

    [Fact]
    public async Task A_series_of_lessons_shifts_by_an_evening_with_one_press_and_Thursdays_dressing_stays()
    {
        await using TestAgency agency = await OpenAsync(Provider.Sqlite, cluster, DemoAgency.At(9, 16, 20));

        FiledTrouble trouble = await agency.ReportAsync(new LessonOff(Tuesday.Visit(9, "P54"), "his wife is ill"));

        Assert.Contains(trouble.Offer!.Facts, f => f.StartsWith("Stays on Thu 11 Mar: dressing", StringComparison.Ordinal));
        Assert.Contains(trouble.Offer.Answers, a => a.Decider.EndsWith("says that it can be taught so.", StringComparison.Ordinal) && a.Changes.IsEmpty);
        PlannedWeek week = (await agency.ApplyAsync(trouble)).Week!;
        WeekVisit[] lessons = [.. week.Visits.Where(v => v.Patient.Value == "P54").OrderBy(v => v.Day)];
        Assert.Equal([10, 11, 12], lessons.Select(v => v.Day.Day));
        // 17:00 to 17:30 where he lives is 18:00 to 18:30 at the branch.
        Assert.InRange(lessons[2].Start, new LocalTime(18, 0), new LocalTime(18, 30));
        Assert.Contains(lessons[1].Care, c => c.Key.Contains("Dressing", StringComparison.Ordinal));
        await using AgencyDb db = agency.Open();
        Assert.Contains(await db.OrderRequests.ToListAsync(Cancel), r => r.Sentence.Contains("his wife is ill", StringComparison.Ordinal));
    }

    [Fact]
    public async Task A_lesson_that_is_none_or_is_over_is_refused_in_words()
    {
        await using TestAgency agency = await OpenAsync(Provider.Sqlite, cluster, DemoAgency.At(9, 18, 30));
        async Task<string> CodeAsync(string visit, string why) =>
            (await agency.Ask<MendTrouble>().ReportAsync(TestAgency.Coordinator, new LessonOff(visit, why), Cancel)).Refusal!.Code;

        Assert.Equal("lesson-begun", await CodeAsync(Tuesday.Visit(9, "P54"), "ill"));
        Assert.Equal("lesson-reason-missing", await CodeAsync(Tuesday.Visit(10, "P54"), " "));
        Assert.Equal("no-lesson", await CodeAsync(Tuesday.Visit(10, "P29"), "ill"));
        Assert.Equal("visit-not-found", await CodeAsync("none", "ill"));
    }

    private static async Task<TodayBoard> BoardAsync(TestAgency agency) => (await agency.Ask<AskToday>().AskAsync(TestAgency.Coordinator, Cancel)).Value;
}
