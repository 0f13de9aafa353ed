using HomeLine.Agency.Quality;
using HomeLine.Agency.Storage;
using HomeLine.Agency.Tests.Storage;
using HomeLine.LineCare.Counting;
using HomeLine.LineCare.Lines;
using Microsoft.EntityFrameworkCore;
using NodaTime;

namespace HomeLine.Agency.Tests.Quality;

/// <summary>Late care and infections of the demonstration agency, on Monday morning. Invented data.</summary>
public sealed class QualityTests(PostgresCluster cluster)
{
    private static readonly LocalDate First = new(2027, 3, 1), Last = new(2027, 3, 7);

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    private Task<TestAgency> OpenAsync(Provider provider = Provider.Sqlite) => DemoOnDatabase.OpenAsync(provider, cluster, DemoAgency.Now);

    private static async Task<QualityView> AskAsync(TestAgency agency) =>
        (await agency.Ask<AskQuality>().AskAsync(DemoOnDatabase.ClinicalLead, First, Last, Cancel)).Value;

    private static async Task<CaseToReview> AdmissionAsync(TestAgency agency) =>
        (await AskAsync(agency)).Cases.Single(c => c.What.StartsWith("admitted", StringComparison.Ordinal));

    /// <summary>The line-days are those of the hand count: 60 patients for seven days, less four, six and one day.</summary>
    [Fact]
    public async Task A_week_without_any_infection_is_told_with_its_upper_limit()
    {
        await using TestAgency agency = await OpenAsync();

        QualityView view = await AskAsync(agency);

        Assert.Equal(((60 * 7) - 4 - 6 - 1, 0, true), (view.LineDays, view.Infections, view.IsSmall));
        Assert.Equal(RateInterval.Of(0, view.LineDays, 95).Upper, view.Rate!.Upper, 9);
    }

    /// <summary>Whoever stands late on the Due page at the end of the span stands late here: counted a second way.</summary>
    [Fact]
    public async Task What_is_late_at_the_end_is_what_the_clocks_call_late()
    {
        await using TestAgency agency = await OpenAsync();
        Instant end = Last.PlusDays(1).AtStartOfDayInZone(DemoAgency.Roster.Profile.Zone).ToInstant();

        QualityView view = await AskAsync(agency);

        string[] late = [.. DemoAgency.Roster.Patients.SelectMany(p => DemoAgency.Files.WhatIsDue(p.Id, end).Windows
            .Where(w => w.Owner == PerformerKind.Nurse && w.IsLateAt(end)).Select(w => $"{p.Id} {w.Item} {w.LateFrom}")).Order(StringComparer.Ordinal)];
        Assert.Equal(late, view.Late.Where(l => l.DoneAt is null).Select(l => $"{l.Patient} {l.Item} {l.LateFrom}").Order(StringComparer.Ordinal));
        Assert.Contains(view.Late, l => l.Patient == new PatientId("P30") && l.Item == CareItem.Connector);
        Assert.Equal(view.Judged - view.OnTime, view.Late.Length);
    }

    [Theory]
    [MemberData(nameof(TestAgency.BothProviders), MemberType = typeof(TestAgency))]
    public async Task An_admission_counts_only_once_a_clinical_manager_has_said_so_and_may_be_taken_back(Provider provider)
    {
        await using TestAgency agency = await OpenAsync(provider);
        CaseToReview admission = await AdmissionAsync(agency);
        var entry = new CaseReviewEntry(admission.Entry, null, true, "The agency's definition of 2026", "Culture positive, no other source.");

        Assert.True((await agency.Ask<ReviewCase>().ReviewAsync(DemoOnDatabase.ClinicalLead, entry, Cancel)).Succeeded);
        QualityView counted = await AskAsync(agency);
        Assert.True((await agency.Ask<ReviewCase>().ReviewAsync(DemoOnDatabase.ClinicalLead, entry with { Counts = false, Reason = "Another source was found." }, Cancel)).Succeeded);
        QualityView after = await AskAsync(agency);

        Assert.Equal((1, "The agency's definition of 2026"), (counted.Infections, counted.Definition));
        Assert.Equal(1000.0 / counted.LineDays, counted.Rate!.Rate, 9);
        Assert.Equal((0, "Another source was found."), (after.Infections, after.Cases.Single(c => c.Entry == admission.Entry).Review!.Reason));
        await using AgencyDb db = agency.Open();
        Assert.Equal(2, await db.AuditEntries.AsNoTracking().CountAsync(e => e.Action == "review-case", Cancel));
    }

    [Theory]
    [InlineData("nothing", 0, "D", "R", "case-unknown")]
    [InlineData(null, 0, "D", " ", "case-reason-missing")]
    [InlineData(null, 0, "", "R", "case-definition-missing")]
    [InlineData(null, 30, "D", "R", "case-ahead")]
    public async Task A_review_that_cannot_be_is_refused_in_words(string? wrongEntry, int days, string definition, string reason, string code)
    {
        await using TestAgency agency = await OpenAsync();
        CaseToReview admission = await AdmissionAsync(agency);

        Outcome<CaseReview> refused = await agency.Ask<ReviewCase>().ReviewAsync(
            DemoOnDatabase.ClinicalLead, new CaseReviewEntry(wrongEntry ?? admission.Entry, admission.On.PlusDays(days), true, definition, reason), Cancel);

        Assert.Equal(code, refused.Refusal?.Code);
    }

    [Fact]
    public async Task Spans_that_cannot_be_are_refused_and_not_everybody_may_look_or_review()
    {
        await using TestAgency agency = await OpenAsync();
        AskQuality ask = agency.Ask<AskQuality>();
        CaseToReview admission = await AdmissionAsync(agency);

        Assert.Equal("span-backwards", (await ask.AskAsync(DemoOnDatabase.ClinicalLead, Last, First, Cancel)).Refusal?.Code);
        Assert.Equal("span-ahead", (await ask.AskAsync(DemoOnDatabase.ClinicalLead, Last.PlusDays(30), Last.PlusDays(31), Cancel)).Refusal?.Code);
        Assert.Equal("span-long", (await ask.AskAsync(DemoOnDatabase.ClinicalLead, First.PlusYears(-3), Last, Cancel)).Refusal?.Code);
        Assert.Equal("not-allowed", (await ask.AskAsync(DemoOnDatabase.Nurse, First, Last, Cancel)).Refusal?.Code);
        Assert.Equal("not-allowed", (await agency.Ask<ReviewCase>().ReviewAsync(
            TestAgency.Coordinator, new CaseReviewEntry(admission.Entry, null, true, "D", "R"), Cancel)).Refusal?.Code);
    }
}
