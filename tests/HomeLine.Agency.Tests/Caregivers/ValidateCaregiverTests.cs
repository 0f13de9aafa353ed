using System.Collections.Immutable;
using HomeLine.Agency.Caregivers;
using HomeLine.Agency.Due;
using HomeLine.Agency.Orders;
using HomeLine.Agency.Tests.Storage;
using HomeLine.LineCare;
using HomeLine.LineCare.Lines;
using NodaTime;
using static HomeLine.Agency.Tests.DemoOnDatabase;

namespace HomeLine.Agency.Tests.Caregivers;

/// <summary>Who is validated for what, through the real database. P28's spouse lapsed on Friday 5 March; invented data.</summary>
public sealed class ValidateCaregiverTests(PostgresCluster cluster)
{
    private static readonly PatientId P28 = new("P28");
    private static readonly LocalDate Today = new(2027, 3, 8);

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    private static ValidationEntry Entry(params ImmutableArray<CareItem> items) => new(P28, "spouse", items, null, Today.PlusDays(30));

    private static async Task<PatientOverview> PatientAsync(TestAgency agency) => (await agency.Ask<AskPatient>().AskAsync(Nurse, P28, Cancel)).Value;

    [Theory]
    [MemberData(nameof(TestAgency.BothProviders), MemberType = typeof(TestAgency))]
    public async Task A_renewal_gives_the_task_back_and_answers_the_lapse_and_a_stop_takes_it_at_once(Provider provider)
    {
        await using TestAgency agency = await OpenAsync(provider, cluster, DemoAgency.At(8, 6, 0));
        Assert.Contains((await PatientAsync(agency)).Decisions, d => d.Code == DecisionCodes.ValidationLapsed);
        Assert.Contains((await agency.Ask<AskOrders>().AskAsync(Nurse, Cancel)).Value.Lapsing, l => l.HasLapsed && l.Validation.Patient == P28);
        CareItem[] lapsed = [.. (await PatientAsync(agency)).Caregivers.Where(c => c.ValidThrough < Today).Select(c => c.Item)];
        Line line = (await PatientAsync(agency)).Lines[0];
        LineId? on = (await PatientAsync(agency)).Caregivers.First(c => c.ValidThrough < Today).Line;

        Assert.True((await agency.Ask<ValidateCaregiver>().ValidateAsync(Nurse, Entry([.. lapsed]) with { Line = on }, Cancel)).Succeeded);

        PatientOverview renewed = await PatientAsync(agency);
        Assert.DoesNotContain(renewed.Decisions, d => d.Code == DecisionCodes.ValidationLapsed);
        Assert.Equal(PerformerKind.Caregiver, renewed.Due.First(r => r.Window.Item == CareItem.Dressing && r.Window.Line == line.Id).Window.Owner);
        CaregiverValidation dressing = renewed.Caregivers.First(c => c.Item == CareItem.Dressing && c.ValidThrough >= Today);
        Assert.Equal("validation-reason-missing", (await agency.Ask<ValidateCaregiver>().StopAsync(ClinicalLead, dressing, "", Cancel)).Refusal?.Code);
        Assert.True((await agency.Ask<ValidateCaregiver>().StopAsync(ClinicalLead, dressing, "site was touched", Cancel)).Succeeded);
        Assert.Equal(PerformerKind.Nurse, (await PatientAsync(agency)).Due.First(r => r.Window.Item == CareItem.Dressing && r.Window.Line == line.Id).Window.Owner);
    }

    [Fact]
    public async Task A_validation_needs_a_person_a_task_and_an_end_within_the_life_that_policy_gives()
    {
        await using TestAgency agency = await OpenAsync(Provider.Sqlite, cluster, DemoAgency.At(8, 6, 0));
        var validating = agency.Ask<ValidateCaregiver>();

        Assert.Equal("caregiver-missing", (await validating.ValidateAsync(Nurse, Entry(CareItem.Dressing) with { Person = " " }, Cancel)).Refusal?.Code);
        Assert.Equal("task-missing", (await validating.ValidateAsync(Nurse, Entry(), Cancel)).Refusal?.Code);
        Assert.Equal("task-missing", (await validating.ValidateAsync(Nurse, Entry(CareItem.Recertification), Cancel)).Refusal?.Code);
        Assert.Equal("line-unknown", (await validating.ValidateAsync(Nurse, Entry(CareItem.Dressing) with { Line = new LineId("P01-1") }, Cancel)).Refusal?.Code);
        Assert.Equal("validation-out-of-range", (await validating.ValidateAsync(Nurse, Entry(CareItem.Dressing) with { Through = Today.PlusDays(91) }, Cancel)).Refusal?.Code);
        Assert.Equal("not-allowed", (await validating.ValidateAsync(TestAgency.Coordinator, Entry(CareItem.Dressing), Cancel)).Refusal?.Code);
        Assert.Equal(Today.PlusDays(90), (await validating.ValidateAsync(Nurse, Entry(CareItem.Dressing) with { Through = null }, Cancel)).Value[0].ValidThrough);
    }

    /// <summary>P10 has a PICC and an idle port.</summary>
    [Fact]
    public async Task What_was_shown_on_one_kind_of_line_does_not_count_on_another()
    {
        await using TestAgency agency = await OpenAsync(Provider.Sqlite, cluster, DemoAgency.At(8, 6, 0));
        var validating = agency.Ask<ValidateCaregiver>();
        ValidationEntry lesson = Entry(CareItem.Connector) with { Patient = new PatientId("P10"), Person = "neighbour" };

        Assert.Equal("device-missing", (await validating.ValidateAsync(Nurse, lesson, Cancel)).Refusal?.Code);
        Assert.Equal("device-missing", (await validating.ValidateAsync(Nurse, lesson with { Device = LineKind.Tunneled }, Cancel)).Refusal?.Code);
        CaregiverValidation kept = Assert.Single((await validating.ValidateAsync(Nurse, lesson with { Device = LineKind.Picc }, Cancel)).Value);
        Assert.Equal(new LineId("P10-1"), kept.Line);
    }

    /// <summary>Both lines of P10 are shown one after the other; a stop takes the task on both.</summary>
    [Fact]
    public async Task A_stop_counts_on_every_line()
    {
        await using TestAgency agency = await OpenAsync(Provider.Sqlite, cluster, DemoAgency.At(8, 6, 0));
        var validating = agency.Ask<ValidateCaregiver>();
        ValidationEntry lesson = Entry(CareItem.Connector) with { Patient = new PatientId("P10"), Person = "neighbour" };
        CaregiverValidation picc = (await validating.ValidateAsync(Nurse, lesson with { Device = LineKind.Picc }, Cancel)).Value[0];
        await validating.ValidateAsync(Nurse, lesson with { Device = LineKind.Port }, Cancel);

        Assert.True((await validating.StopAsync(ClinicalLead, picc, "hub was touched", Cancel)).Succeeded);

        PatientOverview patient = (await agency.Ask<AskPatient>().AskAsync(Nurse, new PatientId("P10"), Cancel)).Value;
        Assert.All(patient.Caregivers.Where(c => c.Person == "neighbour"), c => Assert.True(c.ValidThrough < Today));
    }
}
