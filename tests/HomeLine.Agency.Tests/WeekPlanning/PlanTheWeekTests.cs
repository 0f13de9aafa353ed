using HomeLine.Agency.Access;
using HomeLine.Agency.Roster;
using HomeLine.Agency.Storage;
using HomeLine.Agency.Tests.Storage;
using HomeLine.Agency.WeekPlanning;
using HomeLine.Planning;
using Microsoft.Extensions.DependencyInjection;
using NodaTime;

namespace HomeLine.Agency.Tests.WeekPlanning;

/// <summary>Planning in the background on the demonstration week. Invented data.</summary>
public sealed class PlanTheWeekTests(PostgresCluster cluster)
{
    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    private async Task<TestAgency> OpenAsync()
    {
        TestAgency agency = await TestAgency.OnAsync(Provider.Sqlite, cluster);
        await agency.Services.GetRequiredService<OpenAgency>().OpenAsync(Actors.SetUp, DemoAgency.Roster, DemoAgency.Published, Cancel);
        return agency;
    }

    private static async Task<PlanRun> EndOfAsync(PlanTheWeek planning)
    {
        var ended = new TaskCompletionSource<PlanRun>(TaskCreationOptions.RunContinuationsAsynchronously);
        planning.Changed += run =>
        {
            if (run.State != PlanRunState.Running) ended.TrySetResult(run);
        };
        if (planning.Current is { State: not PlanRunState.Running } already) ended.TrySetResult(already);
        return await ended.Task.WaitAsync(Cancel);
    }

    [Fact]
    public async Task A_planned_week_becomes_a_draft_the_checker_accepts_and_can_be_published()
    {
        await using TestAgency agency = await OpenAsync();
        var planning = agency.Services.GetRequiredService<PlanTheWeek>();

        Assert.True((await planning.StartAsync(TestAgency.Coordinator, DemoAgency.FirstDay, new PlanOptions(1, 500), Cancel)).Succeeded);
        PlanRun end = await EndOfAsync(planning);

        Assert.Equal(PlanRunState.Finished, end.State);
        WeekBoard draft = (await agency.Services.GetRequiredService<AskWeek>().AskAsync(TestAgency.Coordinator, DemoAgency.FirstDay, true, Cancel)).Value;
        Assert.True(draft.Check.Accepted, string.Join("\n", draft.Check.Findings.Select(f => f.Reason.Sentence)));
        Assert.Empty(draft.Unmet);
        PlannedWeek published = (await agency.Services.GetRequiredService<PublishWeek>()
            .PublishAsync(TestAgency.Coordinator, DemoAgency.FirstDay, draft.Week.Version, null, Cancel)).Value;
        Assert.Equal(2, published.Version);
    }

    [Fact]
    public async Task A_planned_week_says_how_many_slots_each_day_keeps_free()
    {
        await using TestAgency agency = await OpenAsync();
        var planning = agency.Services.GetRequiredService<PlanTheWeek>();
        await planning.StartAsync(TestAgency.Coordinator, DemoAgency.FirstDay, new PlanOptions(1, 300), Cancel);

        PlanRun end = await EndOfAsync(planning);

        WeekBoard draft = (await agency.Services.GetRequiredService<AskWeek>().AskAsync(TestAgency.Coordinator, DemoAgency.FirstDay, true, Cancel)).Value;
        Assert.Contains("Slots free for care nobody planned (in brackets, asked for):", end.Free);
        Assert.All(draft.Reserve.Where(d => d.Asked > 0), d => Assert.Contains($" {d.Free} ({d.Asked})", end.Free));
    }

    [Fact]
    public async Task Stopping_keeps_the_best_so_far_as_the_draft()
    {
        await using TestAgency agency = await OpenAsync();
        var planning = agency.Services.GetRequiredService<PlanTheWeek>();
        await planning.StartAsync(TestAgency.Coordinator, DemoAgency.FirstDay, new PlanOptions(1, 100_000_000), Cancel);

        PlanRun stopped = (await planning.StopAndKeepAsync(TestAgency.Coordinator)).Value;

        Assert.Equal(PlanRunState.StoppedAndKept, stopped.State);
        await using AgencyDb db = agency.Open();
        Assert.NotEmpty((await WeekStore.DraftAsync(db, DemoAgency.FirstDay, Cancel))!.Week.Visits);
    }

    [Fact]
    public async Task A_nurse_may_look_at_the_week_but_not_plan_it()
    {
        await using TestAgency agency = await OpenAsync();
        var nurse = new Actor("u-nurse", "Sorrel", [AgencyRole.Nurse], "N3");

        Assert.Equal("not-allowed", (await agency.Services.GetRequiredService<PlanTheWeek>().StartAsync(nurse, DemoAgency.FirstDay, new PlanOptions(), Cancel)).Refusal?.Code);
        Assert.Equal("not-allowed", (await agency.Services.GetRequiredService<PublishWeek>().PublishAsync(nurse, DemoAgency.FirstDay, 1, null, Cancel)).Refusal?.Code);
        Assert.True((await agency.Services.GetRequiredService<AskWeek>().AskAsync(nurse, DemoAgency.FirstDay, false, Cancel)).Succeeded);
    }

    [Fact]
    public async Task A_later_week_is_planned_on_what_this_week_promises()
    {
        await using TestAgency agency = await OpenAsync();
        var planning = agency.Services.GetRequiredService<PlanTheWeek>();
        await planning.StartAsync(TestAgency.Coordinator, new LocalDate(2027, 3, 15), new PlanOptions(1, 200), Cancel);

        PlanRun end = await EndOfAsync(planning);

        Assert.Equal(PlanRunState.Finished, end.State);
        WeekBoard draft = (await agency.Services.GetRequiredService<AskWeek>().AskAsync(TestAgency.Coordinator, new LocalDate(2027, 3, 15), true, Cancel)).Value;
        Assert.True(draft.Check.Accepted, string.Join("\n", draft.Check.Findings.Select(f => f.Reason.Sentence)));
    }
}
