using HomeLine.Agency.Mending;
using HomeLine.Agency.Supervision;
using HomeLine.Agency.Tests.Storage;
using HomeLine.Agency.WeekEditing;
using HomeLine.Agency.WeekPlanning;
using HomeLine.Planning;
using NodaTime;

namespace HomeLine.Agency.Tests.Supervision;

/// <summary>A supervisor put on a visit of the demonstration week's practical nurse. Invented data.</summary>
public sealed class GoAlongTests(PostgresCluster cluster)
{
    private static readonly LocalDate Monday = DemoAgency.FirstDay;

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    private Task<TestAgency> OpenAsync(Provider provider = Provider.Sqlite) => DemoOnDatabase.OpenAsync(provider, cluster, DemoAgency.Now);

    private static async Task<WorkingWeek> WeekAsync(TestAgency agency) => (await agency.Ask<EditWeek>().OpenAsync(TestAgency.Coordinator, Monday, Cancel)).Value;

    private static Task<Outcome<WorkingWeek>> MakeAsync(TestAgency agency, int revision, HandEdit edit) =>
        agency.Ask<EditWeek>().MakeAsync(TestAgency.Coordinator, Monday, revision, edit, Cancel);

    private static Task<Outcome<WhatIf>> TryAsync(TestAgency agency, HandEdit edit) =>
        agency.Ask<EditWeek>().TryAsync(TestAgency.Coordinator, Monday, 0, edit, Cancel);

    private static string VisitOf(WorkingWeek week, string patient) => week.Week.Visits.First(v => v.Patient.Value == patient && v.Nurse == "N5").Id;

    /// <summary>The first registered nurse who can go along on the visit as it stands.</summary>
    private static async Task<(string Supervisor, WhatIf Then)> WhoCanAsync(TestAgency agency, string visit)
    {
        foreach (string nurse in DemoAgency.Roster.Nurses.Where(Supervised.BySupervisor).Select(n => n.Id))
        {
            Outcome<WhatIf> then = await TryAsync(agency, new HandEdit.GoAlong(visit, nurse));
            if (then is { Succeeded: true, Value: { IsAllowed: true, Others.IsEmpty: true } } && then.Value.Visit!.Start == (await WeekAsync(agency)).Visit(visit)!.Start)
                return (nurse, then.Value);
        }

        throw new InvalidOperationException("Nobody can go along in the demonstration week.");
    }

    [Theory]
    [MemberData(nameof(TestAgency.BothProviders), MemberType = typeof(TestAgency))]
    public async Task A_supervisor_goes_along_is_pinned_and_taken_back(Provider provider)
    {
        await using TestAgency agency = await OpenAsync(provider);
        WorkingWeek week = await WeekAsync(agency);
        string visit = VisitOf(week, "P35");
        (string supervisor, WhatIf then) = await WhoCanAsync(agency, visit);

        WorkingWeek along = (await MakeAsync(agency, 0, new HandEdit.GoAlong(visit, supervisor))).Value;

        // The road of the supervisor is the price; the family and both nurses hear of it.
        Assert.True(then.DrivingMinutes > 0);
        Assert.Contains(then.ToTell, t => t is { IsFamily: true, Id: "P35" } && t.Says.Contains("comes along with Linden Pennywhirl", StringComparison.Ordinal));
        Assert.Contains(then.ToTell, t => t.Id == supervisor);
        Assert.Equal((supervisor, week.Visit(visit)!.Start), (along.Visit(visit)!.Second, along.Visit(visit)!.Start));
        Assert.True(along.Hand.Check.Accepted, string.Join("\n", along.Hand.Check.Findings.Select(f => f.Reason.Sentence)));
        Assert.Contains(visit, along.Log.Pinned);
        Assert.Equal($"{supervisor} goes along with N5 to P35 Thu 09:40", along.Log.All[^1].Words);
        RideAlongList list = (await agency.Ask<AskRideAlongs>().AskAsync(TestAgency.Coordinator, along.Week, Cancel)).Value;
        Assert.Equal(visit, list.Due.Single().Planned?.Id);

        WorkingWeek back = (await agency.Ask<EditWeek>().UndoAsync(TestAgency.Coordinator, Monday, along.Revision, Cancel)).Value;
        Assert.Null(back.Visit(visit)!.Second);
        Assert.DoesNotContain(visit, back.Log.Pinned);
        Assert.Equal(week.Visit(visit)!.Promise, back.Visit(visit)!.Promise);
    }

    [Fact]
    public async Task Once_the_pin_is_out_nobody_need_go_along_any_more()
    {
        await using TestAgency agency = await OpenAsync();
        string visit = VisitOf(await WeekAsync(agency), "P35");
        (string supervisor, _) = await WhoCanAsync(agency, visit);
        WorkingWeek along = (await MakeAsync(agency, 0, new HandEdit.GoAlong(visit, supervisor))).Value;

        Outcome<WorkingWeek> pinned = await MakeAsync(agency, along.Revision, new HandEdit.GoAlone(visit));
        WorkingWeek free = (await MakeAsync(agency, along.Revision, new HandEdit.Unpin(visit))).Value;
        WorkingWeek alone = (await MakeAsync(agency, free.Revision, new HandEdit.GoAlone(visit))).Value;

        Assert.Equal("edit-forbidden", pinned.Refusal?.Code);
        Assert.Null(alone.Visit(visit)!.Second);
        Assert.Equal($"{supervisor} no longer goes along with N5 to P35 Thu 09:40", alone.Log.All[^1].Words);
    }

    [Fact]
    public async Task The_planner_keeps_the_ride_along_when_it_plans_anew()
    {
        await using TestAgency agency = await OpenAsync();
        string visit = VisitOf(await WeekAsync(agency), "P35");
        (string supervisor, _) = await WhoCanAsync(agency, visit);
        WorkingWeek along = (await MakeAsync(agency, 0, new HandEdit.GoAlong(visit, supervisor))).Value;
        var planning = agency.Ask<PlanTheWeek>();
        var ended = new TaskCompletionSource<PlanRun>();
        planning.Changed += run =>
        {
            if (run.State != PlanRunState.Running) ended.TrySetResult(run);
        };

        await planning.StartAsync(TestAgency.Coordinator, Monday, new PlanOptions(1, 50), Cancel);
        PlanRun end = await ended.Task.WaitAsync(Cancel);

        Assert.Equal(PlanRunState.Finished, end.State);
        WorkingWeek anew = await WeekAsync(agency);
        Assert.Equal(
            (along.Visit(visit)!.Nurse, along.Visit(visit)!.Second, along.Visit(visit)!.Day, along.Visit(visit)!.Start),
            (anew.Visit(visit)!.Nurse, anew.Visit(visit)!.Second, anew.Visit(visit)!.Day, anew.Visit(visit)!.Start));
        // Nobody else got company.
        Assert.Equal(along.Week.Visits.Count(v => v.Second is not null), anew.Week.Visits.Count(v => v.Second is not null));
    }

    [Fact]
    public async Task A_week_with_a_ride_along_is_published()
    {
        await using TestAgency agency = await OpenAsync();
        string visit = VisitOf(await WeekAsync(agency), "P35");
        (string supervisor, _) = await WhoCanAsync(agency, visit);
        WorkingWeek along = (await MakeAsync(agency, 0, new HandEdit.GoAlong(visit, supervisor))).Value;

        Assert.Null(BrokenRules.Of(along));
    }

    [Fact]
    public async Task Who_may_not_go_along_is_said_in_words()
    {
        await using TestAgency agency = await OpenAsync();
        WorkingWeek week = await WeekAsync(agency);
        string hers = VisitOf(week, "P35"), registered = week.Week.Visits.First(v => v.Nurse == "N1" && v.Day > Monday).Id;

        Assert.Equal("ride-no-supervisor", (await TryAsync(agency, new HandEdit.GoAlong(hers, "N5"))).Refusal?.Code);
        Assert.Equal("ride-not-needed", (await TryAsync(agency, new HandEdit.GoAlong(registered, "N3"))).Refusal?.Code);
        Assert.Equal("nurse-unknown", (await MakeAsync(agency, 0, new HandEdit.GoAlong(hers, "N99"))).Refusal?.Code);
        Assert.Equal("visit-gone", (await TryAsync(agency, new HandEdit.GoAlong("no such visit", "N1"))).Refusal?.Code);
    }

    [Fact]
    public async Task When_the_supervisor_calls_out_the_visit_is_made_alone_and_the_supervision_stays_due()
    {
        await using TestAgency agency = await OpenAsync();
        (string visit, string supervisor) = await PublishedAlongAsync(agency);

        Outcome<TroubleResult> out1 = await agency.Ask<MendTrouble>().ReportAsync(
            TestAgency.Coordinator, new NurseIsOut(supervisor, Monday.PlusDays(3).AtMidnight(), Monday.PlusDays(3), "sick"), Cancel);

        MendOffer offer = out1.Value.Filed.Offer!;
        Assert.Contains(offer.Facts, f => f.Contains("with Linden Pennywhirl at", StringComparison.Ordinal) && f.Contains("can make the visit alone", StringComparison.Ordinal));
        Assert.Contains(offer.CannotWait, b => b.Visit.Id == visit && b.Waits.Contains("a ride-along: one person is enough", StringComparison.Ordinal));
        MendAnswer best = offer.Answers[0];
        VisitChange change = best.Changes.Single(c => c.Before!.Id == visit);
        Assert.Equal((change.Before!.Nurse, change.Before.Day, change.Before.Start, null), (change.After!.Nurse, change.After.Day, change.After.Start, change.After.Second));
        Assert.Contains("alone", change.Words, StringComparison.Ordinal);
        Assert.True((await agency.Ask<MendTrouble>().ApplyAsync(TestAgency.Coordinator, out1.Value.Filed.Id, best.Key, "", Cancel)).Succeeded);
        Assert.Null((await agency.Ask<AskRideAlongs>().AskAsync(TestAgency.Coordinator, null, Cancel)).Value.Due.Single().Planned);
    }

    [Fact]
    public async Task Recorded_on_the_day_it_was_planned_the_record_names_the_visit()
    {
        await using TestAgency agency = await OpenAsync();
        (string visit, string supervisor) = await PublishedAlongAsync(agency);
        await agency.MoveClockAsync(11, 17);

        RideAlong kept = (await agency.Ask<RecordRideAlong>().RecordAsync(DemoOnDatabase.ClinicalLead, new RideAlongEntry("N5", supervisor, Monday.PlusDays(3), ""), Cancel)).Value;

        Assert.Equal((visit, "P35 Thu 11 Mar 09:40"), (kept.Visit, kept.OnVisit));
    }

    private static async Task<(string Visit, string Supervisor)> PublishedAlongAsync(TestAgency agency)
    {
        string visit = VisitOf(await WeekAsync(agency), "P35");
        (string supervisor, _) = await WhoCanAsync(agency, visit);
        Assert.True((await MakeAsync(agency, 0, new HandEdit.GoAlong(visit, supervisor))).Succeeded);
        Assert.True((await agency.Ask<PublishWeek>().PublishAsync(TestAgency.Coordinator, Monday, 1, null, Cancel)).Succeeded);
        return (visit, supervisor);
    }
}
