using HomeLine.Agency.Access;
using HomeLine.Agency.Decisions;
using HomeLine.Agency.Due;
using HomeLine.Agency.Tests.Storage;
using HomeLine.Agency.Visits;
using HomeLine.LineCare;
using HomeLine.LineCare.Lines;
using HomeLine.LineCare.Recording;
using HomeLine.LineCare.Scope;
using NodaTime;
using static HomeLine.Agency.Tests.DemoOnDatabase;
using static HomeLine.Agency.Tests.Visits.VisitOf;

namespace HomeLine.Agency.Tests.Visits;

/// <summary>Levels, lessons, scope and skin at a recorded visit; invented data.</summary>
public sealed class DrawsTeachingAndScopeTests(PostgresCluster cluster)
{
    private const string LevelForP04 = "2027-03-09-P04";
    private const string BundleForP37 = "2027-03-11-P37";

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    private static async Task<VisitCheck> CheckAsync(TestAgency agency, VisitEntry entry, Actor? nurse = null) =>
        (await agency.Ask<RecordVisit>().CheckAsync(nurse ?? Juniper, entry, null, Cancel)).Value;

    /// <summary>P04: vancomycin at 10:00 and 22:00, trough before the morning dose, one lumen only.</summary>
    [Fact]
    public async Task A_level_needs_the_last_dose_and_one_through_the_drugs_lumen_or_off_the_dose_times_is_asked_about()
    {
        await using TestAgency agency = await OpenAsync(Provider.Sqlite, cluster, DemoAgency.At(9, 12, 0));
        VisitEntry entry = await DoneAsync(agency, Juniper, LevelForP04, 9, 9, 31);
        DrawEntry draw = entry.Draws[0];

        Assert.Contains(RecordingCodes.LevelWithoutLastDose, (await CheckAsync(agency, entry)).Faults.Select(f => f.Code));
        VisitEntry timed = entry with { Draws = [draw with { LastDose = new LocalDateTime(2027, 3, 8, 22, 5) }] };
        Assert.Empty((await CheckAsync(agency, timed)).Faults);
        Assert.DoesNotContain((await CheckAsync(agency, timed)).Questions, q => q.Code == RecordingCodes.LevelOffDose);
        VisitEntry early = entry with { Draws = [draw with { LastDose = new LocalDateTime(2027, 3, 9, 8, 30) }] };
        Assert.Contains((await CheckAsync(agency, early)).Questions, q => q.Code == RecordingCodes.LevelOffDose);
        VisitEntry through = entry with { Draws = [draw with { LastDose = new LocalDateTime(2027, 3, 8, 22, 5), Line = new LineId("P04-1"), Lumen = "A" }] };
        Assert.Contains((await CheckAsync(agency, through)).Questions, q => q.Code == RecordingCodes.LevelFromDrugLumen);
        VisitEntry late = entry with { Draws = [draw with { LastDose = new LocalDateTime(2027, 3, 8, 22, 5), DroppedAt = new LocalTime(12, 0) }] };
        Assert.Contains((await CheckAsync(agency, late)).Told, t => t.Contains("policy lets 120 pass", StringComparison.Ordinal));
    }

    [Fact]
    public async Task A_caregiver_who_did_it_alone_is_validated_and_one_with_prompts_is_not()
    {
        await using TestAgency agency = await OpenAsync(Provider.Sqlite, cluster, DemoAgency.At(9, 12, 0));
        var line = new LineId("P12-1");
        VisitEntry entry = await DoneAsync(agency, Juniper, "2027-03-09-P12", 9, 8, 10);
        entry = entry with
        {
            Teaching = [new TeachBack("spouse", CareItem.Dressing, line, TeachLevel.Independent, true), new TeachBack("spouse", CareItem.Connector, line, TeachLevel.WithPrompts, false)],
        };
        Assert.Contains(VisitCodes.TeachingNotIndependent, (await CheckAsync(agency, entry with { Teaching = [entry.Teaching[1] with { Validate = true }] })).Faults.Select(f => f.Code));

        Assert.True((await agency.Ask<RecordVisit>().SignAsync(Juniper, entry, Cancel)).Succeeded);

        PatientOverview patient = (await agency.Ask<AskPatient>().AskAsync(Juniper, new PatientId("P12"), Cancel)).Value;
        CaregiverValidation kept = Assert.Single(patient.Caregivers, c => c.Person == "spouse");
        Assert.Equal((CareItem.Dressing, (LineId?)line, new LocalDate(2027, 6, 7)), (kept.Item, kept.Line, kept.ValidThrough));
    }

    [Fact]
    public async Task A_caregiver_who_is_not_validated_did_it_and_it_is_kept_as_unverified()
    {
        await using TestAgency agency = await OpenAsync(Provider.Sqlite, cluster, DemoAgency.At(9, 12, 0));
        VisitEntry entry = (await DoneAsync(agency, Juniper, "2027-03-09-P12", 9, 8, 10)).ButItem(CareItem.Connector, i => i with { DoneBy = "spouse" });

        VisitCheck check = await CheckAsync(agency, entry);

        Assert.Contains(check.Told, t => t.Contains("spouse is not validated", StringComparison.Ordinal));
    }

    /// <summary>N5 is a practical nurse: every visit of his is co-signed (our own default), and a port is beyond his scope.</summary>
    [Fact]
    public async Task A_practical_nurses_visit_waits_for_a_supervisor_who_is_not_himself()
    {
        await using TestAgency agency = await OpenAsync(Provider.Sqlite, cluster, DemoAgency.At(11, 12, 0));
        VisitEntry entry = await DoneAsync(agency, Linden, BundleForP37, 11, 8, 0);
        VisitRecord record = (await agency.Ask<RecordVisit>().SignAsync(Linden, await entry.AnsweredAsync(agency, Linden), Cancel)).Value;
        var signing = agency.Ask<CoSignVisit>();

        Assert.True(record.NeedsCoSign);
        Assert.Single((await agency.Ask<AskVisitList>().AskAsync(Linden, Cancel)).Value.ToCoSign);
        Assert.Equal("cosign-own", (await signing.SignAsync(Linden, record.Id, "", Cancel)).Refusal?.Code);
        Assert.Equal("Juniper Brasslock", (await signing.SignAsync(Juniper, record.Id, "read and discussed", Cancel)).Value.By);
        Assert.Equal("cosigned-already", (await signing.SignAsync(ClinicalLead, record.Id, "", Cancel)).Refusal?.Code);
        Assert.Empty((await agency.Ask<AskVisitList>().AskAsync(Linden, Cancel)).Value.ToCoSign);
    }

    [Fact]
    public async Task A_port_in_a_practical_nurses_hands_is_asked_about_before_and_after()
    {
        await using TestAgency agency = await OpenAsync(Provider.Sqlite, cluster, DemoAgency.At(9, 12, 0));
        VisitBrief brief = (await agency.Ask<AskVisit>().PlannedAsync(Linden, "2027-03-09-P08", Cancel)).Value;
        Assert.Contains(brief.BeyondScope, r => r.Contains("not implanted ports", StringComparison.Ordinal));

        VisitCheck check = await CheckAsync(agency, Done(brief, "2027-03-09-P08", 9, 9, 5), Linden);

        Assert.Contains(check.Questions, q => q.Code == ScopeCodes.BeyondCredential);
        Assert.True(check.NeedsCoSign);
    }

    [Fact]
    public async Task A_skin_injury_is_proposed_and_once_decided_stops_early_changes()
    {
        await using TestAgency agency = await OpenAsync(Provider.Sqlite, cluster, DemoAgency.At(9, 12, 0));
        VisitEntry entry = (await DoneAsync(agency, Juniper, "2027-03-09-P12", 9, 8, 10)).ButLine(l => l with { Found = SiteFinding.AdhesiveInjury });
        Assert.True((await agency.Ask<RecordVisit>().SignAsync(Juniper, await entry.AnsweredAsync(agency, Juniper), Cancel)).Succeeded);
        OpenDecision asked = Assert.Single(
            (await agency.Ask<AskDecisions>().ListAsync(ClinicalLead, Cancel)).Value.Open, d => d.Question.Code == AppDecisionCodes.AdhesiveInjuryFound).Question;

        Assert.True((await agency.Ask<DecideQuestion>().DecideAsync(ClinicalLead, new DecisionMade(asked.Key, asked.Round, DecisionChoice.PutOnFile, "Hyssop Lanternlow RN", "blisters"), Cancel)).Succeeded);

        PatientOverview patient = (await agency.Ask<AskPatient>().AskAsync(Juniper, new PatientId("P12"), Cancel)).Value;
        Assert.True(patient.Patient.Risks.HasFlag(RiskFactors.AdhesiveInjury));
        var window = patient.Due.First(r => r.Window.Item == CareItem.Dressing).Window;
        Assert.Equal(window.LastDay, window.OpensOn);
    }
}
