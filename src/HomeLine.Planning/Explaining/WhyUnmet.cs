using System.Collections.Immutable;
using HomeLine.Planning.Plans;
using HomeLine.Planning.Problem;
using HomeLine.Planning.Search;

namespace HomeLine.Planning.Explaining;

/// <summary>Says of a unit no visit does why every nurse and day fails, gathered into few sentences.</summary>
internal sealed class WhyUnmet(CompiledWeek week, WeekSearch search)
{
    /// <summary>Sentences name their days last, once it is known on how many days they hold.</summary>
    private static readonly string[] Binding =
    [
        ReasonCode.NoTimeLeft, ReasonCode.SpecimenLate, ReasonCode.SkillMissing, ReasonCode.LicenceMissing, ReasonCode.TraitMissing, ReasonCode.TraitExcluded,
        ReasonCode.NurseRefused, ReasonCode.NotWorking, ReasonCode.SecondMissing, ReasonCode.TooManyOfKind, ReasonCode.DayFull, ReasonCode.OtherCareFirst,
    ];

    /// <summary>A sentence names at most so many nurses.</summary>
    private const int MostNamed = 8;

    private readonly WeekProblem _problem = week.Problem;
    private readonly DropWords _drops = new(week);

    /// <summary>The reasons, the most binding first.</summary>
    public ImmutableArray<PlanningReason> Reasons(WeekState state, int unit)
    {
        int[] days = [.. Enumerable.Range(0, week.Days).Where(d => week.Units.StartSpans[(unit * week.Days) + d].Length > 0)];
        if (days.Length == 0) return [NoTimeLeft(unit)];
        bool fits = !double.IsInfinity(search.PlaceFor(state, unit).Cost);
        var byDay = days.SelectMany(d => OnDay(state, unit, d, fits).Select(f => (f.Code, f.Says, f.Action, Day: d)));
        return
        [
            .. byDay.GroupBy(f => (f.Code, f.Says, f.Action))
                .OrderBy(g => Array.IndexOf(Binding, g.Key.Code)).ThenBy(g => g.First().Day)
                .Select(g => new PlanningReason(g.Key.Code, g.Key.Says.Replace("{days}", Days(g.Select(f => f.Day)), StringComparison.Ordinal), g.Key.Action)),
        ];
    }

    private IEnumerable<(string Code, string Says, string Action)> OnDay(WeekState state, int unit, int day, bool fits)
    {
        PatientHome patient = _problem.Patients[week.Units.Patient[unit]];
        int[] routes = week.Routes.OfDay[day];
        if (routes.Length == 0) return [(ReasonCode.NotWorking, "Nobody works on {days}.", "Ask the nurse on call, or roster somebody.")];
        if (_drops.Of(unit, day) is { } late) return [(ReasonCode.SpecimenLate, late.Says, late.Action)];
        int[] able = [.. routes.Where(r => week.Units.Able(unit, r))];
        if (able.Length == 0) return Unable(unit, patient, routes);
        if (patient.CrewSize > 1 && !routes.Any(r => able.Any(a => a != r) && week.People.Welcome(week.Units.Patient[unit], week.Routes.Nurse[r])))
            return [(ReasonCode.SecondMissing, $"No second person for {patient.Name} works on {{days}}.", "Roster an escort.")];
        string names = Names(able);
        if (able.All(r => !week.Caps.Allows(state, unit, WeekState.None, r)))
            return [(ReasonCode.TooManyOfKind, $"With {names} there are as many visits of this kind as they take on {{days}}.", "Roster another nurse, choose another day, or agree more with them.")];
        return fits
            ? [(ReasonCode.OtherCareFirst, $"Care at greater risk takes the time of {names} on {{days}}.", "Add hours, or decide which care can wait.")]
            : [(ReasonCode.DayFull, $"No room is left for {names} on {{days}}.", "Allow overtime, use the nurse on call, or choose another day.")];
    }

    private IEnumerable<(string Code, string Says, string Action)> Unable(int unit, PatientHome patient, int[] routes)
    {
        CareTask[] care = [.. week.Units.Tasks[unit].Select(t => _problem.Tasks[t])];
        var faults = routes.Select(r => (Route: r, Fault: Scope.Fault(_problem, patient, care, Nurse(r), week.Routes.Day[r] + week.FirstDay)!)).ToArray();
        var home = faults.Where(f => f.Fault.Code is not (ReasonCode.SkillMissing or ReasonCode.LicenceMissing)).ToArray();
        foreach (var kind in home.GroupBy(f => f.Fault.Code))
        {
            yield return (kind.Key, $"{Names([.. kind.Select(f => f.Route)])} would be there on {{days}}, but {HomeSays(kind.Key, patient)}.",
                "Roster another nurse, or ask the patient.");
        }

        if (home.Length > 0) yield break;
        string skills = string.Join(" and ", care.SelectMany(t => t.Skills).Distinct());
        string code = faults.All(f => f.Fault.Code == ReasonCode.LicenceMissing) ? ReasonCode.LicenceMissing : ReasonCode.SkillMissing;
        string with = skills.Length == 0 ? "No nurse" : $"No nurse with {skills}";
        yield return (code, $"{with} licensed in {patient.State} works on {{days}}.", "Roster such a nurse, or ask another branch.");
    }

    private static string HomeSays(string code, PatientHome patient) => code switch
    {
        ReasonCode.NurseRefused => $"{patient.Name} does not want this nurse",
        ReasonCode.TraitMissing => $"{patient.Name} needs {string.Join(" and ", patient.RequiredTraits)}",
        _ => $"the home of {patient.Name} excludes {string.Join(" and ", patient.ExcludedTraits)}",
    };

    private PlanningReason NoTimeLeft(int unit)
    {
        CareTask[] care = [.. week.Units.Tasks[unit].Select(t => _problem.Tasks[t])];
        string label = string.Join(", ", care.Select(t => t.Label));
        long opens = Math.Max(_problem.Now, care.Max(t => t.Opens)), closes = care.Min(t => (long)t.HardLatest);
        string says = closes < opens
            ? $"{label} had to start by {PlanClock.Say(_problem.FirstDay, closes)}; no such time is left."
            : $"Between {PlanClock.Say(_problem.FirstDay, opens)} and the end of the plan the home and the care's own times never agree for {label}.";
        return new PlanningReason(ReasonCode.NoTimeLeft, says, "Agree another time with the patient or the prescriber.");
    }

    private Nurse Nurse(int route) => _problem.Nurses[week.Routes.Nurse[route]];

    private string Names(int[] routes)
    {
        string[] names = [.. routes.Select(r => Nurse(r).Name).Distinct()];
        return names.Length <= MostNamed ? Listed(names) : $"{string.Join(", ", names[..MostNamed])} and {names.Length - MostNamed} more";
    }

    private string Days(IEnumerable<int> days) =>
        Listed([.. days.Distinct().Order().Select(d => PlanClock.DayName(_problem.FirstDay, d + week.FirstDay))]);

    private static string Listed(string[] names) => names.Length < 2
        ? string.Concat(names)
        : $"{string.Join(", ", names[..^1])} and {names[^1]}";
}
