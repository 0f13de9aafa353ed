using HomeLine.Agency.Tests.Storage;
using HomeLine.Agency.WeekEditing;
using NodaTime;

namespace HomeLine.Agency.Tests.WeekEditing;

/// <summary>A leave entered over the published demonstration week. Invented data.</summary>
public sealed class KeepLeaveTests(PostgresCluster cluster)
{
    private static readonly LocalDate Thursday = new(2027, 3, 11);

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    private Task<TestAgency> OpenAsync() => DemoOnDatabase.OpenAsync(Provider.Sqlite, cluster, DemoAgency.Now);

    [Fact]
    public async Task The_visits_it_touches_are_listed_before_it_is_kept()
    {
        await using TestAgency agency = await OpenAsync();
        var leave = new LeaveEntry("N5", Thursday, Thursday, "training");

        LeaveEffect effect = (await agency.Ask<KeepLeave>().LookAsync(TestAgency.Coordinator, leave, Cancel)).Value;
        Outcome<LeaveEffect> unseen = await agency.Ask<KeepLeave>().KeepAsync(TestAgency.Coordinator, leave, 0, Cancel);
        Outcome<LeaveEffect> seen = await agency.Ask<KeepLeave>().KeepAsync(TestAgency.Coordinator, leave, effect.Affected.Length, Cancel);

        Assert.Equal(["08:00 P37", "09:40 P35", "13:30 P36"], effect.Affected.Select(a => a[11..20]));
        Assert.Equal("leave-touches-visits", unseen.Refusal?.Code);
        Assert.True(seen.Succeeded);
        // The visits stay published, and the draft's checker says why that cannot be.
        WorkingWeek week = (await agency.Ask<EditWeek>().OpenAsync(TestAgency.Coordinator, DemoAgency.FirstDay, Cancel)).Value;
        Assert.Contains(week.Hand.Check.Findings, f => f.Nurse == "N5" && f.Reason.Code == "not-working");
        Assert.Equal("leave-twice", (await agency.Ask<KeepLeave>().LookAsync(TestAgency.Coordinator, leave, Cancel)).Refusal?.Code);
    }

    [Fact]
    public async Task A_leave_that_cannot_be_is_refused_in_words()
    {
        await using TestAgency agency = await OpenAsync();
        var keep = agency.Ask<KeepLeave>();

        Assert.Equal("leave-ends-before-start", (await keep.LookAsync(TestAgency.Coordinator, new LeaveEntry("N5", Thursday, Thursday.PlusDays(-1), "x"), Cancel)).Refusal?.Code);
        Assert.Equal("leave-without-reason", (await keep.LookAsync(TestAgency.Coordinator, new LeaveEntry("N5", Thursday, Thursday, " "), Cancel)).Refusal?.Code);
        Assert.Equal("nurse-unknown", (await keep.LookAsync(TestAgency.Coordinator, new LeaveEntry("N99", Thursday, Thursday, "x"), Cancel)).Refusal?.Code);
        Assert.Equal("not-allowed", (await keep.LookAsync(DemoOnDatabase.Nurse, new LeaveEntry("N5", Thursday, Thursday, "x"), Cancel)).Refusal?.Code);
    }
}
