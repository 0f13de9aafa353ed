using System.Collections.Immutable;
using HomeLine.Agency.Roster;
using HomeLine.Agency.Sheets;
using HomeLine.Agency.WeekEditing;
using HomeLine.Agency.WeekPlanning;
using HomeLine.LineCare.Lines;
using HomeLine.LineCare.Policy;
using NodaTime;

namespace HomeLine.Agency.Tests.WeekPlanning;

/// <summary>Miles and paid time of a day, worked out by hand on a plane without barriers, and summed over the demonstration week. Invented data.</summary>
public sealed class PaidDayTests
{
    private static readonly LocalDate Monday = DemoAgency.FirstDay;

    /// <summary>Home at 0,0; doors at 3,4 and 3,10: 5, 6 and √109 km as the crow flies, 1.3 times that by road. 15 minutes of charting after each visit.</summary>
    private static readonly PlannedWeek TwoDoors = new()
    {
        FirstDay = Monday,
        Visits = [Visit("V1", "P01", 9, 60), Visit("V2", "P02", 11, 45)],
    };

    [Fact]
    public void Paid_time_and_miles_sum_to_the_route()
    {
        (DayRoute route, PaidDay paid) = Day();

        // 09:00 to 11:45 and 15 minutes of charting; the break fits in after she is home.
        Assert.Equal((3 * 60), paid.Minutes);
        Assert.Equal(1.3 * 6 / 1.609344, paid.Miles, 9);
        Assert.Equal(1.3 * (5 + 6 + Math.Sqrt(109)) / 1.609344, paid.DrivenMiles, 9);
        Assert.All(route.Stops, s => Assert.True(s.TravelBefore > 0));
    }

    [Fact]
    public void The_way_from_home_is_paid_as_policy_says()
    {
        (DayRoute route, PaidDay unpaid) = Day();
        int there = route.Stops[0].TravelBefore, back = route.DrivingMinutes - route.Stops.Sum(s => s.TravelBefore);

        (_, PaidDay all) = Day(("paid.home", 1), ("mileage.home", 1));
        (_, PaidDay beyond) = Day(("paid.home", 1), ("paid.home.beyond", 10), ("mileage.home", 1), ("mileage.home.beyond", 5));

        Assert.Equal(unpaid.Minutes + there + back, all.Minutes);
        Assert.Equal(all.DrivenMiles, all.Miles, 9);
        Assert.Equal(unpaid.Minutes + Math.Max(0, there - 10) + Math.Max(0, back - 10), beyond.Minutes);
        // 5 km as the crow flies are 4.04 miles by road, less than the five that stay unpaid.
        Assert.Equal(1.3 * (6 + Math.Sqrt(109)) / 1.609344 - 5, beyond.Miles, 9);
    }

    [Fact]
    public void Over_the_demonstration_week_every_paid_minute_is_a_visit_charting_a_drive_or_a_wait()
    {
        int charting = (int)DemoAgency.Files.Policy.ValueOf("visit.documentation", Monday);
        foreach (NurseFile nurse in DemoAgency.Roster.Nurses)
        {
            for (LocalDate day = Monday; day < Monday.PlusDays(7); day = day.PlusDays(1))
            {
                DayRoute route = DayRoute.Of(DemoAgency.Roster, DemoAgency.Files, DemoAgency.Published, nurse.Id, day);
                PaidDay paid = PaidDay.Of(nurse, route.Stops, route.DrivingMinutes, RoadTravel.Of(DemoAgency.Roster), DemoAgency.Files.Policy);
                int work = route.Stops.Sum(s => s.Visit.Minutes + charting) + route.Stops.Skip(1).Sum(s => s.TravelBefore);
                int waiting = route.Stops.Zip(route.Stops.Skip(1), (a, b) => (int)Promises.MinutesFrom(a.Visit.Start, b.Visit.Start) - a.Visit.Minutes - charting - b.TravelBefore).Sum();
                Assert.Contains(work + waiting - paid.Minutes, new[] { 0, nurse.LunchMinutes });
                Assert.True(paid.Miles <= paid.DrivenMiles);
            }
        }
    }

    [Fact]
    public void The_day_sheet_says_what_is_paid_and_by_which_rule()
    {
        (AgencyRoster roster, NurseFile nurse) = Plane();

        DaySheetContent sheet = DaySheetWriter.Of(nurse, Monday, new AgencyAtHand(roster, CareFiles.Of(roster), DemoAgency.Now), TwoDoors);

        Assert.Equal("Estimate by policy: 3 h 0 min and 4.8 of 17.3 miles paid. Between home and the first and last door, time is not paid and miles are not paid.", sheet.Paid);
    }

    private static (DayRoute Route, PaidDay Paid) Day(params (string Id, decimal Value)[] rules)
    {
        (AgencyRoster roster, NurseFile nurse) = Plane(rules);
        var files = CareFiles.Of(roster);
        DayRoute route = DayRoute.Of(roster, files, TwoDoors, nurse.Id, Monday);
        return (route, PaidDay.Of(nurse, route.Stops, route.DrivingMinutes, RoadTravel.Of(roster), files.Policy));
    }

    private static (AgencyRoster Roster, NurseFile Nurse) Plane(params (string Id, decimal Value)[] rules)
    {
        AgencyRoster demo = DemoAgency.Roster;
        NurseFile nurse = demo.Nurses.First(n => n.Id == "N1") with { Home = new MapPoint(0, 0) };
        return (
            demo with
            {
                Nurses = [nurse],
                Patients = [.. demo.Patients.Where(p => p.Id.Value is "P01" or "P02").Select(p => p with { Home = new MapPoint(3, p.Id.Value == "P01" ? 4 : 10) })],
                Map = demo.Map with { Barriers = [], Roads = demo.Map.Roads with { Circuity = 1.3, SlowTimes = [] } },
                Policy = [.. demo.Policy, .. rules.Select(r => PolicyBook.Default.Rules.Single(p => p.Id == r.Id) with { Value = r.Value, Level = PolicyLevel.Agency })],
            },
            nurse);
    }

    private static WeekVisit Visit(string id, string patient, int hour, int minutes) => new()
    {
        Id = id,
        Patient = new PatientId(patient),
        Nurse = "N1",
        Day = Monday,
        Start = new LocalTime(hour, 0),
        Minutes = minutes,
        Care = ImmutableArray<VisitCare>.Empty,
    };
}
