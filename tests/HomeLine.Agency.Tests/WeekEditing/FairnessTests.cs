using System.Collections.Immutable;
using HomeLine.Agency.Storage;
using HomeLine.Agency.Tests.Storage;
using HomeLine.Agency.WeekEditing;
using HomeLine.Agency.WeekPlanning;
using HomeLine.Planning.Problem;
using NodaTime;

namespace HomeLine.Agency.Tests.WeekEditing;

/// <summary>Who had the evenings, the weekends and the long visits over the last weeks. The demonstration week and copies of it; invented data.</summary>
public sealed class FairnessTests(PostgresCluster cluster)
{
    private static readonly LoadRules Rules = LoadRules.Of(DemoAgency.Files.Policy, DemoAgency.FirstDay);

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public void The_weeks_before_and_this_week_stand_side_by_side()
    {
        FairLook look = FairLook.Of(DemoAgency.Roster, [Earlier(2), Earlier(1)], DemoAgency.Published, Rules);

        FairShare evenings = look.Rows.Single(r => r.Nurse == "N6");
        // Bramble Quickstile teaches on three evenings of the demonstration week.
        Assert.Equal((6, 3), (evenings.Before.Evenings, evenings.Now.Evenings));
        Assert.Equal(69, look.Rows.Sum(r => r.Now.Visits));
        Assert.Equal(2 * 5_320, look.Rows.Sum(r => r.Before.Minutes));
        Assert.Equal([new LocalDate(2027, 2, 22), new LocalDate(2027, 3, 1)], look.WeeksBefore);
    }

    [Fact]
    public void Words_name_who_has_most_and_compare_part_time_by_the_day()
    {
        ImmutableArray<string> words = FairLook.Of(DemoAgency.Roster, [Earlier(1)], DemoAgency.Published, Rules).Words;

        Assert.Contains(words, w => w.StartsWith("Evenings: Bramble Quickstile 6", StringComparison.Ordinal));
        Assert.Contains(words, w => w.StartsWith("Weekend days: ", StringComparison.Ordinal) && w.Contains("with none", StringComparison.Ordinal));
        Assert.Contains(words, w => w.StartsWith("Time in homes a working day: from ", StringComparison.Ordinal));
    }

    [Fact]
    public async Task Only_published_weeks_before_count_and_a_nurse_may_not_ask()
    {
        await using TestAgency agency = await DemoOnDatabase.OpenAsync(Provider.Sqlite, cluster, DemoAgency.Now);
        await using (AgencyDb db = agency.Open())
            Assert.True((await WeekStore.PublishAsync(db, TestAgency.Coordinator, Earlier(1), "", DemoAgency.Now, Cancel)).Succeeded);

        FairLook look = (await agency.Ask<AskFairness>().AskAsync(TestAgency.Coordinator, DemoAgency.FirstDay, Cancel)).Value;

        Assert.Equal([DemoAgency.FirstDay.PlusWeeks(-1)], look.WeeksBefore);
        Assert.Equal("not-allowed", (await agency.Ask<AskFairness>().AskAsync(DemoOnDatabase.Nurse, DemoAgency.FirstDay, Cancel)).Refusal?.Code);
    }

    [Fact]
    public void The_nurse_who_had_more_weekends_costs_more_on_the_next_one()
    {
        WeekDemand demand = WeekDemand.Of(DemoAgency.Roster, DemoAgency.Files, DemoAgency.FirstDay, 7, DemoAgency.Now);
        WeekVisit sunday = DemoAgency.Published.Visits[0] with { Nurse = "N6", Second = null, Day = new LocalDate(2027, 3, 6), Start = new LocalTime(10, 0) };
        PlannedWeek before = new() { FirstDay = new LocalDate(2027, 3, 1), Visits = [sunday, sunday with { Id = "other", Day = new LocalDate(2027, 3, 7) }] };

        Dictionary<string, Nurse> nurses = WeekendTurns.In(demand, [before], Rules).Problem.Nurses.ToDictionary(n => n.Id);

        // N6 and N3 work on Saturday; N6 had two weekend days more. Two points for each: our own default.
        Assert.Equal(4, nurses["N6"].Shifts.Single(s => s.Day == 5).TurnPoints);
        Assert.Equal(0, nurses["N3"].Shifts.Single(s => s.Day == 5).TurnPoints);
        Assert.All(nurses["N6"].Shifts.Where(s => s.Day < 5), s => Assert.Equal(0, s.TurnPoints));
    }

    private static PlannedWeek Earlier(int weeks) => DemoAgency.Published with
    {
        FirstDay = DemoAgency.FirstDay.PlusWeeks(-weeks),
        Version = 0,
        Visits = [.. DemoAgency.Published.Visits.Select(v => v with { Id = $"{weeks} before {v.Id}", Day = v.Day.PlusWeeks(-weeks) })],
    };
}
