using HomeLine.Agency.Kits;
using HomeLine.Agency.Sheets;
using HomeLine.Agency.Visits;
using HomeLine.Web.Pages.Visits;
using NodaTime;

namespace HomeLine.Web.Tests.Pages.Visits;

/// <summary>What a page tells the device about the day it may keep.</summary>
public sealed class DayKeptTests
{
    private static readonly DraftKey Key = new("key", "seal");

    [Fact]
    public void Only_forms_not_yet_recorded_go_along_and_no_address_holds_a_name()
    {
        DayKept kept = DayKept.Of(Day(Stop("2027-03-08-P03"), Stop("2027-03-08-P04", "V1"), Stop("2027-03-08-P05")), "u-1", Key);
        Assert.Equal(["/visits/2027-03-08-P03/record", "/visits/2027-03-08-P05/record"], kept.Pages);
        Assert.DoesNotContain("Zigzagby", kept.Json(), StringComparison.Ordinal);
    }

    [Fact]
    public void It_ends_with_the_day_at_the_branch() => Assert.Equal(15 * 60 * 60 * 1000, DayKept.Of(Day(), "u-1", Key).Ends);

    [Fact]
    public void A_visit_that_was_recorded_meanwhile_makes_it_another_version()
    {
        Assert.Equal(DayKept.Of(Day(Stop("a")), "u-1", Key).Version, DayKept.Of(Day(Stop("a")), "u-1", Key).Version);
        Assert.NotEqual(DayKept.Of(Day(Stop("a")), "u-1", Key).Version, DayKept.Of(Day(Stop("a", "V1")), "u-1", Key).Version);
    }

    [Fact]
    public void The_owner_is_a_print_and_not_the_account()
    {
        Assert.NotEqual(DayKept.OwnerOf("u-1"), DayKept.OwnerOf("u-2"));
        Assert.DoesNotContain("u-1", DayKept.OwnerOf("u-1"), StringComparison.Ordinal);
    }

    private static MyDay Day(params MyStop[] stops) => new()
    {
        Nurse = "N1",
        NurseName = "Juniper Brasslock",
        Day = Arrangement.Monday,
        Now = Arrangement.Monday.At(new LocalTime(9, 0)),
        PlanVersion = 1,
        Stops = [.. stops],
        DrivingMinutes = 20,
    };

    private static MyStop Stop(string id, params string[] records) => new(
        Arrangement.Visit(id),
        new DayStop
        {
            Start = new LocalTime(9, 0),
            ToldFrom = new LocalTime(9, 0),
            ToldTo = new LocalTime(10, 0),
            PatientName = "Clover Zigzagby",
            Address = "3 Tallow Row, Dunmallow",
            Phone = "555-0103",
            AccessNotes = "",
            Minutes = 60,
            TravelMinutesBefore = 14,
            ToDo = [],
            Bring = [],
            Unusual = [],
        },
        new KitList([], []), false, [.. records]);
}
