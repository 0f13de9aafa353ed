using HomeLine.Agency.Access;
using HomeLine.Agency.Roster;
using HomeLine.Agency.Sheets;
using HomeLine.Agency.Tests.Storage;
using HomeLine.LineCare.Lines;
using Microsoft.Extensions.DependencyInjection;
using NodaTime;

namespace HomeLine.Agency.Tests.Sheets;

/// <summary>What the demonstration's printed sheets say. Invented data.</summary>
public sealed class CareSheetTests(PostgresCluster cluster)
{
    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    private async Task<TestAgency> OpenAsync()
    {
        TestAgency agency = await TestAgency.OnAsync(Provider.Sqlite, cluster);
        await agency.Services.GetRequiredService<OpenAgency>().OpenAsync(Actors.SetUp, DemoAgency.Roster, DemoAgency.Published, Cancel);
        return agency;
    }

    private static async Task<CareSheetContent> SheetAsync(TestAgency agency, string patient) =>
        (await agency.Services.GetRequiredService<AskSheets>().CareSheetAsync(TestAgency.Coordinator, new PatientId(patient), Cancel)).Value;

    [Fact]
    public async Task A_spouse_who_is_not_validated_for_dressings_sees_the_nurse_beside_them()
    {
        await using TestAgency agency = await OpenAsync();

        CareSheetContent sheet = await SheetAsync(agency, "P03");

        Assert.Equal("Your nurse comes on Wednesday, March 10, between 1:12 pm and 2:12 pm.", sheet.MainMessage);
        Assert.Equal(
            [
                "True You (spouse): Change the tubing, With each new bag or dose",
                "True You (spouse): Flush the part not in use, By Wednesday, March 10",
                "False Nurse: Change the dressing, Wednesday, March 10",
                "False Nurse: Change the cap, Wednesday, March 10",
                "False Nurse: Draw blood for tests, Wednesday, March 10",
            ],
            sheet.Tasks.Select(t => $"{t.IsTheirs} {t.Whose}: {t.Task}, {t.When}"));
    }

    [Fact]
    public async Task A_sister_validated_for_everything_has_the_dressing_ticked()
    {
        await using TestAgency agency = await OpenAsync();

        CareSheetContent sheet = await SheetAsync(agency, "P27");

        Assert.Contains(sheet.Tasks, t => t is { Task: "Change the dressing", IsTheirs: true, Whose: "You (sister)" });
    }

    [Fact]
    public async Task A_new_sheet_replaces_the_last_one_by_number()
    {
        await using TestAgency agency = await OpenAsync();

        CareSheetContent first = await SheetAsync(agency, "P03");
        CareSheetContent second = await SheetAsync(agency, "P03");

        Assert.Equal((1, 2), (first.Number, second.Number));
        Assert.Null(first.Replaces);
        Assert.Equal((1, new LocalDate(2027, 3, 8)), second.Replaces);
    }

    [Theory]
    [InlineData("P05")]
    [InlineData("P40")]
    public async Task Nobody_with_an_allergy_or_under_two_months_reads_of_chlorhexidine_without_the_warning(string patient)
    {
        await using TestAgency agency = await OpenAsync();

        Assert.Contains((await SheetAsync(agency, patient)).NotToUse, n => n.Contains("chlorhexidine", StringComparison.Ordinal));
    }

    [Fact]
    public async Task Times_are_those_of_the_patients_own_zone()
    {
        await using TestAgency agency = await OpenAsync();

        Assert.Equal("Your nurse comes on Wednesday, March 10, between 10:30 am and 11:30 am.", (await SheetAsync(agency, "P57")).MainMessage);
    }

    [Fact]
    public async Task A_day_sheet_says_what_to_do_bring_and_watch_for_and_names_no_therapy()
    {
        await using TestAgency agency = await OpenAsync();

        DaySheetContent sheet = (await agency.Services.GetRequiredService<AskSheets>().DaySheetAsync(TestAgency.Coordinator, "N4", new LocalDate(2027, 3, 9), Cancel)).Value;

        Assert.Equal(["Oxlip Snufflebrook", "Nasturt Lollopfield", "Eyebright Noodleham"], sheet.Stops.Select(s => s.PatientName));
        Assert.Contains("skin antiseptic without chlorhexidine, as ordered", sheet.Stops[0].Bring);
        Assert.Contains("dressing without any chlorhexidine part", sheet.Stops[0].Bring);
        Assert.DoesNotContain("skin antiseptic: chlorhexidine with alcohol", sheet.Stops[0].Bring);
        Assert.Contains(sheet.Stops[2].Unusual, u => u.StartsWith("No chlorhexidine", StringComparison.Ordinal));
        Assert.All(sheet.Stops, s => Assert.DoesNotContain("antibiotic", string.Join(' ', [.. s.ToDo, .. s.Bring, .. s.Unusual]), StringComparison.OrdinalIgnoreCase));
    }

    /// <summary>P19 has a dose by a nurse every day; the sheet of Wednesday names Wednesday and not the first day that is still open.</summary>
    [Fact]
    public async Task Care_of_every_day_stands_with_the_day_it_is_done_on()
    {
        await using TestAgency agency = await OpenAsync();

        DaySheetContent sheet = (await agency.Services.GetRequiredService<AskSheets>().DaySheetAsync(TestAgency.Coordinator, "N1", new LocalDate(2027, 3, 10), Cancel)).Value;

        Assert.EndsWith("last day Wed Mar 10", Assert.Single(sheet.Stops.Single(s => s.PatientName == "Samphire Quibblestone").ToDo), StringComparison.Ordinal);
    }
}
