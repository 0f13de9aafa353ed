using HomeLine.Agency.WeekPlanning;
using HomeLine.LineCare.Ledger;
using HomeLine.LineCare.Windows;
using NodaTime;

namespace HomeLine.Benchmarks.Year;

/// <summary>A plain rule: each morning whatever is due first, today or tomorrow, to the nearest nurse with room, with everything else that may be done there.</summary>
internal sealed class EarliestDueFirst : IYearPlanner
{
    public string Name => "earliest due first, day by day";

    public PlannedWeek Plan(YearWorld world, LocalDate monday) => new() { FirstDay = monday, Visits = [] };

    public PlannedWeek Morning(YearWorld world)
    {
        var days = new PlainDays(world, world.Week.Visits.Where(v => v.Day < world.Today), world.Week.FirstDay);
        LocalDate soon = world.Today.PlusDays(world.Today.DayOfWeek is IsoDayOfWeek.Friday or IsoDayOfWeek.Saturday ? 2 : 1);
        var due = days.Needs
            .Where(n => n.Windows[0] is var w && (w.Standing == WindowStanding.Ordered ? w.LastDay == world.Today : w.LastDay <= soon))
            .GroupBy(n => n.Patient)
            .OrderBy(g => g.Min(n => n.Windows[0].LateFrom)).ThenBy(g => g.Key.Value, StringComparer.Ordinal);
        foreach (var patient in due.ToList()) days.Append(patient.Key, world.Today);
        return world.Week with { Visits = days.Visits };
    }

    public PlannedWeek Lifted(YearWorld world, LineEvent report) => EverySeventhDay.Rescue(world, report, keepsLater: true);
}
