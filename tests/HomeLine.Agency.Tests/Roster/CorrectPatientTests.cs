using HomeLine.Agency.Due;
using HomeLine.Agency.Roster;
using HomeLine.Agency.Tests.Storage;
using HomeLine.LineCare;
using HomeLine.LineCare.Lines;
using NodaTime;
using static HomeLine.Agency.Tests.DemoOnDatabase;

namespace HomeLine.Agency.Tests.Roster;

/// <summary>Birth dates and starts of care that were wrong, through the real database. P17's care started on 11 January; invented data.</summary>
public sealed class CorrectPatientTests(PostgresCluster cluster)
{
    private static readonly PatientId P17 = new("P17");
    private static readonly PatientCorrection AWeekLater = new(P17, new LocalDate(1958, 5, 1), new LocalDate(2027, 1, 18), "discharge paper");

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    private static async Task<DueRow?> RecertificationAsync(TestAgency agency) =>
        (await agency.Ask<AskPatient>().AskAsync(Nurse, P17, Cancel)).Value.Due.FirstOrDefault(r => r.Window.Item == CareItem.Recertification);

    /// <summary>Days 56 to 60 of each 60, the start of care being day 1 (42 CFR 484.55(d)): 7 to 11 March, a week later 14 to 18 March.</summary>
    [Theory]
    [MemberData(nameof(TestAgency.BothProviders), MemberType = typeof(TestAgency))]
    public async Task An_edited_start_of_care_lists_what_moves_and_then_moves_it(Provider provider)
    {
        await using TestAgency agency = await OpenAsync(provider, cluster, DemoAgency.At(8, 6, 0));
        var correcting = agency.Ask<CorrectPatient>();
        Assert.Equal(new LocalDate(2027, 3, 11), (await RecertificationAsync(agency))?.Window.LastDay);

        CorrectionEffects seen = (await correcting.PreviewAsync(Nurse, AWeekLater, Cancel)).Value;
        Assert.Contains(seen.Moved, m => m.After is { Item: CareItem.Recertification } after && after.LastDay == new LocalDate(2027, 3, 18));
        Assert.Equal(new LocalDate(2027, 3, 11), (await RecertificationAsync(agency))?.Window.LastDay);

        CorrectionEffects kept = (await correcting.KeepAsync(Nurse, AWeekLater, Cancel)).Value;
        Assert.Equal(seen.Moved.Select(m => m.To), kept.Moved.Select(m => m.To));
        Assert.Equal(new LocalDate(2027, 3, 18), (await RecertificationAsync(agency))?.Window.LastDay);
    }

    [Fact]
    public async Task A_birth_date_settles_the_question_and_a_date_that_cannot_be_is_refused()
    {
        await using TestAgency agency = await OpenAsync(Provider.Sqlite, cluster, DemoAgency.At(8, 6, 0));
        var correcting = agency.Ask<CorrectPatient>();

        CorrectionEffects unknown = (await correcting.KeepAsync(Nurse, AWeekLater with { BornOn = null }, Cancel)).Value;
        Assert.NotEmpty(unknown.Asked);
        Assert.Contains((await agency.Ask<AskPatient>().AskAsync(Nurse, P17, Cancel)).Value.Decisions, d => d.Code == DecisionCodes.BirthDateMissing);
        Assert.NotEmpty((await correcting.KeepAsync(Nurse, AWeekLater, Cancel)).Value.Settled);

        Assert.Equal("care-start-in-future", (await correcting.KeepAsync(Nurse, AWeekLater with { CareStartedOn = new LocalDate(2027, 3, 9) }, Cancel)).Refusal?.Code);
        Assert.Equal("birth-date-out-of-range", (await correcting.KeepAsync(Nurse, AWeekLater with { BornOn = new LocalDate(1858, 5, 1) }, Cancel)).Refusal?.Code);
        Assert.Equal("care-before-birth", (await correcting.KeepAsync(Nurse, AWeekLater with { BornOn = new LocalDate(2027, 2, 1) }, Cancel)).Refusal?.Code);
        Assert.Equal("correction-reason-missing", (await correcting.KeepAsync(Nurse, AWeekLater with { Reason = " " }, Cancel)).Refusal?.Code);
        Assert.Equal("not-allowed", (await correcting.KeepAsync(TestAgency.Administrator, AWeekLater, Cancel)).Refusal?.Code);
    }
}
