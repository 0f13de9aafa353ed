using System.Collections.Immutable;
using HomeLine.Agency.Roster;
using HomeLine.Agency.WeekPlanning;
using HomeLine.Planning.Problem;

namespace HomeLine.Agency.Mending;

/// <summary>Closures that were reported, as the minutes trips take while they hold: every answer of the day counts with them. Pure.</summary>
internal static class StandingClosures
{
    /// <summary>The week as it stands, on the roads as they are.</summary>
    public static StandingWeek WithClosures(this StandingWeek standing, ImmutableArray<RoadShut> closures, AgencyRoster roster) => closures.IsEmpty
        ? standing
        : standing with { Problem = standing.Problem with { RoadChanges = Changes(closures, roster, standing.Calendar) } };

    /// <summary>What a week asks for, on the roads as they are.</summary>
    public static WeekDemand WithClosures(this WeekDemand demand, ImmutableArray<RoadShut> closures, AgencyRoster roster) => closures.IsEmpty
        ? demand
        : demand with { Problem = demand.Problem with { RoadChanges = Changes(closures, roster, demand.Calendar) } };

    /// <summary>What is closed, in words.</summary>
    public static string Words(RoadShut closure, AgencyMap map) =>
        string.Join(", ", closure.Crossings.Concat(closure.Towns.Select(code => map.Towns.FirstOrDefault(t => t.Code == code)?.Name ?? code)));

    /// <summary>One change for each stretch of time in which the same places are closed; the stretches do not overlap.</summary>
    public static ImmutableArray<RoadChange> Changes(ImmutableArray<RoadShut> closures, AgencyRoster roster, PlanCalendar calendar)
    {
        ImmutableArray<(int From, int To, RoadShut Closure)> spans = [.. closures
            .Select(c => (From: Math.Max(calendar.Minute(c.From), 0), To: Math.Min(calendar.Minute(c.Ends), calendar.End), c))
            .Where(s => s.From < s.To)];
        int[] turns = [.. spans.SelectMany(s => new[] { s.From, s.To }).Distinct().Order()];
        RoadTravel roads = RoadTravel.Of(roster);
        var changes = ImmutableArray.CreateBuilder<RoadChange>();
        for (int i = 1; i < turns.Length; i++)
        {
            ImmutableArray<RoadShut> held = [.. spans.Where(s => s.From <= turns[i - 1] && s.To >= turns[i]).Select(s => s.Closure)];
            if (!held.IsEmpty) changes.Add(new RoadChange(turns[i - 1], turns[i], Travel(held, roster, roads)));
        }

        return changes.ToImmutable();
    }

    private static ITravelTimes Travel(ImmutableArray<RoadShut> held, AgencyRoster roster, RoadTravel roads)
    {
        var usual = (MapTravel)roads.Times;
        ImmutableHashSet<string> crossings = [.. held.SelectMany(c => c.Crossings)], towns = [.. held.SelectMany(c => c.Towns)];
        ITravelTimes then = crossings.IsEmpty ? usual : usual.WithClosed([.. usual.Closed.Concat(crossings).Distinct()]);
        return towns.IsEmpty ? then : new ShutTowns(then, towns, roster, roads);
    }

    /// <summary>Nobody drives into or out of a shut town; inside it one can walk.</summary>
    private sealed class ShutTowns : ITravelTimes
    {
        private readonly ITravelTimes _usual;
        private readonly Dictionary<int, string> _inside = [];

        public ShutTowns(ITravelTimes usual, ImmutableHashSet<string> shut, AgencyRoster roster, RoadTravel roads)
        {
            _usual = usual;
            foreach (Patient patient in roster.Patients) Note(roads.PlaceOfPatient(patient.Id.Value), patient.Home);
            foreach (NurseFile nurse in roster.Nurses) Note(roads.PlaceOfNurse(nurse.Id), nurse.Home);
            for (int drop = 0; drop < roster.Map.Drops.Length; drop++) Note(roads.PlaceOfDrop(drop), roster.Map.Drops[drop].At);

            void Note(int place, Roster.MapPoint at)
            {
                Town nearest = roster.Map.NearestTown(at)!;
                if (shut.Contains(nearest.Code)) _inside[place] = nearest.Code;
            }
        }

        public int Minutes(int from, int to) =>
            _inside.GetValueOrDefault(from) == _inside.GetValueOrDefault(to) ? _usual.Minutes(from, to) : ITravelTimes.Unreachable;
    }
}
