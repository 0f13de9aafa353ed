using HomeLine.Agency.Roster;
using HomeLine.Agency.WeekPlanning;
using HomeLine.LineCare.Ledger;
using HomeLine.LineCare.Lines;
using NodaTime;

namespace HomeLine.Benchmarks.Year;

/// <summary>A plain rule: everybody on every seventh day, a port every fourth week, by the nearest nurse; a lifting dressing at the end of somebody's day.</summary>
internal sealed class EverySeventhDay : IYearPlanner
{
    private const int Weekly = 7, Port = 28;

    public string Name => "nearest nurse, every seventh day";

    public PlannedWeek Plan(YearWorld world, LocalDate monday)
    {
        var days = new PlainDays(world, [], monday);
        var due = world.Roster.Patients.Select(p => (p.Id, On: LocalDate.Max(monday, NextOf(world, p)))).Where(d => d.On < monday.PlusDays(7));
        foreach ((PatientId patient, LocalDate on) in due.OrderBy(d => d.On).ThenBy(d => d.Id.Value, StringComparer.Ordinal)) WithRoom(days, patient, on, monday);
        AddOrdered(world, days, monday, monday.PlusDays(6));
        return new PlannedWeek { FirstDay = monday, Visits = days.Visits };
    }

    public PlannedWeek Morning(YearWorld world)
    {
        var days = new PlainDays(world, world.Week.Visits, world.Week.FirstDay);
        days.Redistribute();
        AddOrdered(world, days, world.Today, world.Today.PlusDays(1));
        // Whoever should have been seen and was not: as soon as somebody has room.
        foreach (Patient patient in world.Roster.Patients)
            if (NextOf(world, patient) < world.Today && !days.Visits.Any(v => v.Patient == patient.Id && v.Day >= world.Today)) days.AppendFrom(patient.Id, world.Today);
        return world.Week with { Visits = days.Visits };
    }

    public PlannedWeek Lifted(YearWorld world, LineEvent report) => Rescue(world, report, keepsLater: false);

    /// <summary>The same day while it is morning, at the end of the nearest nurse's day; otherwise the next day.</summary>
    public static PlannedWeek Rescue(YearWorld world, LineEvent report, bool keepsLater)
    {
        var days = new PlainDays(world, world.Week.Visits, world.Week.FirstDay);
        if (!keepsLater) days.Cancel(v => v.Patient == report.Patient && v.Day > world.Today && v.Care.All(c => !c.Key.Contains("OrderedService", StringComparison.Ordinal)));
        bool isMorning = world.Now.InZone(world.Zone).Hour < 14;
        int soon = days.Calendar.Minute(world.Now) + 30;
        if (!isMorning || !days.Append(report.Patient, world.Today, soon)) days.AppendFrom(report.Patient, world.Today.PlusDays(1));
        return world.Week with { Visits = days.Visits };
    }

    /// <summary>First visits and removals stand on the day they were ordered for.</summary>
    private static void AddOrdered(YearWorld world, PlainDays days, LocalDate from, LocalDate through)
    {
        foreach (var order in world.Roster.Orders.Where(o => !o.Dates.IsEmpty && o.Dates[0] >= from && o.Dates[0] <= through).OrderBy(o => o.Id, StringComparer.Ordinal))
        {
            if (days.Visits.Any(v => v.Patient == order.Patient && v.Day == order.Dates[0])) continue;
            if (days.Append(order.Patient, order.Dates[0])) days.Cancel(v => v.Patient == order.Patient && v.Day > order.Dates[0] && v.Day < order.Dates[0].PlusDays(3));
        }
    }

    /// <summary>On the day; where nobody has room, a day earlier or later.</summary>
    private static void WithRoom(PlainDays days, PatientId patient, LocalDate on, LocalDate monday)
    {
        foreach (int shift in (int[])[0, -1, 1, -2, 2, 3])
        {
            LocalDate day = on.PlusDays(shift);
            if (day >= monday && day < monday.PlusDays(7) && days.Append(patient, day)) return;
        }
    }

    private static LocalDate NextOf(YearWorld world, Patient patient)
    {
        bool isPort = world.Roster.Lines.First(l => l.Patient == patient.Id).Kind == LineKind.Port;
        LocalDate last = world.Roster.Events
            .Where(e => e.Patient == patient.Id && (isPort ? e.Kind is LineEventKind.Flushed : e.Kind is LineEventKind.DressingChanged or LineEventKind.Inserted))
            .Max(e => e.Performed!.Value.Date);
        return last.PlusDays(isPort ? Port : Weekly);
    }
}
