using System.Collections.Immutable;
using System.Runtime.CompilerServices;
using HomeLine.Agency.Roster;
using HomeLine.Planning.Problem;
using NodaTime;
using PlanMap = HomeLine.Planning.Problem;

namespace HomeLine.Agency.WeekPlanning;

/// <summary>The agency's map as the planner's travel times, with a place index for every home and drop point.</summary>
public sealed class RoadTravel
{
    /// <summary>The last one of each map: a matrix of every pair of homes is worked out once, not with every question.</summary>
    private static readonly ConditionalWeakTable<AgencyMap, RoadTravel> Known = [];

    private readonly ImmutableDictionary<string, int> patientPlaces;
    private readonly ImmutableDictionary<string, int> nursePlaces;
    private readonly ImmutableArray<int> dropPlaces;
    private readonly ImmutableArray<(string Id, Roster.MapPoint Home)> homes;
    private readonly ImmutableArray<SlowTime> slow;

    private readonly MapTravel map;
    private readonly double circuity;

    private RoadTravel(
        MapTravel times,
        double circuity,
        ImmutableDictionary<string, int> patientPlaces,
        ImmutableDictionary<string, int> nursePlaces,
        ImmutableArray<int> dropPlaces,
        ImmutableArray<(string Id, Roster.MapPoint Home)> homes,
        ImmutableArray<SlowTime> slow)
    {
        this.homes = homes;
        this.slow = slow;
        (map, this.circuity) = (times, circuity);
        this.patientPlaces = patientPlaces;
        this.nursePlaces = nursePlaces;
        this.dropPlaces = dropPlaces;
    }

    public ITravelTimes Times => map;

    /// <summary>Road kilometres between two places on the roads as usual; positive infinity when there is no way.</summary>
    public double Kilometres(int from, int to) => from == to ? 0 : circuity * map.Kilometres(from, to);

    public int PlaceOfPatient(string id) => patientPlaces[id];

    public int PlaceOfNurse(string id) => nursePlaces[id];

    public int PlaceOfDrop(int index) => dropPlaces[index];

    /// <summary>Trips of a date by the minute of its day, on the roads as usual.</summary>
    public TripTimes On(LocalDate date) => new(Times, [], SlowOn(date.DayOfWeek, 0));

    /// <summary>The slow hours of a horizon.</summary>
    public ImmutableArray<SlowHours> SlowHoursOf(PlanCalendar calendar) =>
        slow.IsEmpty ? [] : [.. Enumerable.Range(0, calendar.DayCount).SelectMany(day => SlowOn(calendar.Date(day).DayOfWeek, day * PlanCalendar.MinutesADay))];

    /// <summary>The slow hours of a weekday, minutes from midnight.</summary>
    internal static ImmutableArray<SlowHours> SlowOn(RoadFactors roads, IsoDayOfWeek weekday) => SlowOn(roads.SlowTimes, weekday, 0);

    private ImmutableArray<SlowHours> SlowOn(IsoDayOfWeek weekday, int midnight) => SlowOn(slow, weekday, midnight);

    private static ImmutableArray<SlowHours> SlowOn(ImmutableArray<SlowTime> slow, IsoDayOfWeek weekday, int midnight) =>
        [.. slow.Where(s => s.Weekdays.Contains(weekday)).Select(s => new SlowHours(midnight + MinuteOf(s.From), midnight + MinuteOf(s.To), s.SpeedPercent))];

    private static int MinuteOf(LocalTime time) => (time.Hour * 60) + time.Minute;

    public static RoadTravel Of(AgencyRoster roster)
    {
        ImmutableArray<(string Id, Roster.MapPoint Home)> homes = [.. roster.Patients.Select(p => (p.Id.Value, p.Home)), .. roster.Nurses.Select(n => (n.Id, n.Home))];
        if (Known.TryGetValue(roster.Map, out RoadTravel? known) && known.homes.AsSpan().SequenceEqual(homes.AsSpan())) return known;
        RoadTravel found = WorkOut(roster, homes);
        Known.AddOrUpdate(roster.Map, found);
        return found;
    }

    private static RoadTravel WorkOut(AgencyRoster roster, ImmutableArray<(string Id, Roster.MapPoint Home)> homes)
    {
        var points = ImmutableArray.CreateBuilder<PlanMap.MapPoint>();
        int Add(Roster.MapPoint point)
        {
            points.Add(new PlanMap.MapPoint(point.X, point.Y));
            return points.Count - 1;
        }

        var patients = roster.Patients.ToImmutableDictionary(p => p.Id.Value, p => Add(p.Home));
        var nurses = roster.Nurses.ToImmutableDictionary(n => n.Id, n => Add(n.Home));
        ImmutableArray<int> drops = [.. roster.Map.Drops.Select(d => Add(d.At))];
        return new RoadTravel(Between(roster.Map, points.ToImmutable()), roster.Map.Roads.Circuity, patients, nurses, drops, homes, roster.Map.Roads.SlowTimes);
    }

    /// <summary>Travel on the agency's map between any points, closed crossings left out.</summary>
    internal static MapTravel Between(AgencyMap map, ImmutableArray<PlanMap.MapPoint> points) => new(
        points,
        [.. map.Barriers.Select(Barrier)],
        Settings(map.Roads),
        map.Barriers.SelectMany(b => b.Crossings).Where(c => c.Closed).Select(c => c.Name));

    private static PlanMap.MapBarrier Barrier(Roster.MapBarrier barrier) => new(
        barrier.Name,
        barrier.Vertical ? BarrierRun.NorthSouth : BarrierRun.WestEast,
        barrier.At,
        barrier.From,
        barrier.To,
        [.. barrier.Crossings.Select(c => new PlanMap.Crossing(c.Name, barrier.Vertical ? c.At.Y : c.At.X))]);

    private static MapSettings Settings(RoadFactors roads) => new(
        roads.Circuity,
        roads.ParkingMinutes,
        [.. roads.Bands.Select(b => new PlanMap.SpeedBand(b.UpToKm, b.KmPerHour))]);
}
