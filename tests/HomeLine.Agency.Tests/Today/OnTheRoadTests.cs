using HomeLine.Agency.Mending;
using HomeLine.Agency.Reports;
using HomeLine.Agency.Roster;
using HomeLine.Agency.Tests.Mending;
using HomeLine.Agency.Tests.Storage;
using HomeLine.Agency.Today;
using NodaTime;
using static HomeLine.Agency.Tests.DemoOnDatabase;

namespace HomeLine.Agency.Tests.Today;

/// <summary>Nothing to read at the wheel: who is on the road by the published times is told after arriving, in short sentences. Our own scenario, invented throughout.</summary>
public sealed class OnTheRoadTests(PostgresCluster cluster)
{
    private static Instant? Until(string nurse, int hour, int minute) => OnTheRoad.Until(
        nurse, DemoAgency.Published, new AgencyAtHand(DemoAgency.Roster, DemoAgency.Files, DemoAgency.At(9, hour, minute)));

    /// <summary>N2 on Tuesday: 08:24 P58, 09:46 P59, 11:39 P28.</summary>
    [Fact]
    public void Between_two_visits_a_nurse_is_on_the_road_until_the_next_door()
    {
        Assert.Null(Until("N2", 8, 30));
        Assert.Equal(DemoAgency.At(9, 9, 46), Until("N2", 9, 44));
        Assert.Null(Until("N2", 9, 50));
        Assert.Equal(DemoAgency.At(9, 8, 24), Until("N2", 8, 20));
        Assert.Null(Until("N2", 4, 0));
        Assert.Null(Until("N2", 20, 0));
        // She has no visit on Tuesday.
        Assert.Null(Until("N7", 10, 0));
    }

    [Fact]
    public async Task A_nurse_at_the_wheel_is_told_after_she_has_arrived()
    {
        await using TestAgency agency = await OpenAsync(Provider.Sqlite, cluster, DemoAgency.At(9, 9, 44));
        FiledTrouble trouble = await agency.ReportAsync(new NurseIsOut("N4", Tuesday.Day.At(new LocalTime(9, 44)), Tuesday.Day, "car"));

        AppliedTrouble applied = await agency.ApplyAsync(trouble);

        Assert.Contains(applied.ToTell, p => p.Nurse is not null);
        foreach (PersonToTell person in applied.ToTell.Where(p => p.Nurse is not null))
        {
            Assert.Equal(OnTheRoad.Until(person.Nurse!, applied.Week, new AgencyAtHand(DemoAgency.Roster, DemoAgency.Files, DemoAgency.At(9, 9, 44))), person.NotBefore);
            Assert.True(person.NotBefore is null || person.By > person.NotBefore);
        }

        Assert.All(applied.ToTell.Where(p => p.Nurse is null), p => Assert.Null(p.NotBefore));
    }

    [Fact]
    public void A_message_is_said_in_short_sentences_of_whole_words()
    {
        Assert.Equal(
            ["New visit.", "Clover Zigzagby on Tuesday 9 March 10 08.", "60 minutes."],
            Spoken.Of("New visit: Clover Zigzagby on Tue 9 Mar 10:08, 60 min. Read it when parked."));
        Assert.Equal(["The nurse comes on Wednesday 10 March 8 o’clock."], Spoken.Of("The nurse comes on Wed 10 Mar 08:00."));
        Assert.Empty(Spoken.Of(""));
    }
}
