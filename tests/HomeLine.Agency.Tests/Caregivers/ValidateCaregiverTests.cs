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
        CaregiverValidation dressing = renewed.Caregivers.First(c => c.Item == CareItem.Dressing);
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
}
