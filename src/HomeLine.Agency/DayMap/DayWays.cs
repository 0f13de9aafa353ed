using System.Collections.Immutable;
using HomeLine.Agency.Due;
using HomeLine.Agency.Mending;
using HomeLine.Agency.Roster;
using HomeLine.Agency.WeekPlanning;
using HomeLine.LineCare.Lines;
using HomeLine.Planning.Problem;
using NodaTime;
using MapPoint = HomeLine.Agency.Roster.MapPoint;

namespace HomeLine.Agency.DayMap;

/// <summary>The ways of a day on the roads that are open when each trip is left for.</summary>
/// <param name="map">The agency's map.</param>
/// <param name="closures">Closures that hold for a part of the day.</param>
/// <param name="doors">Every door of the day.</param>
/// <param name="slow">Slow hours of the day, minutes from midnight.</param>
/// <param name="charting">Minutes of writing after each visit, before she drives on.</param>
internal sealed class DayWays(AgencyMap map, ImmutableArray<RoadShut> closures, ImmutableArray<MapPoint> doors, ImmutableArray<SlowHours> slow, int charting)
{
    private readonly Dictionary<string, RoadPieces> byClosed = new(StringComparer.Ordinal);

    public NurseWay Of(NurseFile nurse, ImmutableArray<WeekVisit> visits, Dictionary<PatientId, Patient> patients)
    {
        var stops = ImmutableArray.CreateBuilder<WayStop>();
        var line = ImmutableArray.CreateBuilder<MapPoint>();
        line.Add(nurse.Home);
        MapPoint here = nurse.Home;
        LocalDateTime? leave = null;
        foreach (WeekVisit visit in visits)
        {
            Patient patient = patients[visit.Patient];
            LocalDateTime start = visit.Day.At(visit.Start), leaves = leave ?? start.PlusMinutes(-Roads([]).Reaching(here, patient.Home, MinuteOf(start)));
            Trip trip = Drive(here, patient.Home, leaves);
            line.AddRange(trip.Points);
            stops.Add(new WayStop(stops.Count + 1, patient.Id.Value, DueRows.PlaceOf(patient, map), visit.Start, visit.Minutes, patient.Home, trip.Minutes, trip.Over) { NoWay = trip.NoWay, Hard = trip.Hard(here) });
            here = patient.Home;
            leave = start.PlusMinutes(visit.Minutes + charting);
        }

        Trip? back = leave is { } end ? Drive(here, nurse.Home, end) : null;
        if (back is not null) line.AddRange(back.Points);
        HardLeg? hardBack = back?.Hard(here);
        return new NurseWay(nurse.Id, nurse.Name, nurse.Home, stops.ToImmutable(), line.ToImmutable(), stops.Sum(s => s.TravelBefore) + (back?.Minutes ?? 0), back?.Minutes ?? 0)
        {
            Hard = [.. stops.Select(s => s.Hard).Append(hardBack).OfType<HardLeg>()],
            Back = hardBack,
        };
    }

    /// <summary>One trip as driven.</summary>
    private sealed record Trip(int Minutes, ImmutableArray<MapPoint> Points, ImmutableArray<string> Over, string NoWay, int Slow, int Wait, LocalTime? Opens)
    {
        public HardLeg? Hard(MapPoint from) => Slow > 0 || Wait > 0 ? new HardLeg([from, .. Points], Slow, Wait, Opens) : null;
    }

    /// <summary>At once, or after waiting where she is until a road opens the same day, whichever is there sooner: as the planner counts it.</summary>
    private Trip Drive(MapPoint from, MapPoint to, LocalDateTime leave)
    {
        Trip best = At(from, to, leave, leave);
        foreach (LocalDateTime opens in closures.Select(c => c.Ends).Where(e => e > leave && e.Date == leave.Date).Distinct())
        {
            Trip then = At(from, to, leave, opens);
            if (then.NoWay.Length == 0 && (best.NoWay.Length > 0 || then.Minutes < best.Minutes)) best = then;
        }

        return best;
    }

    private Trip At(MapPoint from, MapPoint to, LocalDateTime ready, LocalDateTime leave)
    {
        ImmutableArray<RoadShut> held = [.. closures.Where(c => c.HoldsAt(leave))];
        RoadPieces roads = Roads(held.SelectMany(c => c.Crossings));
        (ImmutableArray<MapPoint> points, ImmutableArray<string> over) = roads.Way(from, to);
        Town? left = map.NearestTown(from), reached = map.NearestTown(to);
        Town? shut = left?.Code == reached?.Code ? null : new[] { reached, left }.OfType<Town>().FirstOrDefault(t => held.Any(c => c.Towns.Contains(t.Code)));
        int usual = roads.Minutes(from, to);
        if (shut is not null) return new Trip(0, points, over, $"{shut.Name} is closed", 0, 0, null);
        if (usual >= ITravelTimes.Unreachable) return new Trip(0, points, over, "every crossing on the way is closed", 0, 0, null);
        int minutes = roads.Leaving(from, to, MinuteOf(leave)), wait = MinuteOf(leave) - MinuteOf(ready);
        return new Trip(wait + minutes, points, over, "", minutes - usual, wait, wait > 0 ? leave.TimeOfDay : null);
    }

    private static int MinuteOf(LocalDateTime at) => (at.Hour * 60) + at.Minute;

    private RoadPieces Roads(IEnumerable<string> closed)
    {
        string[] names = [.. closed.Distinct().Order(StringComparer.Ordinal)];
        string key = string.Join('|', names);
        if (!byClosed.TryGetValue(key, out RoadPieces? roads)) byClosed[key] = roads = new RoadPieces(map.WithClosed(names), doors, slow);
        return roads;
    }
}
