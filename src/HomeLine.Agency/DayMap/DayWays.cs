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
internal sealed class DayWays(AgencyMap map, ImmutableArray<RoadShut> closures, ImmutableArray<MapPoint> doors)
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
            LocalDateTime start = visit.Day.At(visit.Start), leaves = leave ?? start.PlusMinutes(-Roads([]).Minutes(here, patient.Home));
            (int minutes, ImmutableArray<string> over, string noWay) = Drive(here, patient.Home, leaves, line);
            stops.Add(new WayStop(stops.Count + 1, patient.Id.Value, DueRows.PlaceOf(patient, map), visit.Start, visit.Minutes, patient.Home, minutes, over) { NoWay = noWay });
            here = patient.Home;
            leave = start.PlusMinutes(visit.Minutes);
        }

        int back = leave is { } end ? Drive(here, nurse.Home, end, line).Minutes : 0;
        return new NurseWay(nurse.Id, nurse.Name, nurse.Home, stops.ToImmutable(), line.ToImmutable(), stops.Sum(s => s.TravelBefore) + back, back);
    }

    private (int Minutes, ImmutableArray<string> Over, string NoWay) Drive(MapPoint from, MapPoint to, LocalDateTime leave, ImmutableArray<MapPoint>.Builder line)
    {
        ImmutableArray<RoadShut> held = [.. closures.Where(c => c.HoldsAt(leave))];
        RoadPieces roads = Roads(held.SelectMany(c => c.Crossings));
        (ImmutableArray<MapPoint> points, ImmutableArray<string> over) = roads.Way(from, to);
        line.AddRange(points);
        Town? left = map.NearestTown(from), reached = map.NearestTown(to);
        Town? shut = left?.Code == reached?.Code ? null : new[] { reached, left }.OfType<Town>().FirstOrDefault(t => held.Any(c => c.Towns.Contains(t.Code)));
        int minutes = roads.Minutes(from, to);
        if (shut is not null) return (0, over, $"{shut.Name} is closed");
        return minutes >= ITravelTimes.Unreachable ? (0, over, "every crossing on the way is closed") : (minutes, over, "");
    }

    private RoadPieces Roads(IEnumerable<string> closed)
    {
        string[] names = [.. closed.Distinct().Order(StringComparer.Ordinal)];
        string key = string.Join('|', names);
        if (!byClosed.TryGetValue(key, out RoadPieces? roads)) byClosed[key] = roads = new RoadPieces(map.WithClosed(names), doors);
        return roads;
    }
}
