using System.Collections.Immutable;
using HomeLine.Agency.Access;
using HomeLine.Agency.Decisions;
using HomeLine.Agency.Due;
using HomeLine.Agency.Reports;
using HomeLine.Agency.Storage;
using HomeLine.Agency.Tests.Storage;
using HomeLine.Agency.WeekPlanning;
using HomeLine.LineCare;
using HomeLine.LineCare.Ledger;
using HomeLine.LineCare.Lines;
using HomeLine.LineCare.Orders;
using HomeLine.LineCare.RedFlags;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using static HomeLine.Agency.Tests.DemoOnDatabase;

namespace HomeLine.Agency.Tests.Decisions;

/// <summary>Licensed decisions through the real database, both kinds. Invented data.</summary>
public sealed class DecideQuestionTests(PostgresCluster cluster)
{
    private static readonly PatientId P44 = new("P44");

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    private static async Task<ImmutableArray<DecisionRow>> OpenOf(TestAgency agency, string patient, Actor? actor = null) =>
        [.. (await agency.Ask<AskDecisions>().ListAsync(actor ?? ClinicalLead, Cancel)).Value.Open.Where(r => r.Question.Patient.Value == patient)];

    private static async Task<OpenDecision> QuestionAsync(TestAgency agency, string patient, string code) =>
        (await OpenOf(agency, patient)).First(r => r.Question.Code == code).Question;

    private static Task<Outcome<KeptDecision>> DecideAsync(
        TestAgency agency, OpenDecision question, DecisionChoice choice, Actor? actor = null,
        string name = "H. Educator RN", string reason = "seen and spoken with the prescriber", LocalDate? until = null) =>
        agency.Ask<DecideQuestion>().DecideAsync(
            actor ?? ClinicalLead, new DecisionMade(question.Key, question.Round, choice, name, reason, until), Cancel);

    private static async Task<LocalDate> LastDressingDayAsync(TestAgency agency) =>
        (await agency.Ask<AskPatient>().AskAsync(Nurse, new PatientId("P01"), Cancel)).Value.Due.First(r => r.Window.Item == CareItem.Dressing).Window.LastDay;

    /// <summary>Chills after a flush: the screen stops, the line is locked, the visit is held.</summary>
    private async Task<TestAgency> AfterChillsAsync(Provider provider)
    {
        TestAgency agency = await OpenAsync(provider, cluster, DemoAgency.At(9, 8, 5));
        var report = new ProblemReport
        {
            Patient = P44,
            Line = new LineId("P44-1"),
            Caller = "patient",
            SeenAt = DemoAgency.At(9, 8, 0),
            Answers = SymptomScreen.Questions(ScreenContext.Unknown).ToImmutableDictionary(q => q.Id, q => q.Id == "chills" ? ScreenAnswer.Yes : ScreenAnswer.No),
            Finding = SealFinding.EdgeLifted,
        };
        Assert.NotNull((await agency.Ask<ReportProblem>().ReportAsync(TestAgency.Coordinator, report, Cancel)).Value.Stopped);
        return agency;
    }

    [Theory]
    [MemberData(nameof(TestAgency.BothProviders), MemberType = typeof(TestAgency))]
    public async Task A_stopped_call_asks_three_questions_and_hospital_answers_the_call_and_the_visits(Provider provider)
    {
        await using TestAgency agency = await AfterChillsAsync(provider);
        Assert.Equal(
            [AppDecisionCodes.ScreenStopped, DecisionCodes.UseLocked, AppDecisionCodes.VisitHeld],
            (await OpenOf(agency, "P44")).Select(r => r.Question.Code).Order(StringComparer.Ordinal));

        KeptDecision kept = (await DecideAsync(agency, await QuestionAsync(agency, "P44", AppDecisionCodes.ScreenStopped), DecisionChoice.ToHospital)).Value;

        Assert.Equal("Sorrel Mudlark", kept.ToTell[0].Who);
        Assert.Equal([DecisionCodes.UseLocked], (await OpenOf(agency, "P44")).Select(r => r.Question.Code));
        PatientOverview patient = (await agency.Ask<AskPatient>().AskAsync(Nurse, P44, Cancel)).Value;
        Assert.Equal("In hospital", patient.OnHold?.Reason);
        Assert.NotEmpty(patient.Locks);
        Assert.Empty(patient.Visits);
        Assert.All(patient.Due, row => Assert.Equal(Urgency.OnHold, row.Urgency));
        await using AgencyDb db = agency.Open();
        Assert.True((await AuditTrail.VerifyAsync(db, Cancel)).IsWhole);
        Assert.Contains(await db.AuditEntries.ToListAsync(Cancel), e => e.Action == "decide" && e.ActorName == ClinicalLead.Name);
    }

    [Theory]
    [MemberData(nameof(TestAgency.BothProviders), MemberType = typeof(TestAgency))]
    public async Task A_line_is_released_by_name_and_with_a_reason_and_not_otherwise(Provider provider)
    {
        await using TestAgency agency = await AfterChillsAsync(provider);
        OpenDecision locked = await QuestionAsync(agency, "P44", DecisionCodes.UseLocked);

        Assert.Equal("not-allowed", (await DecideAsync(agency, locked, DecisionChoice.ReleaseLine, TestAgency.Coordinator)).Refusal?.Code);
        Assert.Equal("decision-not-yours", (await DecideAsync(agency, locked, DecisionChoice.ReleaseLine, Nurse)).Refusal?.Code);
        Assert.Equal("licensed-name-missing", (await DecideAsync(agency, locked, DecisionChoice.ReleaseLine, name: " ")).Refusal?.Code);
        Assert.Equal("decision-reason-missing", (await DecideAsync(agency, locked, DecisionChoice.ReleaseLine, reason: "")).Refusal?.Code);
        Assert.Equal("choice-not-offered", (await DecideAsync(agency, locked, DecisionChoice.ConfirmTip)).Refusal?.Code);
        Assert.NotEmpty((await agency.Ask<AskPatient>().AskAsync(Nurse, P44, Cancel)).Value.Locks);

        Assert.True((await DecideAsync(agency, locked, DecisionChoice.ReleaseLine)).Succeeded);

        PatientOverview patient = (await agency.Ask<AskPatient>().AskAsync(Nurse, P44, Cancel)).Value;
        Assert.Empty(patient.Locks);
        LineEvent release = Assert.Single(patient.Ledger, e => e.Kind == LineEventKind.UseReleased);
        Assert.Equal(("H. Educator RN", ClinicalLead.Name), (release.PerformerName, release.RecordedBy));
        Outcome<KeptDecision> again = await DecideAsync(agency, locked, DecisionChoice.ReleaseLine);
        Assert.Equal("already-decided", again.Refusal?.Code);
        Assert.Contains("H. Educator RN", again.Refusal!.Sentence, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(Provider.Sqlite, DecisionChoice.ReleaseVisits)]
    [InlineData(Provider.Postgres, DecisionChoice.ReleaseVisits)]
    [InlineData(Provider.Sqlite, DecisionChoice.CancelVisits)]
    [InlineData(Provider.Postgres, DecisionChoice.CancelVisits)]
    public async Task A_held_visit_is_released_or_taken_out_as_a_new_version(Provider provider, DecisionChoice choice)
    {
        await using TestAgency agency = await AfterChillsAsync(provider);

        KeptDecision kept = (await DecideAsync(agency, await QuestionAsync(agency, "P44", AppDecisionCodes.VisitHeld), choice)).Value;

        Assert.Equal(2, kept.ToTell.Length);
        await using AgencyDb db = agency.Open();
        PlannedWeek week = (await WeekStore.PublishedAsync(db, DemoAgency.FirstDay, Cancel))!.Week;
        Assert.Equal(3, week.Version);
        Assert.Equal(choice == DecisionChoice.ReleaseVisits ? 1 : 0, week.Visits.Count(v => v.Patient == P44 && v.Held is null));
        Assert.DoesNotContain(week.Visits, v => v.Held is not null);
        Assert.DoesNotContain(await OpenOf(agency, "P44"), r => r.Question.Code == AppDecisionCodes.VisitHeld);
    }

    [Theory]
    [MemberData(nameof(TestAgency.BothProviders), MemberType = typeof(TestAgency))]
    public async Task Of_many_who_decide_at_once_exactly_one_does(Provider provider)
    {
        await using TestAgency agency = await AfterChillsAsync(provider);
        OpenDecision locked = await QuestionAsync(agency, "P44", DecisionCodes.UseLocked);

        Outcome<KeptDecision>[] outcomes = await Task.WhenAll(Enumerable.Range(0, 6).Select(i =>
            Task.Run(() => DecideAsync(agency, locked, DecisionChoice.KeepLocked, name: $"Person {i}"))));

        Assert.Single(outcomes, o => o.Succeeded);
        Assert.All(outcomes.Where(o => !o.Succeeded), o => Assert.Equal("already-decided", o.Refusal!.Code));
        await using AgencyDb db = agency.Open();
        Assert.Equal(1, await db.Decisions.CountAsync(Cancel));
    }

    [Theory]
    [MemberData(nameof(TestAgency.BothProviders), MemberType = typeof(TestAgency))]
    public async Task A_looser_order_counts_once_it_is_confirmed(Provider provider)
    {
        var order = new CareOrder
        {
            Id = "P01-loose",
            Patient = new PatientId("P01"),
            Kind = OrderKind.Interval,
            Item = CareItem.Dressing,
            EveryDays = 14,
            StartsOn = new LocalDate(2027, 3, 1),
        };
        await using TestAgency agency = await OpenAsync(
            provider, cluster, DemoAgency.At(8, 6, 0), r => r with { Orders = [.. r.Orders, order] });
        Assert.Equal(new LocalDate(2027, 3, 10), await LastDressingDayAsync(agency));

        Assert.True((await DecideAsync(agency, await QuestionAsync(agency, "P01", DecisionCodes.LooserOrder), DecisionChoice.ConfirmOrder)).Succeeded);

        Assert.Equal(new LocalDate(2027, 3, 17), await LastDressingDayAsync(agency));
        Assert.Empty(await OpenOf(agency, "P01"));
    }

    [Fact]
    public async Task An_acceptance_without_an_end_lasts_ninety_days_and_no_longer()
    {
        await using TestAgency agency = await OpenAsync(Provider.Sqlite, cluster, DemoAgency.At(8, 6, 0));
        OpenDecision lapsed = await QuestionAsync(agency, "P28", DecisionCodes.ValidationLapsed);
        var today = new LocalDate(2027, 3, 8);

        Assert.Equal("end-in-past", (await DecideAsync(agency, lapsed, DecisionChoice.AcceptUntil, until: today.PlusDays(-1))).Refusal?.Code);
        Assert.Equal("end-too-far", (await DecideAsync(agency, lapsed, DecisionChoice.AcceptUntil, until: today.PlusDays(91))).Refusal?.Code);
        Assert.Equal(today.PlusDays(90), (await DecideAsync(agency, lapsed, DecisionChoice.AcceptUntil)).Value.Record.Until);
    }

    [Fact]
    public async Task A_nurse_verifies_care_of_somebody_not_validated_and_the_nurse_check_is_done()
    {
        var care = new LineEvent
        {
            Id = new EventId("T1"),
            Patient = new PatientId("P01"),
            Line = new LineId("P01-1"),
            Kind = LineEventKind.DressingChanged,
            Dressing = DressingKind.Film,
            Performed = CareMoment.SometimeOn(new LocalDate(2027, 3, 7)),
            RecordedAt = DemoAgency.Now,
            Performer = PerformerKind.Caregiver,
            PerformerName = "neighbour",
        };
        await using TestAgency agency = await OpenAsync(Provider.Sqlite, cluster, DemoAgency.At(8, 6, 0), r => r with { Events = [.. r.Events, care] });

        Assert.True((await DecideAsync(agency, await QuestionAsync(agency, "P01", DecisionCodes.UnverifiedCare), DecisionChoice.VerifyCare, Nurse)).Succeeded);

        PatientOverview patient = (await agency.Ask<AskPatient>().AskAsync(Nurse, new PatientId("P01"), Cancel)).Value;
        Assert.DoesNotContain(patient.Due, r => r.Window.Item == CareItem.NurseCheck);
        Assert.Empty(patient.Decisions);
    }

    [Fact]
    public async Task The_count_follows_the_record()
    {
        await using TestAgency agency = await AfterChillsAsync(Provider.Sqlite);
        var asking = agency.Ask<AskDecisions>();
        int before = (await asking.CountAsync(ClinicalLead, Cancel)).Value;
        Assert.Equal((await asking.ListAsync(ClinicalLead, Cancel)).Value.Open.Length, before);

        Assert.True((await DecideAsync(agency, await QuestionAsync(agency, "P44", DecisionCodes.UseLocked), DecisionChoice.ReleaseLine)).Succeeded);

        Assert.Equal(before - 1, (await asking.CountAsync(ClinicalLead, Cancel)).Value);
    }

    [Theory]
    [MemberData(nameof(TestAgency.BothProviders), MemberType = typeof(TestAgency))]
    public async Task A_decision_is_written_once(Provider provider)
    {
        await using TestAgency agency = await AfterChillsAsync(provider);
        Assert.True((await DecideAsync(agency, await QuestionAsync(agency, "P44", DecisionCodes.UseLocked), DecisionChoice.ReleaseLine)).Succeeded);
        await using AgencyDb db = agency.Open();

        await Assert.ThrowsAnyAsync<Exception>(() => db.Decisions.ExecuteDeleteAsync(Cancel));
    }

    [Fact]
    public async Task A_safety_visit_without_an_as_needed_visit_left_goes_ahead_and_opens_an_order_request()
    {
        await using TestAgency agency = await OpenAsync(
            Provider.Sqlite, cluster, DemoAgency.At(9, 7, 52),
            r => r with { Orders = [.. r.Orders.Select(o => o.Id == "P03-visits" ? o with { AsNeededUsed = 3 } : o)] });
        var report = new ProblemReport
        {
            Patient = new PatientId("P03"),
            Line = new LineId("P03-1"),
            Caller = "spouse",
            SeenAt = DemoAgency.At(9, 7, 52),
            Answers = SymptomScreen.Questions(ScreenContext.Unknown).ToImmutableDictionary(q => q.Id, _ => ScreenAnswer.No),
            Finding = SealFinding.EdgeLifted | SealFinding.Moisture,
        };
        var reporting = agency.Ask<ReportProblem>();
        ReportResult result = (await reporting.ReportAsync(TestAgency.Coordinator, report, Cancel)).Value;

        Assert.True((await reporting.ApplyAsync(TestAgency.Coordinator, result.ReportId, "A", "", Cancel)).Succeeded);

        OpenDecision asked = await QuestionAsync(agency, "P03", AppDecisionCodes.OrderRequested);
        Assert.True((await DecideAsync(agency, asked, DecisionChoice.Settle, Nurse, reason: "verbal order taken, read back")).Succeeded);
        Assert.DoesNotContain(await OpenOf(agency, "P03"), r => r.Question.Code == AppDecisionCodes.OrderRequested);
    }
}
