using System.Collections.Immutable;
using HomeLine.Agency.Roster;
using HomeLine.Agency.WeekPlanning;
using HomeLine.Exchange.Csv.Cells;
using HomeLine.Exchange.Csv.Tables;
using HomeLine.LineCare.Lines;
using NodaTime;

namespace HomeLine.Exchange.Csv;

/// <summary>Which table goes into which file.</summary>
internal static class RosterExport
{
    public static readonly ImmutableArray<TableShape> Shapes =
    [
        AgencyTable.Shape, MapPlacesTable.Shape, MapBarriersTable.Shape, MapRoadsTable.Shape, NursesTable.Shape, ShiftsTable.Shape,
        LeavesTable.Shape, PatientsTable.Shape, LinesTable.Shape, InfusionsTable.Shape, OrdersTable.Shape, EventsTable.Shape,
        CaregiversTable.Shape, HoldsTable.Shape, OutsideCareTable.Shape, ExceptionsTable.Shape, PolicyTable.Shape, PublishedWeekTable.Shape,
    ];

    public static IEnumerable<(TableShape Shape, IEnumerable<string[]> Rows)> Tables(AgencyRoster roster, PlannedWeek? week, Instant asOf)
    {
        Dictionary<PatientId, DateTimeZone> zones = roster.Patients.ToDictionary(patient => patient.Id, patient => patient.Zone);
        DateTimeZone branch = roster.Profile.Zone;
        yield return (AgencyTable.Shape, AgencyTable.Write(roster, week, asOf));
        yield return (MapPlacesTable.Shape, MapPlacesTable.Write(roster.Map));
        yield return (MapBarriersTable.Shape, MapBarriersTable.Write(roster.Map));
        yield return (MapRoadsTable.Shape, MapRoadsTable.Write(roster.Map.Roads));
        yield return (NursesTable.Shape, NursesTable.Write(roster.Nurses));
        yield return (ShiftsTable.Shape, ShiftsTable.Write(roster.Nurses));
        yield return (LeavesTable.Shape, LeavesTable.Write(roster.Nurses));
        yield return (PatientsTable.Shape, PatientsTable.Write(roster.Patients));
        yield return (LinesTable.Shape, LinesTable.Write(roster.Lines));
        yield return (InfusionsTable.Shape, InfusionsTable.Write(roster.Infusions));
        yield return (OrdersTable.Shape, OrdersTable.Write(roster.Orders));
        yield return (EventsTable.Shape, EventsTable.Write(roster.Events, id => zones.GetValueOrDefault(id, branch), branch));
        yield return (CaregiversTable.Shape, CaregiversTable.Write(roster.Caregivers));
        yield return (HoldsTable.Shape, HoldsTable.Write(roster.Holds));
        yield return (OutsideCareTable.Shape, OutsideCareTable.Write(roster.OutsideCare));
        yield return (ExceptionsTable.Shape, ExceptionsTable.Write(roster.Exceptions));
        yield return (PolicyTable.Shape, PolicyTable.Write(roster.Policy));
        if (week is not null) yield return (PublishedWeekTable.Shape, PublishedWeekTable.Write(week));
    }
}
