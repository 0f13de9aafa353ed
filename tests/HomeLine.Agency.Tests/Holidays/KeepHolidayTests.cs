using System.Collections.Immutable;
using HomeLine.Agency.Access;
using HomeLine.Agency.Holidays;
using HomeLine.Agency.Roster;
using HomeLine.Agency.Storage;
using HomeLine.Agency.Tests.Storage;
using HomeLine.Agency.WeekEditing;
using HomeLine.Agency.WeekPlanning;
using HomeLine.Planning;
using Microsoft.EntityFrameworkCore;
using NodaTime;

namespace HomeLine.Agency.Tests.Holidays;

/// <summary>The calendar of holidays over the demonstration: put down late and ahead, kept by planning, taken back. Invented data.</summary>
public sealed class KeepHolidayTests(PostgresCluster cluster)
{
    private static readonly LocalDate Thursday = new(2027, 3, 11);

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    private Task<TestAgency> OpenAsync(Provider provider = Provider.Sqlite) => DemoOnDatabase.OpenAsync(provider, cluster, DemoAgency.Now);

    [Theory]
    [MemberData(nameof(TestAgency.BothProviders), MemberType = typeof(TestAgency))]
    public async Task Its_visits_are_listed_first_and_stay_published_and_only_who_is_on_call_has_hours(Provider provider)
    {
        await using TestAgency agency = await OpenAsync(provider);
        var holiday = new HolidayEntry(Thursday, "Founders' day");
        int others = DemoAgency.Published.Visits.Count(v => v.Day == Thursday && v.Nurse != "N8");

        HolidayEffect effect = (await agency.Ask<KeepHoliday>().LookAsync(TestAgency.Coordinator, holiday, Cancel)).Value;
        Outcome<HolidayEffect> unseen = await agency.Ask<KeepHoliday>().KeepAsync(TestAgency.Coordinator, holiday, 0, Cancel);
        Outcome<HolidayEffect> seen = await agency.Ask<KeepHoliday>().KeepAsync(TestAgency.Coordinator, holiday, effect.Affected.Length, Cancel);

        Assert.Equal(["Hyssop Lanternlow"], effect.OnCall);
        Assert.Equal(others, effect.Affected.Length);
        Assert.Equal("holiday-touches-visits", unseen.Refusal?.Code);
        Assert.True(seen.Succeeded);
        WorkingWeek week = (await agency.Ask<EditWeek>().OpenAsync(TestAgency.Coordinator, DemoAgency.FirstDay, Cancel)).Value;
        Assert.Equal(DemoAgency.Published.Visits.Length, week.Week.Visits.Length);
        Assert.Equal(["N8"], week.Hand.Problem.Nurses.Where(n => n.Shifts.Any(s => s.Day == week.Calendar.Day(Thursday))).Select(n => n.Id));
        await using AgencyDb db = agency.Open();
        AuditEntry entry = await db.AuditEntries.AsNoTracking().SingleAsync(e => e.Action == "keep-holiday", Cancel);
        Assert.Equal("day 2027-03-11", entry.Subject);
    }

    [Fact]
    public async Task A_holiday_that_cannot_be_is_refused_in_words()
    {
        await using TestAgency agency = await OpenAsync();
        var keep = agency.Ask<KeepHoliday>();

        async Task<string?> CodeAsync(Actor actor, LocalDate? day, string name) => (await keep.LookAsync(actor, new HolidayEntry(day, name), Cancel)).Refusal?.Code;

        Assert.Equal("holiday-day-missing", await CodeAsync(TestAgency.Coordinator, null, "x"));
        Assert.Equal("holiday-past", await CodeAsync(TestAgency.Coordinator, DemoAgency.FirstDay.PlusDays(-1), "x"));
        Assert.Equal("holiday-without-name", await CodeAsync(TestAgency.Coordinator, Thursday, " "));
        Assert.Equal("not-allowed", await CodeAsync(DemoOnDatabase.Nurse, Thursday, "x"));
        HolidayEffect effect = (await keep.LookAsync(TestAgency.Coordinator, new HolidayEntry(Thursday, "x"), Cancel)).Value;
        Assert.True((await keep.KeepAsync(TestAgency.Coordinator, new HolidayEntry(Thursday, "x"), effect.Affected.Length, Cancel)).Succeeded);
        Assert.Equal("holiday-twice", await CodeAsync(TestAgency.Coordinator, Thursday, "x"));
        Assert.Equal("holiday-unknown", (await BackAsync(agency, "holiday 9")).Refusal?.Code);
        Assert.Equal("holiday-without-reason", (await BackAsync(agency, "holiday 1", " ")).Refusal?.Code);
        Assert.Equal("not-allowed", (await agency.Ask<TakeHolidayBack>().TakeBackAsync(DemoOnDatabase.Nurse, "holiday 1", "x", Cancel)).Refusal?.Code);
        await agency.MoveClockAsync(12, 8);
        Assert.Equal("holiday-past", (await BackAsync(agency, "holiday 1")).Refusal?.Code);
    }

    [Theory]
    [MemberData(nameof(TestAgency.BothProviders), MemberType = typeof(TestAgency))]
    public async Task Taken_back_everybody_has_hours_again_but_where_the_day_was_changed_since(Provider provider)
    {
        await using TestAgency agency = await OpenAsync(provider);
        await KeepAsync(agency, new HolidayEntry(Thursday, "Founders' day"));
        await ChangeAsync(agency, "N3", leaves => [.. leaves.Select(l => l.From == Thursday ? l with { Reason = "sick" } : l)]);

        HolidayGone gone = (await BackAsync(agency, "holiday 1")).Value;

        Assert.Equal([Name("N3")], gone.Changed);
        Assert.Contains(Name("N1"), gone.Working);
        WorkingWeek week = (await agency.Ask<EditWeek>().OpenAsync(TestAgency.Coordinator, DemoAgency.FirstDay, Cancel)).Value;
        Assert.Equal(DemoAgency.Published.Visits.Length, week.Week.Visits.Length);
        Assert.Equal(DemoAgency.Roster.Nurses.Where(n => n.Id != "N3" && Works(n, Thursday)).Select(n => n.Id), Hours(week, Thursday));
        HolidayCalendar calendar = (await agency.Ask<AskHolidays>().AskAsync(DemoOnDatabase.Nurse, Cancel)).Value;
        Assert.Empty(calendar.Ahead);
        Assert.Equal("entered by mistake", Assert.Single(calendar.Behind).TakenBack?.Why);
        Assert.Equal("holiday-unknown", (await BackAsync(agency, "holiday 1")).Refusal?.Code);
        Assert.True((await agency.Ask<KeepHoliday>().LookAsync(TestAgency.Coordinator, new HolidayEntry(Thursday, "again"), Cancel)).Succeeded);
    }

    [Fact]
    public async Task Somebody_may_work_all_the_same_and_who_has_hours_by_accident_is_pointed_out()
    {
        await using TestAgency agency = await OpenAsync();
        await KeepAsync(agency, new HolidayEntry(Thursday, "Founders' day") { Works = ["N3"] });

        WorkingWeek week = (await agency.Ask<EditWeek>().OpenAsync(TestAgency.Coordinator, DemoAgency.FirstDay, Cancel)).Value;
        Assert.Equal(["N3", "N8"], Hours(week, Thursday));
        await ChangeAsync(agency, "N4", leaves => [.. leaves.Where(l => l.From != Thursday)]);

        HolidayRow row = Assert.Single((await agency.Ask<AskHolidays>().AskAsync(TestAgency.Coordinator, Cancel)).Value.Ahead);
        Assert.Equal([Name("N3")], row.Working);
        Assert.Equal([Name("N4")], row.StillHours);
        Assert.True(row.Published > 0);
        await KeepAsync(agency, new HolidayEntry(Thursday, "Founders' day") { Works = ["N3"] });
        Assert.Empty(Assert.Single((await agency.Ask<AskHolidays>().AskAsync(TestAgency.Coordinator, Cancel)).Value.Ahead).StillHours);
    }

    [Fact]
    public async Task Entered_ahead_what_falls_due_on_it_is_planned_on_a_day_before()
    {
        await using TestAgency agency = await OpenAsync();
        LocalDate next = DemoAgency.FirstDay.PlusWeeks(1), thursday = Thursday.PlusWeeks(1);
        WeekDemand demand = WeekDemand.Ahead(DemoAgency.Roster, [DemoAgency.Published], next, DemoAgency.Now);
        HashSet<string> due = [.. demand.Needs.Values.Where(n => n.Windows[0].LastDay == thursday && n.Windows[0].OpensOn < thursday).Select(n => n.Key)];
        await KeepAsync(agency, new HolidayEntry(thursday, "Spring day"));

        var planning = agency.Ask<PlanTheWeek>();
        var ended = new TaskCompletionSource(TaskCreationOptions.RunContinuationsAsynchronously);
        planning.Changed += run => _ = run.State != PlanRunState.Running && ended.TrySetResult();
        Assert.True((await planning.StartAsync(TestAgency.Coordinator, next, new PlanOptions(1, 300), Cancel)).Succeeded);
        await ended.Task.WaitAsync(Cancel);

        WeekBoard draft = (await agency.Ask<AskWeek>().AskAsync(TestAgency.Coordinator, next, true, Cancel)).Value;
        Assert.True(draft.Check.Accepted);
        Assert.All(draft.Week.Visits.Where(v => v.Day == thursday), v => Assert.Equal("N8", v.Nurse));
        // In time all the same, most of it the day before.
        Assert.All(due, key => Assert.Contains(draft.Week.Visits, v => v.Day <= thursday && v.Care.Any(c => c.Key == key)));
        Assert.Contains(draft.Week.Visits, v => v.Day < thursday && v.Care.Any(c => due.Contains(c.Key)));
    }

    private static async Task KeepAsync(TestAgency agency, HolidayEntry entry)
    {
        HolidayEffect effect = (await agency.Ask<KeepHoliday>().LookAsync(TestAgency.Coordinator, entry, Cancel)).Value;
        Assert.True((await agency.Ask<KeepHoliday>().KeepAsync(TestAgency.Coordinator, entry, effect.Affected.Length, Cancel)).Succeeded);
    }

    private static Task<Outcome<HolidayGone>> BackAsync(TestAgency agency, string id, string why = "entered by mistake") =>
        agency.Ask<TakeHolidayBack>().TakeBackAsync(TestAgency.Coordinator, id, why, Cancel);

    /// <summary>Somebody changes a nurse's days off in her file.</summary>
    private static async Task ChangeAsync(TestAgency agency, string nurse, Func<ImmutableArray<Leave>, ImmutableArray<Leave>> change)
    {
        await using AgencyDb db = agency.Open();
        await using var turn = await db.BeginWorkAsync(Cancel);
        NurseFile file = await db.Nurses.SingleAsync(n => n.Id == nurse, Cancel);
        db.Entry(file).Property(n => n.Leaves).CurrentValue = change(file.Leaves);
        await AuditTrail.AppendAsync(db, TestAgency.Coordinator, "test", nurse, "a leave changed", DemoAgency.Now, Cancel);
        await db.SaveChangesAsync(Cancel);
        await turn.CommitAsync(Cancel);
    }

    private static IEnumerable<string> Hours(WorkingWeek week, LocalDate day) =>
        week.Hand.Problem.Nurses.Where(n => n.Shifts.Any(s => s.Day == week.Calendar.Day(day))).Select(n => n.Id);

    private static bool Works(NurseFile nurse, LocalDate day) => nurse.Week.Any(w => w.Weekday == day.DayOfWeek) && !nurse.Leaves.Any(l => l.IsAllDay(day));

    private static string Name(string nurse) => DemoAgency.Roster.Nurses.First(n => n.Id == nurse).Name;
}
