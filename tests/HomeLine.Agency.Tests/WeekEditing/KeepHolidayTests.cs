using HomeLine.Agency.Access;
using HomeLine.Agency.Storage;
using HomeLine.Agency.Tests.Storage;
using HomeLine.Agency.WeekEditing;
using Microsoft.EntityFrameworkCore;
using NodaTime;

namespace HomeLine.Agency.Tests.WeekEditing;

/// <summary>A holiday put down over the published demonstration week. Invented data.</summary>
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
        Assert.Equal("holiday-nobody", await CodeAsync(TestAgency.Coordinator, Thursday, "x"));
    }
}
