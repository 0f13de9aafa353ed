using HomeLine.Agency.Due;
using HomeLine.Agency.Lines;
using HomeLine.Agency.Tests.Storage;
using HomeLine.LineCare;
using HomeLine.LineCare.Lines;
using HomeLine.LineCare.Recording;
using NodaTime;
using static HomeLine.Agency.Tests.DemoOnDatabase;

namespace HomeLine.Agency.Tests.Lines;

/// <summary>A line written down at the home; invented data. P01 has one PICC in the left arm.</summary>
public sealed class AddLineTests(PostgresCluster cluster)
{
    private static readonly PatientId P01 = new("P01");

    private static readonly LineToAdd Midline = new()
    {
        Patient = P01,
        Kind = LineKind.Midline,
        Lumens = 1,
        Site = "right cephalic",
        InsertedOn = new LocalDate(2027, 3, 8),
        Dressing = DressingKind.GauzeUnderFilm,
        OutsideLengthCm = 2,
    };

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    private static Task<TestAgency> OpenedAsync(PostgresCluster cluster, Provider provider = Provider.Sqlite) => OpenAsync(provider, cluster, DemoAgency.At(9, 12, 0));

    /// <summary>Gauze under film from Monday 8 March runs as gauze: two days (SHEA/IDSA/APIC 2022), so Wednesday 10.</summary>
    [Theory]
    [MemberData(nameof(TestAgency.BothProviders), MemberType = typeof(TestAgency))]
    public async Task Its_clocks_start_with_the_insertion(Provider provider)
    {
        await using TestAgency agency = await OpenedAsync(cluster, provider);

        AddedLine added = (await agency.Ask<AddLine>().AddAsync(Nurse, Midline, Cancel)).Value;

        Assert.Equal("P01-2", added.Line.Id.Value);
        PatientOverview patient = (await agency.Ask<AskPatient>().AskAsync(Nurse, P01, Cancel)).Value;
        Assert.Equal(new LocalDate(2027, 3, 10), patient.Due.First(r => r.Window.Line == added.Line.Id && r.Window.Item == CareItem.Dressing).Window.LastDay);
    }

    [Fact]
    public async Task A_tip_that_is_not_confirmed_locks_the_line()
    {
        await using TestAgency agency = await OpenedAsync(cluster);

        AddedLine added = (await agency.Ask<AddLine>().AddAsync(Nurse, Midline with { Kind = LineKind.Tunneled, Site = "chest" }, Cancel)).Value;

        Assert.Contains(added.Told, t => t.Contains("not for use", StringComparison.Ordinal));
        PatientOverview patient = (await agency.Ask<AskPatient>().AskAsync(Nurse, P01, Cancel)).Value;
        Assert.Contains(patient.Locks, l => l.Line == added.Line.Id && l.Code == DecisionCodes.TipUnconfirmed);
    }

    [Fact]
    public async Task What_cannot_be_is_refused_and_the_same_line_twice_is_asked_about()
    {
        await using TestAgency agency = await OpenedAsync(cluster);
        var adding = agency.Ask<AddLine>();

        Assert.Equal(LineCodes.InsertedInFuture, (await adding.AddAsync(Nurse, Midline with { InsertedOn = new LocalDate(2027, 3, 10) }, Cancel)).Refusal?.Code);
        Assert.Equal(LineCodes.LumensUnclear, (await adding.AddAsync(Nurse, Midline with { Lumens = 0 }, Cancel)).Refusal?.Code);
        Assert.Equal(RecordingCodes.LengthOutOfRange, (await adding.AddAsync(Nurse, Midline with { OutsideLengthCm = 61 }, Cancel)).Refusal?.Code);
        LineToAdd again = Midline with { Kind = LineKind.Picc, Site = "left basilic", TipConfirmed = true };
        Assert.Equal(LineCodes.Overlaps, (await adding.AddAsync(Nurse, again, Cancel)).Refusal?.Code);
        Assert.True((await adding.AddAsync(Nurse, again with { Answer = "a second one, the first comes out on Friday" }, Cancel)).Succeeded);
        Assert.Equal("not-allowed", (await adding.AddAsync(TestAgency.Coordinator, Midline, Cancel)).Refusal?.Code);
    }
}
