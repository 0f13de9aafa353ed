using System.Collections.Immutable;
using HomeLine.Agency.Mending;
using HomeLine.Agency.Storage;
using HomeLine.Agency.Tests.Storage;
using HomeLine.Agency.WeekPlanning;
using HomeLine.LineCare.RedFlags;
using NodaTime;

namespace HomeLine.Agency.Tests.Mending;

/// <summary>The words a test of the red-letter Tuesday speaks in. Our own scenario, invented throughout.</summary>
internal static class Tuesday
{
    public static readonly LocalDate Day = new(2027, 3, 9);

    /// <summary>Every question of the screen answered no, but for one.</summary>
    public static ImmutableDictionary<string, ScreenAnswer> AllNoBut(string? yes = null) => SymptomScreen.Questions(ScreenContext.Unknown)
        .ToImmutableDictionary(q => q.Id, q => q.Id == yes ? ScreenAnswer.Yes : ScreenAnswer.No);

    public static async Task<FiledTrouble> ReportAsync(this TestAgency agency, TroubleEntry entry)
    {
        Outcome<TroubleResult> result = await agency.Ask<MendTrouble>().ReportAsync(TestAgency.Coordinator, entry, TestContext.Current.CancellationToken);
        Assert.True(result.Succeeded, result.Refusal?.ToString());
        return result.Value.Filed;
    }

    public static async Task<AppliedTrouble> ApplyAsync(this TestAgency agency, FiledTrouble trouble, string key = "A", string reason = "agreed by phone")
    {
        Outcome<AppliedTrouble> result = await agency.Ask<MendTrouble>().ApplyAsync(TestAgency.Coordinator, trouble.Id, key, reason, TestContext.Current.CancellationToken);
        Assert.True(result.Succeeded, result.Refusal?.ToString());
        return result.Value;
    }

    public static async Task<PlannedWeek> WeekAsync(this TestAgency agency)
    {
        await using AgencyDb db = agency.Open();
        return (await WeekStore.PublishedAsync(db, DemoAgency.FirstDay, TestContext.Current.CancellationToken))!.Week;
    }

    /// <summary>The identifier of a patient's visit in the week as seeded.</summary>
    public static string Visit(int day, string patient) => DemoAgency.Published.Visits.Single(v => v.Patient.Value == patient && v.Day.Day == day).Id;

    public static IEnumerable<string> Patients(this ImmutableArray<BrokenInWords> broken) => broken.Select(b => b.Visit.Patient.Value);

    public static VisitChange Of(this MendAnswer answer, string patient) =>
        answer.Changes.Single(c => (c.Before ?? c.After)!.Patient.Value == patient);
}
