using System.Collections.Immutable;
using CsCheck;
using HomeLine.Agency.Access;
using HomeLine.Agency.Reports;
using HomeLine.Agency.Roster;
using HomeLine.Agency.Storage;
using HomeLine.Agency.Tests.Storage;
using HomeLine.Agency.WeekPlanning;
using HomeLine.LineCare.Ledger;
using HomeLine.LineCare.Lines;
using HomeLine.LineCare.RedFlags;
using HomeLine.LineCare.Windows;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;

namespace HomeLine.Agency.Tests.Reports;

/// <summary>Whatever is answered, in whatever combination: a red flag, a do-not-know or a question left out never leads to a need, a time or an answer.</summary>
public sealed class NoPathFromARedFlag(PostgresCluster cluster)
{
    private static readonly ImmutableArray<ScreenQuestion> Questions = SymptomScreen.Questions(ScreenContext.Unknown);
    private static readonly string[] Patients = ["P01", "P03", "P08", "P17", "P23", "P39", "P40", "P44"];

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    /// <summary>All no but for one to three red flags answered yes or do not know; the same-day questions at random.</summary>
    private static readonly Gen<(string Patient, ImmutableDictionary<string, ScreenAnswer> Answers)> Flagged =
        Gen.Select(Gen.Int[0, Patients.Length - 1], Gen.Int[0, RedFlags.Length - 1].Array[1, 3], Gen.Bool, Gen.Enum<ScreenAnswer>().Array[Questions.Length], (index, flags, yes, rest) =>
            (Patients[index], Questions.Select((question, i) => (question.Id, Answer: IsRedFlag(question) ? ScreenAnswer.No : rest[i]))
                .ToImmutableDictionary(pair => pair.Id, pair => pair.Answer)
                .SetItems(flags.Select(flag => KeyValuePair.Create(RedFlags[flag].Id, yes ? ScreenAnswer.Yes : ScreenAnswer.DoNotKnow)))));

    private static ScreenQuestion[] RedFlags => [.. Questions.Where(IsRedFlag)];

    private static bool IsRedFlag(ScreenQuestion question) => question.Class is ScreenClass.Emergency or ScreenClass.UrgentClinician;

    [Fact]
    public async Task A_stopped_screen_never_yields_a_need_a_time_or_an_answer()
    {
        await using TestAgency agency = await TestAgency.OnAsync(Provider.Sqlite, cluster);
        AgencyRoster tuesday = DemoAgency.Roster with { Profile = DemoAgency.Roster.Profile with { FixedNow = DemoAgency.At(9, 7, 52) } };
        Assert.True((await agency.Services.GetRequiredService<OpenAgency>().OpenAsync(Actors.SetUp, tuesday, DemoAgency.Published, Cancel)).Succeeded);
        var reporting = agency.Services.GetRequiredService<ReportProblem>();

        await Flagged.SampleAsync(
            async told =>
            {
                Outcome<ReportResult> result = await reporting.ReportAsync(TestAgency.Coordinator, Report(told.Patient, told.Answers), Cancel);
                Assert.True(result.Succeeded, result.Refusal?.Sentence);
                Assert.NotNull(result.Value.Stopped);
                Assert.Null(result.Value.Offer);
                Assert.Equal("no-offer", (await reporting.ApplyAsync(TestAgency.Coordinator, result.Value.ReportId, "A", "because", Cancel)).Refusal?.Code);
            },
            iter: 40,
            threads: 1);

        await NothingWasPlannedAsync(agency);
    }

    [Fact]
    public async Task A_screen_with_a_red_flag_not_asked_is_refused_and_stores_nothing()
    {
        await using TestAgency agency = await TestAgency.OnAsync(Provider.Sqlite, cluster);
        AgencyRoster tuesday = DemoAgency.Roster with { Profile = DemoAgency.Roster.Profile with { FixedNow = DemoAgency.At(9, 7, 52) } };
        Assert.True((await agency.Services.GetRequiredService<OpenAgency>().OpenAsync(Actors.SetUp, tuesday, DemoAgency.Published, Cancel)).Succeeded);
        var reporting = agency.Services.GetRequiredService<ReportProblem>();

        foreach (ScreenQuestion left in RedFlags.Where(q => SymptomScreen.Questions(new ScreenContext(false, true, false)).Contains(q)))
        {
            ImmutableDictionary<string, ScreenAnswer> answers = Questions.ToImmutableDictionary(q => q.Id, _ => ScreenAnswer.No).Remove(left.Id);
            Outcome<ReportResult> result = await reporting.ReportAsync(TestAgency.Coordinator, Report("P03", answers), Cancel);
            Assert.Equal("screen-incomplete", result.Refusal?.Code);
        }

        await NothingWasPlannedAsync(agency);
    }

    /// <summary>No report reached the ledger as something to plan, and every published visit stands where it stood, held or not.</summary>
    private static async Task NothingWasPlannedAsync(TestAgency agency)
    {
        await using AgencyDb db = agency.Open();
        Assert.DoesNotContain(await db.LineEvents.ToListAsync(Cancel), e => e.Kind == LineEventKind.SealReported);
        PlannedWeek week = (await WeekStore.PublishedAsync(db, DemoAgency.FirstDay, Cancel))!.Week;
        Assert.Equal(
            DemoAgency.Published.Visits.Select(Where).Order(StringComparer.Ordinal), week.Visits.Select(Where).Order(StringComparer.Ordinal));
        var files = CareFiles.Of(await RosterReader.ReadAsync(db, Cancel));
        Assert.All(Patients, patient => Assert.DoesNotContain(
            files.WhatIsDue(new PatientId(patient), DemoAgency.At(9, 7, 52)).Windows, w => w.Standing == WindowStanding.CutShort));
    }

    private static string Where(WeekVisit visit) => $"{visit.Patient} {visit.Nurse} {visit.Day:uuuu-MM-dd} {visit.Start:HH:mm}";

    private static ProblemReport Report(string patient, ImmutableDictionary<string, ScreenAnswer> answers) => new()
    {
        Patient = new PatientId(patient),
        Line = new LineId($"{patient}-1"),
        Caller = "spouse",
        SeenAt = DemoAgency.At(9, 7, 50),
        Answers = answers,
        Finding = SealFinding.EdgeLifted,
    };
}
