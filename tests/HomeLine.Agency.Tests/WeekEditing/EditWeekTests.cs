using System.Collections.Immutable;
using HomeLine.Agency.Roster;
using HomeLine.Agency.Storage;
using HomeLine.Agency.Tests.Storage;
using HomeLine.Agency.WeekEditing;
using HomeLine.Agency.WeekPlanning;
using HomeLine.Planning;
using HomeLine.Planning.Plans;
using NodaTime;

namespace HomeLine.Agency.Tests.WeekEditing;

/// <summary>Coordinators at work on the demonstration week, Monday morning. Invented data.</summary>
public sealed class EditWeekTests(PostgresCluster cluster)
{
    private static readonly LocalDate Thursday = new(2027, 3, 11);

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    private Task<TestAgency> OpenAsync(Provider provider = Provider.Sqlite) => DemoOnDatabase.OpenAsync(provider, cluster, DemoAgency.Now);

    private static async Task<WorkingWeek> WeekAsync(TestAgency agency) =>
        (await agency.Ask<EditWeek>().OpenAsync(TestAgency.Coordinator, DemoAgency.FirstDay, Cancel)).Value;

    private static Task<Outcome<WorkingWeek>> MakeAsync(TestAgency agency, int revision, HandEdit edit) =>
        agency.Ask<EditWeek>().MakeAsync(TestAgency.Coordinator, DemoAgency.FirstDay, revision, edit, Cancel);

    private static string VisitOf(WorkingWeek week, string patient) => week.Week.Visits.First(v => v.Patient.Value == patient).Id;

    [Fact]
    public async Task The_published_demo_week_opens_with_every_visit_and_nothing_unmet()
    {
        await using TestAgency agency = await OpenAsync();

        WorkingWeek week = await WeekAsync(agency);

        Assert.Equal(0, week.Revision);
        Assert.Equal(DemoAgency.Published.Visits.Length, week.Hand.Visits.Length);
        Assert.Empty(week.Hand.Unmet);
        Assert.True(week.Hand.Check.Accepted, string.Join("\n", week.Hand.Check.Findings.Select(f => f.Reason.Sentence)));
    }

    [Theory]
    [MemberData(nameof(TestAgency.BothProviders), MemberType = typeof(TestAgency))]
    public async Task A_visit_is_moved_taken_back_and_moved_again(Provider provider)
    {
        await using TestAgency agency = await OpenAsync(provider);
        WorkingWeek week = await WeekAsync(agency);
        string visit = VisitOf(week, "P58");
        WorkingPlace best = (await agency.Ask<EditWeek>().PlacesOfVisitAsync(TestAgency.Coordinator, DemoAgency.FirstDay, 0, visit, Cancel)).Value.MinBy(p => p.Rank)!;

        WorkingWeek moved = (await MakeAsync(agency, 0, new HandEdit.Move(visit, best.Nurse, best.Day, best.Position))).Value;
        WorkingWeek back = (await agency.Ask<EditWeek>().UndoAsync(TestAgency.Coordinator, DemoAgency.FirstDay, moved.Revision, Cancel)).Value;
        WorkingWeek again = (await agency.Ask<EditWeek>().RedoAsync(TestAgency.Coordinator, DemoAgency.FirstDay, back.Revision, Cancel)).Value;

        Assert.Equal((best.Nurse, best.Day, best.Start), Where(moved, visit));
        Assert.Equal(Where(week, visit), Where(back, visit));
        Assert.Equal(week.Visit(visit)!.Promise, back.Visit(visit)!.Promise);
        Assert.Equal(Where(moved, visit), Where(again, visit));
        Assert.Equal(3, again.Revision);
        // Stored, so that a restart or leaving the page loses nothing.
        await using AgencyDb db = agency.Open();
        StoredWeek draft = (await WeekStore.DraftAsync(db, DemoAgency.FirstDay, Cancel))!;
        Assert.Equal(best.Start, draft.Week.Visits.Single(v => v.Id == visit).Start);
        Assert.Equal([EditKind.Move, EditKind.Undo, EditKind.Redo], again.Log.All.Select(e => e.Kind));
        Assert.Contains("P58 moves from Tue 08:24 N2 to", again.Log.All[0].Words, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Every_place_offered_can_be_taken_and_what_if_says_the_same_as_the_place()
    {
        await using TestAgency agency = await OpenAsync();
        WorkingWeek week = await WeekAsync(agency);
        string visit = VisitOf(week, "P35");
        foreach (WorkingPlace place in (await agency.Ask<EditWeek>().PlacesOfVisitAsync(TestAgency.Coordinator, DemoAgency.FirstDay, 0, visit, Cancel)).Value)
        {
            WhatIf then = (await agency.Ask<EditWeek>().TryAsync(
                TestAgency.Coordinator, DemoAgency.FirstDay, 0, new HandEdit.Move(visit, place.Nurse, place.Day, place.Position), Cancel)).Value;
            Assert.True(then.IsAllowed);
            Assert.Equal((place.Start, place.DrivingMinutes), (then.Visit!.Start, then.DrivingMinutes));
            Assert.Contains(then.ToTell, p => p is { IsFamily: true, Id: "P35" });
        }
    }

    [Fact]
    public async Task The_rule_that_forbids_a_drop_is_said_and_nothing_is_stored()
    {
        await using TestAgency agency = await OpenAsync();
        WorkingWeek week = await WeekAsync(agency);
        // N5 is a practical nurse without the skill for parenteral nutrition.
        var edit = new HandEdit.Move(VisitOf(week, "P39"), "N5", Thursday, 0);

        WhatIf then = (await agency.Ask<EditWeek>().TryAsync(TestAgency.Coordinator, DemoAgency.FirstDay, 0, edit, Cancel)).Value;
        Outcome<WorkingWeek> made = await MakeAsync(agency, 0, edit);

        Assert.False(then.IsAllowed);
        Assert.Contains(then.Rules, r => r.Code == ReasonCode.SkillMissing);
        Assert.Equal("edit-forbidden", made.Refusal?.Code);
        Assert.Equal(0, (await WeekAsync(agency)).Revision);
    }

    [Fact]
    public async Task A_nurse_who_takes_no_more_long_stays_is_refused_one_and_it_is_named()
    {
        await using TestAgency agency = await DemoOnDatabase.OpenAsync(Provider.Sqlite, cluster, DemoAgency.Now, roster => roster with
        {
            Nurses = [.. roster.Nurses.Select(n => n.Id == "N8" ? n with { VisitCaps = [new KindCap(KindCap.Heavy, 0, AWeek: true)] } : n)],
        });
        WorkingWeek week = await WeekAsync(agency);
        // P20's first infusion takes hours; N8 has every skill for it.
        WhatIf then = (await agency.Ask<EditWeek>().TryAsync(
            TestAgency.Coordinator, DemoAgency.FirstDay, 0, new HandEdit.Move(VisitOf(week, "P20"), "N8", Thursday, 0), Cancel)).Value;

        Assert.Contains(then.Rules, r => r.Code == ReasonCode.TooManyOfKind && r.Sentence.Contains("Hyssop Lanternlow has 1 visit of the kind heavy in a week; she takes 0 a week.", StringComparison.Ordinal));
    }

    [Fact]
    public async Task Another_day_names_the_family_the_nurses_and_the_new_due_dates()
    {
        await using TestAgency agency = await OpenAsync();
        WorkingWeek week = await WeekAsync(agency);
        // P58's film is due by Thursday; Tuesday is planned.
        string visit = VisitOf(week, "P58");
        WorkingPlace later = (await agency.Ask<EditWeek>().PlacesOfVisitAsync(TestAgency.Coordinator, DemoAgency.FirstDay, 0, visit, Cancel)).Value
            .First(p => p.Day > new LocalDate(2027, 3, 9));

        WhatIf then = (await agency.Ask<EditWeek>().TryAsync(
            TestAgency.Coordinator, DemoAgency.FirstDay, 0, new HandEdit.Move(visit, later.Nurse, later.Day, later.Position), Cancel)).Value;

        WhoToTell family = Assert.Single(then.ToTell, p => p is { IsFamily: true, Id: "P58" });
        Assert.True(family.WasTold);
        Assert.Contains("instead of", family.Says, StringComparison.Ordinal);
        Assert.Contains(then.ToTell, p => p is { IsFamily: false, Id: "N2" });
        Assert.Contains(then.NewDues, d => d.StartsWith("P58 dressing", StringComparison.Ordinal) && d.Contains("instead of Tue 16 Mar", StringComparison.Ordinal));
    }

    [Fact]
    public async Task A_change_of_a_draft_that_moved_on_is_refused_with_what_changed()
    {
        await using TestAgency agency = await OpenAsync();
        WorkingWeek week = await WeekAsync(agency);
        Assert.True((await MakeAsync(agency, 0, new HandEdit.Pin(VisitOf(week, "P04")))).Succeeded);

        Outcome<WorkingWeek> late = await MakeAsync(agency, 0, new HandEdit.TakeOut(VisitOf(week, "P35")));

        Assert.Equal("stale-draft", late.Refusal?.Code);
        Assert.Contains("C. Coordinator: P04 Tue 09:31 N1 is pinned", late.Refusal!.Sentence, StringComparison.Ordinal);
        Assert.NotNull((await WeekAsync(agency)).Visit(VisitOf(week, "P35")));
    }

    [Fact]
    public async Task A_pinned_visit_stays_for_people_and_for_the_planner()
    {
        await using TestAgency agency = await OpenAsync();
        WorkingWeek week = await WeekAsync(agency);
        string visit = VisitOf(week, "P35");
        WorkingPlace other = (await agency.Ask<EditWeek>().PlacesOfVisitAsync(TestAgency.Coordinator, DemoAgency.FirstDay, 0, visit, Cancel)).Value.MaxBy(p => p.Rank)!;
        WorkingWeek moved = (await MakeAsync(agency, 0, new HandEdit.Move(visit, other.Nurse, other.Day, other.Position))).Value;
        WorkingWeek pinned = (await MakeAsync(agency, moved.Revision, new HandEdit.Pin(visit))).Value;

        Assert.Equal("edit-forbidden", (await MakeAsync(agency, pinned.Revision, new HandEdit.TakeOut(visit))).Refusal?.Code);
        var planning = agency.Ask<PlanTheWeek>();
        await planning.StartAsync(TestAgency.Coordinator, DemoAgency.FirstDay, new PlanOptions(1, 100_000_000), Cancel);
        await planning.StopAndKeepAsync(TestAgency.Coordinator);

        WorkingWeek planned = await WeekAsync(agency);
        Assert.Equal(Where(moved, visit), Where(planned, visit));
        Assert.Contains(visit, planned.Log.Pinned);
        // The planner's draft is a step like any other: what people had done is one step back.
        Assert.Equal(EditKind.Planned, planned.Log.Undoable?.Kind);
        WorkingWeek back = (await agency.Ask<EditWeek>().UndoAsync(TestAgency.Coordinator, DemoAgency.FirstDay, planned.Revision, Cancel)).Value;
        Assert.Equal(moved.Week.Visits.Select(v => (v.Id, v.Nurse, v.Day, v.Start)).Order(), back.Week.Visits.Select(v => (v.Id, v.Nurse, v.Day, v.Start)).Order());
    }

    [Fact]
    public async Task Care_taken_out_is_unmet_until_it_is_placed_again()
    {
        await using TestAgency agency = await OpenAsync();
        WorkingWeek week = await WeekAsync(agency);
        WorkingWeek without = (await MakeAsync(agency, 0, new HandEdit.TakeOut(VisitOf(week, "P35")))).Value;

        ImmutableArray<UnmetCareNeed> unmet = UnmetCareNeed.Of(without, ImmutableDictionary<string, UnmetTask>.Empty);

        UnmetCareNeed need = Assert.Single(unmet, n => n.Patient.Value == "P35" && n.Label.Contains("dressing", StringComparison.Ordinal));
        WorkingPlace best = (await agency.Ask<EditWeek>().PlacesOfNeedAsync(TestAgency.Coordinator, DemoAgency.FirstDay, without.Revision, need.Key, Cancel)).Value.MinBy(p => p.Rank)!;
        WorkingWeek placed = (await MakeAsync(agency, without.Revision, new HandEdit.Place(need.Key, best.Nurse, best.Day, best.Position))).Value;
        Assert.DoesNotContain(placed.Hand.Unmet, t => t.Id == need.Key);
        Assert.Contains(without.Week.Unmet, u => u.Patient.Value == "P35" && u.Reasons.Any(r => r.Code == "taken-out"));
    }

    [Fact]
    public async Task Publishing_closes_the_list_of_changes_and_a_draft_that_was_overtaken_can_be_brought_over()
    {
        await using TestAgency agency = await OpenAsync();
        WorkingWeek week = await WeekAsync(agency);
        string visit = VisitOf(week, "P35");
        WorkingPlace best = (await agency.Ask<EditWeek>().PlacesOfVisitAsync(TestAgency.Coordinator, DemoAgency.FirstDay, 0, visit, Cancel)).Value.MinBy(p => p.Rank)!;
        await MakeAsync(agency, 0, new HandEdit.Move(visit, best.Nurse, best.Day, best.Position));
        await using (AgencyDb db = agency.Open())
        {
            // Somebody mends the published week while the draft lies open.
            PlannedWeek published = (await WeekStore.PublishedAsync(db, DemoAgency.FirstDay, Cancel))!.Week;
            Assert.True((await WeekStore.PublishAsync(db, TestAgency.Coordinator, published, "mended", DemoAgency.Now, Cancel)).Succeeded);
        }

        WorkingWeek overtaken = await WeekAsync(agency);
        Assert.Equal(0, overtaken.Revision);
        Assert.Single(overtaken.Log.Waiting(overtaken.Published!.Version));
        WorkingWeek brought = (await agency.Ask<EditWeek>().CarryOverAsync(TestAgency.Coordinator, DemoAgency.FirstDay, 0, Cancel)).Value;
        Assert.Equal((best.Nurse, best.Day, best.Start), Where(brought, visit));

        Assert.True((await agency.Ask<PublishWeek>().PublishAsync(TestAgency.Coordinator, DemoAgency.FirstDay, brought.Published!.Version, null, Cancel)).Succeeded);
        WorkingWeek fresh = await WeekAsync(agency);
        Assert.Empty(fresh.Log.Waiting(fresh.Published!.Version));
        Assert.Null(fresh.Log.Undoable);
        Assert.Equal(PromiseState.Told, fresh.Visit(visit)!.Promise);
    }

    [Fact]
    public async Task Bringing_over_is_refused_where_nothing_waits_or_the_draft_has_moved_on()
    {
        await using TestAgency agency = await OpenAsync();
        var editing = agency.Ask<EditWeek>();
        WorkingWeek week = await WeekAsync(agency);

        Assert.Equal("nothing-to-carry", (await editing.CarryOverAsync(TestAgency.Coordinator, DemoAgency.FirstDay, 0, Cancel)).Refusal!.Code);
        WorkingWeek pinned = (await MakeAsync(agency, 0, new HandEdit.Pin(VisitOf(week, "P35")))).Value;
        // Seen before the pin: refused with what changed, and nothing is brought over.
        Refusal stale = (await editing.CarryOverAsync(TestAgency.Coordinator, DemoAgency.FirstDay, 0, Cancel)).Refusal!;
        Assert.Equal("stale-draft", stale.Code);
        Assert.Contains("P35", stale.Sentence, StringComparison.Ordinal);
        Assert.Equal("nothing-to-carry", (await editing.CarryOverAsync(TestAgency.Coordinator, DemoAgency.FirstDay, pinned.Revision, Cancel)).Refusal!.Code);
        Assert.Equal(pinned.Revision, (await WeekAsync(agency)).Revision);
    }

    [Fact]
    public async Task A_draft_that_breaks_a_rule_since_a_leave_is_not_published_and_stays()
    {
        await using TestAgency agency = await OpenAsync();
        WorkingWeek week = await WeekAsync(agency);
        WeekVisit visit = week.Week.Visits.First(v => v.Day == Thursday);
        WorkingWeek pinned = (await MakeAsync(agency, 0, new HandEdit.Pin(visit.Id))).Value;
        var leave = new LeaveEntry(visit.Nurse, Thursday, Thursday, "sick");
        int touched = (await agency.Ask<KeepLeave>().LookAsync(TestAgency.Coordinator, leave, Cancel)).Value.Affected.Length;
        Assert.True((await agency.Ask<KeepLeave>().KeepAsync(TestAgency.Coordinator, leave, touched, Cancel)).Succeeded);

        Outcome<PlannedWeek> told = await agency.Ask<PublishWeek>().PublishAsync(
            TestAgency.Coordinator, DemoAgency.FirstDay, week.Published!.Version, "The reason is known and the backup plan stands.", Cancel);

        Assert.Equal("draft-breaks-rule", told.Refusal?.Code);
        string name = week.Agency.Roster.Nurses.First(n => n.Id == visit.Nurse).Name;
        Assert.Contains(name, told.Refusal!.Sentence, StringComparison.Ordinal);
        Assert.Contains("the draft is kept", told.Refusal.Action, StringComparison.Ordinal);
        WorkingWeek after = await WeekAsync(agency);
        Assert.Equal((pinned.Revision, week.Published.Version), (after.Revision, after.Published!.Version));
        Assert.Contains(visit.Id, after.Log.Pinned);
    }

    [Fact]
    public async Task A_visit_of_two_people_gets_another_second_person()
    {
        await using TestAgency agency = await OpenAsync();
        WorkingWeek week = await WeekAsync(agency);
        WeekVisit visit = week.Week.Visits.First(v => v.Second is not null && week.WhyItStays(v).Length == 0);
        // N7 is too busy that day, and the rule says so; without her own visits she can come.
        var comes = new HandEdit.ChangeSecond(visit.Id, "N7");
        Assert.Equal("edit-forbidden", (await MakeAsync(agency, 0, comes)).Refusal?.Code);
        WorkingWeek free = week;
        foreach (WeekVisit hers in week.Week.Visits.Where(v => v.Nurse == "N7" && v.Day == visit.Day))
            free = (await MakeAsync(agency, free.Revision, new HandEdit.TakeOut(hers.Id))).Value;

        WorkingWeek changed = (await MakeAsync(agency, free.Revision, comes)).Value;

        WeekVisit now = changed.Visit(visit.Id)!;
        Assert.Equal((visit.Nurse, "N7", visit.Day, visit.Start), (now.Nurse, now.Second, now.Day, now.Start));
        Assert.Equal("P16 Wed 15:00 N1 gets N7 as second person instead of N6", changed.Log.All[^1].Words);
        Assert.Equal("visit-gone", (await MakeAsync(agency, changed.Revision, new HandEdit.ChangeSecond(visit.Id, visit.Nurse))).Refusal?.Code);
    }

    [Fact]
    public async Task Nurses_do_not_change_the_week()
    {
        await using TestAgency agency = await OpenAsync();

        Assert.Equal("not-allowed", (await agency.Ask<EditWeek>().OpenAsync(DemoOnDatabase.Nurse, DemoAgency.FirstDay, Cancel)).Refusal?.Code);
    }

    private static (string Nurse, LocalDate Day, LocalTime Start) Where(WorkingWeek week, string id) =>
        week.Visit(id) is { } visit ? (visit.Nurse, visit.Day, visit.Start) : ("", default, default);
}
