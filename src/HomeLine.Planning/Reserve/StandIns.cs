using System.Collections.Immutable;
using HomeLine.Planning.Plans;
using HomeLine.Planning.Problem;

namespace HomeLine.Planning.Reserve;

/// <summary>
/// People who are not there yet: each needs one visit on a day, as long as a slot leaves in a home, where unplanned needs are likely to arise. They hold places while a week is planned
/// and are taken out again.
/// </summary>
internal sealed class StandIns
{
    /// <summary>
    /// Duty points of a stand-in nobody comes to. In the blend that steers the search more than a visit with an ordinary way to it, and less than overtime for all of it; among the duties
    /// less than a missed target. Our own default.
    /// </summary>
    private const int Duty = 4;

    private readonly WeekProblem _problem;
    private readonly PatientHome[] _homes;
    private readonly string _prefix;

    /// <param name="problem">The week.</param>
    /// <param name="most">As many on a day as will ever be asked for.</param>
    public StandIns(WeekProblem problem, int most)
    {
        _problem = problem;
        var inCare = problem.Tasks.Select(t => t.Patient).ToHashSet(StringComparer.Ordinal);
        PatientHome[] homes = [.. problem.Patients.Where(p => inCare.Contains(p.Id))];
        _homes = [.. Spread.Of([.. homes.Select(p => p.Place)], problem.Travel, most).Select(i => homes[i])];
        _prefix = "stand-in";
        while (problem.Patients.Any(p => p.Id.StartsWith(_prefix, StringComparison.Ordinal)) || problem.Tasks.Any(t => t.Id.StartsWith(_prefix, StringComparison.Ordinal))) _prefix += "'";
    }

    /// <summary>The week with so many stand-ins on each day.</summary>
    /// <param name="wanted">By day index.</param>
    /// <param name="slotMinutes">Length of a slot; the visit is shorter by the charting, so that the place it leaves is a slot wherever it was.</param>
    public WeekProblem Joining(int[] wanted, int slotMinutes)
    {
        if (_homes.Length == 0) return _problem;
        var people = ImmutableArray.CreateBuilder<PatientHome>();
        var tasks = ImmutableArray.CreateBuilder<CareTask>();
        for (int day = 0; day < wanted.Length; day++)
        {
            for (int i = 0; i < wanted[day]; i++)
            {
                PatientHome home = _homes[i % _homes.Length];
                string id = $"{_prefix} {day} {i}";
                people.Add(new PatientHome { Id = id, Name = id, Place = home.Place, State = home.State });
                tasks.Add(new CareTask
                {
                    Id = id,
                    Patient = id,
                    Label = "reserve",
                    Opens = day * 1440,
                    LateFrom = int.MaxValue,
                    HardLatest = ((day + 1) * 1440) - 1,
                    SetupMinutes = 0,
                    WorkMinutes = Math.Max(1, slotMinutes - _problem.Rules.DocumentationMinutes),
                    Weight = 0,
                    LeftOutDuty = Duty,
                });
            }
        }

        return _problem with { Patients = _problem.Patients.AddRange(people), Tasks = _problem.Tasks.AddRange(tasks) };
    }

    /// <summary>The visits without those to stand-ins.</summary>
    public ImmutableArray<PlannedVisit> TakenOut(ImmutableArray<PlannedVisit> visits) => visits.RemoveAll(v => v.Patient.StartsWith(_prefix, StringComparison.Ordinal));
}
