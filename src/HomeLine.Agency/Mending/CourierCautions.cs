using System.Collections.Immutable;
using HomeLine.Agency.Roster;
using HomeLine.Agency.WeekPlanning;
using HomeLine.Planning.Problem;

namespace HomeLine.Agency.Mending;

/// <summary>Specimens whose courier may not get through while roads are closed. The courier's own way is not ours to plan: it is said, not solved. Pure.</summary>
internal static class CourierCautions
{
    public static ImmutableArray<string> Of(RoadChange change, MendSetting setting)
    {
        ImmutableArray<SpecimenDrop> drops = setting.Agency.Roster.Map.Drops;
        int branch = Enumerable.Range(0, drops.Length).FirstOrDefault(i => drops[i].At == setting.Agency.Roster.Map.BranchPlace, -1);
        if (branch < 0) return [];
        ITravelTimes usual = setting.Roads.Times;
        var cautions = ImmutableArray.CreateBuilder<string>();
        for (int drop = 0; drop < drops.Length; drop++)
        {
            int there = setting.Roads.PlaceOfDrop(drop), home = setting.Roads.PlaceOfDrop(branch);
            if (change.Travel.Minutes(there, home) <= usual.Minutes(there, home)) continue;
            foreach (CareTask draw in setting.Standing.Problem.Tasks.Where(t => t.DrawToDropMinutes is not null))
            {
                if (setting.Visit(draw.Id) is not { } visit || Nearest(visit, setting) != drop) continue;
                int start = setting.Calendar.Minute(visit.Day, visit.Start);
                int? courier = setting.Standing.Problem.DropPoints[drop].Cutoffs.FirstOrDefault(c => c > start && c < start + PlanCalendar.MinutesADay);
                if (courier is not { } at || at < change.From || at >= change.To || start < setting.Now) continue;
                cautions.Add($"The {DayWords.Time(setting.Calendar.Local(at).TimeOfDay)} courier from {drops[drop].Name} may not get through on {DayWords.Day(visit.Day)}: the specimen of {setting.People.Name(visit.Patient)} needs another way, or the order another day. Ask the laboratory and the pharmacist.");
            }
        }

        return cautions.ToImmutable();
    }

    private static int Nearest(WeekVisit visit, MendSetting setting)
    {
        int from = setting.Roads.PlaceOfPatient(visit.Patient.Value);
        return Enumerable.Range(0, setting.Agency.Roster.Map.Drops.Length).MinBy(i => setting.Roads.Times.Minutes(from, setting.Roads.PlaceOfDrop(i)));
    }
}
