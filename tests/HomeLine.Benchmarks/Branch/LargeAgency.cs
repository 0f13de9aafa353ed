using HomeLine.Agency.Roster;
using HomeLine.Agency.WeekPlanning;
using HomeLine.Planning;
using HomeLine.Planning.Plans;
using NodaTime;

namespace HomeLine.Benchmarks.Branch;

/// <summary>An invented agency with nurses, towns and a planned week, at ten on Tuesday.</summary>
internal static class LargeAgency
{
    public static readonly LocalDate Tuesday = InventedBranch.Today.PlusDays(1);

    private static readonly string[] Towns = ["Aldermere", "Brindleford", "Cawsey", "Dunlow", "Eastmarl", "Fallowgate", "Gorsewick", "Hexmoor"];

    /// <summary>The agency; its nurses live and its patients are spread over the whole map.</summary>
    public static AgencyRoster RosterOf(WeekSize size)
    {
        AgencyRoster roster = InventedBranch.Of(size.Patients * 4 / 3);
        return roster with
        {
            Profile = roster.Profile with { FixedNow = Tuesday.At(new LocalTime(10, 0)).InZoneLeniently(roster.Profile.Zone).ToInstant() },
            Nurses = InventedNurses.Of(size.Nurses),
            Map = roster.Map with { Towns = [.. Towns.Select((name, i) => new Town(name[..3].ToUpperInvariant(), name, new MapPoint(8 + (i % 4 * 15), 10 + (i / 4 * 22)), "Marrow"))] },
        };
    }

    /// <summary>Its week, planned on Monday, published and told.</summary>
    public static PlannedWeek WeekOf(AgencyRoster roster, int rounds)
    {
        Instant monday = InventedBranch.Today.At(new LocalTime(6, 0)).InZoneLeniently(roster.Profile.Zone).ToInstant();
        WeekDemand demand = WeekDemand.Of(roster, CareFiles.Of(roster), InventedBranch.Today, 7, monday);
        PlannedWeek week = PlanInNames.Of(Planner.Plan(demand.Problem, new PlanOptions(Iterations: rounds)), demand);
        return week with { Visits = [.. week.Visits.Select(v => v with { Promise = PromiseState.Told, ToldFrom = v.Start })] };
    }
}
