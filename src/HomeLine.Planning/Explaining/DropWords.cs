using HomeLine.Planning.Problem;
using HomeLine.Planning.Search;

namespace HomeLine.Planning.Explaining;

/// <summary>Says of care with a draw that no drop point can be reached in time on a day, whoever comes and however free she is, and names the nearest drop point.</summary>
internal sealed class DropWords(CompiledWeek week)
{
    private readonly WeekProblem _problem = week.Problem;
    private readonly TripTimes _trips = TripTimes.Of(week.Problem);

    /// <summary>What is said and what may be done; empty where a drop point can be reached. Days are left to be named.</summary>
    /// <param name="unit">The care.</param>
    /// <param name="day">Day of the tables.</param>
    public (string Says, string Action)? Of(int unit, int day)
    {
        CareTask[] draws = [.. week.Units.Tasks[unit].Select(t => _problem.Tasks[t]).Where(t => t.DrawToDropMinutes is not null)];
        if (draws.Length == 0 || week.Units.StartSpans[(unit * week.Days) + day] is not { Length: > 0 } spans) return null;
        PatientHome patient = _problem.Patients[week.Units.Patient[unit]];
        int most = draws.Min(t => t.DrawToDropMinutes!.Value), minutes = week.Units.Setup[unit] + week.Units.Work[unit];
        string label = string.Join(" and ", draws.Select(t => t.Label).Distinct());
        if (week.Drops.Latest(patient.Place, most, minutes, day + week.FirstDay) >= spans[0].From) return null;
        DropPoint[] open = [.. _problem.DropPoints.Where(d => d.Cutoffs.Any(c => CompiledWeek.DayOf(c) == day + week.FirstDay))];
        if (open.Length == 0) return ($"No drop point is emptied on {{days}} for {label} of {patient.Name}.", "Choose a day with a courier, or ask for a collection.");
        DropPoint near = open.OrderBy(d => _trips.Least(patient.Place, d.Place)).ThenBy(d => d.Name, StringComparer.Ordinal).First();
        int drive = _trips.Least(patient.Place, near.Place), ready = minutes + (_problem.Rules.HandInMinutes is null ? 0 : _problem.Rules.DocumentationMinutes);
        return ready + drive > most
            ? ($"{label} of {patient.Name} may wait {most} minutes, and to the nearest drop point on {{days}}, {near.Name}, it takes {ready} with the visit and {drive} on the road.",
                "Ask for another drop point or a collection at the home, or whether the specimen may wait longer.")
            : ($"From {patient.Name} no drop point is reached before its last collection on {{days}}, the nearest being {near.Name}, {drive} minutes away.",
                "Agree an earlier start, or ask for a later collection.");
    }
}
