using System.Collections.Immutable;
using HomeLine.Agency.WeekPlanning;
using NodaTime;

namespace HomeLine.Agency.WeekEditing;

/// <summary>How the week's work lies on one nurse.</summary>
/// <param name="Nurse">Identifier.</param>
/// <param name="Name">Name as shown.</param>
/// <param name="Days">Days with a visit.</param>
/// <param name="Visits">Visits.</param>
/// <param name="Weighted">Visits with long ones counted for more, tenths.</param>
/// <param name="Heavy">Visits of 90 minutes and more.</param>
/// <param name="Evenings">Evenings: days with a visit from 17:00 on.</param>
/// <param name="HomeMinutes">Minutes in homes.</param>
/// <param name="DrivingMinutes">Driving.</param>
/// <param name="ShiftMinutes">Rostered minutes.</param>
/// <param name="OvertimeMinutes">Minutes past the shifts' ends.</param>
public sealed record NurseLoad(
    string Nurse, string Name, int Days, int Visits, int Weighted, int Heavy, int Evenings, int HomeMinutes, int DrivingMinutes, int ShiftMinutes, int OvertimeMinutes)
{
    /// <summary>A visit of so many minutes counts as heavy: our own default.</summary>
    private const int HeavyFrom = 90;

    /// <summary>An evening begins: our own default.</summary>
    private static readonly LocalTime Evening = new(17, 0);

    /// <summary>A row for each nurse who works or visits in the week.</summary>
    public static ImmutableArray<NurseLoad> Of(DraftBoard board) =>
        [.. board.Nurses.Where(n => n.Days.Any(d => d.ShiftFrom is not null || !d.Stops.IsEmpty)).Select(Of)];

    private static NurseLoad Of(DraftNurse nurse)
    {
        ImmutableArray<WeekVisit> visits = [.. nurse.Days.SelectMany(d => d.Stops).Select(s => s.Visit)];
        return new NurseLoad(
            nurse.Id,
            nurse.Name,
            nurse.Days.Count(d => !d.Stops.IsEmpty),
            visits.Length,
            visits.Sum(v => Weight(v.Minutes)),
            visits.Count(v => v.Minutes >= HeavyFrom),
            nurse.Days.Count(d => d.Stops.Any(s => s.Visit.Start >= Evening)),
            visits.Sum(v => v.Minutes),
            nurse.Days.Sum(d => d.DrivingMinutes),
            nurse.Days.Sum(d => d is { ShiftFrom: { } from, ShiftTo: { } to } ? (int)Promises.MinutesFrom(from, to) : 0),
            nurse.Days.Sum(d => d.OvertimeMinutes));
    }

    /// <summary>An hour counts 10 tenths, every further half hour 5; a short visit counts as an hour, since the door costs the same. Our own default.</summary>
    private static int Weight(int minutes) => 10 + (5 * Math.Max(0, (minutes - 60 + 29) / 30));
}
