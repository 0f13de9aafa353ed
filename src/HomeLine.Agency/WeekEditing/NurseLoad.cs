using System.Collections.Immutable;
using HomeLine.Agency.WeekPlanning;

namespace HomeLine.Agency.WeekEditing;

/// <summary>How the week's work lies on one nurse.</summary>
/// <param name="Nurse">Identifier.</param>
/// <param name="Name">Name as shown.</param>
/// <param name="Days">Days with a visit.</param>
/// <param name="Visits">Visits.</param>
/// <param name="Weighted">Visits with long ones counted for more, tenths.</param>
/// <param name="Heavy">Visits that take long; from how many minutes is policy.</param>
/// <param name="Evenings">Days with a visit in the evening; from when is policy.</param>
/// <param name="HomeMinutes">Minutes in homes.</param>
/// <param name="DrivingMinutes">Driving.</param>
/// <param name="ShiftMinutes">Rostered minutes.</param>
/// <param name="OvertimeMinutes">Minutes past the shifts' ends.</param>
public sealed record NurseLoad(
    string Nurse, string Name, int Days, int Visits, int Weighted, int Heavy, int Evenings, int HomeMinutes, int DrivingMinutes, int ShiftMinutes, int OvertimeMinutes)
{
    /// <summary>What of the week is paid, by estimate.</summary>
    public PaidDay Paid { get; init; } = PaidDay.None;

    /// <summary>A row for each nurse who works or visits in the week.</summary>
    public static ImmutableArray<NurseLoad> Of(DraftBoard board, LoadRules rules) =>
        [.. board.Nurses.Where(n => n.Days.Any(d => d.ShiftFrom is not null || !d.Stops.IsEmpty)).Select(n => Of(n, rules))];

    private static NurseLoad Of(DraftNurse nurse, LoadRules rules)
    {
        ImmutableArray<WeekVisit> visits = [.. nurse.Days.SelectMany(d => d.Stops).Select(s => s.Visit)];
        return new NurseLoad(
            nurse.Id,
            nurse.Name,
            nurse.Days.Count(d => !d.Stops.IsEmpty),
            visits.Length,
            visits.Sum(v => LoadRules.Weight(v.Minutes)),
            visits.Count(v => v.Minutes >= rules.HeavyFrom),
            nurse.Days.Count(d => d.Stops.Any(s => s.Visit.Start >= rules.Evening)),
            visits.Sum(v => v.Minutes),
            nurse.Days.Sum(d => d.DrivingMinutes),
            nurse.Days.Sum(d => d is { ShiftFrom: { } from, ShiftTo: { } to } ? (int)Promises.MinutesFrom(from, to) : 0),
            nurse.Days.Sum(d => d.OvertimeMinutes))
        {
            Paid = new PaidDay(nurse.Days.Sum(d => d.Paid.Minutes), nurse.Days.Sum(d => d.Paid.Miles), nurse.Days.Sum(d => d.Paid.DrivenMiles)),
        };
    }
}
