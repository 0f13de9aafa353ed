using System.Collections.Immutable;
using HomeLine.Agency.Roster;
using NodaTime;

namespace HomeLine.Agency.DayMap;

/// <summary>A day on the agency's own map: places, barriers, homes by code, and the nurses' ways. No name of a patient is in it.</summary>
/// <param name="Day">The day.</param>
/// <param name="IsDraft">From the working draft.</param>
/// <param name="Map">Places, barriers and crossings.</param>
/// <param name="Homes">Every patient's home by code.</param>
/// <param name="Ways">A way for each nurse with a visit, in roster order.</param>
public sealed record DrawnDay(LocalDate Day, bool IsDraft, AgencyMap Map, ImmutableArray<DrawnHome> Homes, ImmutableArray<NurseWay> Ways)
{
    /// <summary>Closures that hold for a part of the day.</summary>
    public ImmutableArray<DrawnClosure> Closures { get; init; } = [];
}

/// <summary>A closure as the map draws and says it.</summary>
/// <param name="Crossings">Bridges and passes by name.</param>
/// <param name="Towns">Towns.</param>
/// <param name="Words">What is closed, from when to when, and why.</param>
public sealed record DrawnClosure(ImmutableArray<string> Crossings, ImmutableArray<Town> Towns, string Words);

/// <summary>A patient's home.</summary>
public sealed record DrawnHome(string Patient, MapPoint At, bool IsVisited);

/// <summary>One nurse's way through the day.</summary>
/// <param name="Nurse">Identifier.</param>
/// <param name="Name">Name as shown.</param>
/// <param name="Home">Where it begins and ends.</param>
/// <param name="Stops">Her visits, in order.</param>
/// <param name="Line">The way as drawn: straight pieces from door to door, through the crossings it passes.</param>
/// <param name="DrivingMinutes">All driving.</param>
/// <param name="BackMinutes">Driving home after the last visit.</param>
public sealed record NurseWay(
    string Nurse, string Name, MapPoint Home, ImmutableArray<WayStop> Stops, ImmutableArray<MapPoint> Line, int DrivingMinutes, int BackMinutes)
{
    /// <summary>Trips that are slower than usual or wait for a road, the way home among them.</summary>
    public ImmutableArray<HardLeg> Hard { get; init; } = [];

    /// <summary>The way home, when it is such a trip.</summary>
    public HardLeg? Back { get; init; }
}

/// <summary>A trip that takes longer at its hour than at others.</summary>
/// <param name="Points">As drawn, the door that is left first.</param>
/// <param name="SlowMinutes">Minutes more because everybody drives slower then; 0 for none.</param>
/// <param name="WaitMinutes">Minutes of waiting until a road opens; 0 for none.</param>
/// <param name="Opens">When that is.</param>
public sealed record HardLeg(ImmutableArray<MapPoint> Points, int SlowMinutes, int WaitMinutes, LocalTime? Opens);

/// <summary>One stop of a way.</summary>
/// <param name="Number">1 for the first.</param>
/// <param name="Patient">The patient's code.</param>
/// <param name="Town">Where.</param>
/// <param name="Start">When.</param>
/// <param name="Minutes">Minutes in the home.</param>
/// <param name="At">The door.</param>
/// <param name="TravelBefore">Minutes of driving before it.</param>
/// <param name="Over">Crossings passed on the way there.</param>
public sealed record WayStop(
    int Number, string Patient, string Town, LocalTime Start, int Minutes, MapPoint At, int TravelBefore, ImmutableArray<string> Over)
{
    /// <summary>Why no road leads there when the trip has to be left for; empty when one does.</summary>
    public string NoWay { get; init; } = "";

    /// <summary>The trip there, when it is slower than usual or waits for a road; both are in its minutes.</summary>
    public HardLeg? Hard { get; init; }
}
