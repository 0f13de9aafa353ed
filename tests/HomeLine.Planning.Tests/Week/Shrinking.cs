using System.Collections.Immutable;
using HomeLine.Planning.Problem;

namespace HomeLine.Planning.Tests.Week;

/// <summary>Takes away from a failing week whatever it still fails without, and writes what is left, so that a person can look at it.</summary>
internal static class Shrinking
{
    public static string Smallest(WeekProblem problem, Func<WeekProblem, bool> fails)
    {
        for (bool smaller = true; smaller;)
        {
            smaller = false;
            foreach (WeekProblem less in Less(problem))
            {
                if (!fails(less)) continue;
                (problem, smaller) = (less, true);
                break;
            }
        }

        return Written(problem);
    }

    private static IEnumerable<WeekProblem> Less(WeekProblem week)
    {
        for (int t = 0; t < week.Tasks.Length; t++) yield return week with { Tasks = week.Tasks.RemoveAt(t) };
        for (int n = 0; n < week.Nurses.Length && week.Nurses.Length > 1; n++) yield return week with { Nurses = week.Nurses.RemoveAt(n) };
        for (int n = 0; n < week.Nurses.Length; n++)
        {
            Nurse nurse = week.Nurses[n];
            for (int s = 0; s < nurse.Shifts.Length; s++)
            {
                yield return week with { Nurses = week.Nurses.SetItem(n, nurse with { Shifts = nurse.Shifts.RemoveAt(s) }) };
                if (nurse.Shifts[s].LunchMinutes > 0)
                    yield return week with { Nurses = week.Nurses.SetItem(n, nurse with { Shifts = nurse.Shifts.SetItem(s, nurse.Shifts[s] with { LunchMinutes = 0 }) }) };
            }
        }

        for (int p = 0; p < week.Patients.Length; p++)
        {
            PatientHome home = week.Patients[p];
            if (!week.Tasks.Any(t => t.Patient == home.Id)) yield return week with { Patients = week.Patients.RemoveAt(p) };
            foreach (PatientHome plain in new[] { home with { StartSpans = [] }, home with { Allowances = [] }, home with { KnownNurses = [] }, home with { InterpreterUnless = null }, home with { CrewSize = 1 } })
            {
                if (Written(plain) != Written(home)) yield return week with { Patients = week.Patients.SetItem(p, plain) };
            }
        }

        for (int t = 0; t < week.Tasks.Length; t++)
        {
            CareTask task = week.Tasks[t];
            foreach (CareTask plain in new[] { task with { StartSpans = [] }, task with { Skills = [] }, task with { After = null }, task with { Together = null }, task with { TargetBy = null }, task with { DrawToDropMinutes = null }, task with { Critical = false }, task with { HardLatest = int.MaxValue }, task with { UsualDay = null } })
            {
                if (Written(plain) != Written(task)) yield return week with { Tasks = week.Tasks.SetItem(t, plain) };
            }
        }
    }

    private static string Written(WeekProblem week) => string.Join('\n',
    [
        $"{week.DayCount} days, now {week.Now}",
        .. week.Nurses.Select(n => $"{n.Id} home {n.Home}, skills {List(n.Skills)}, traits {List(n.Traits)}, at most {n.MaxVisitsADay}, licensed to {n.Licences[0].LastDay}: {List(n.Shifts)}"),
        .. week.Patients.Select(Written),
        .. week.Tasks.Select(Written),
        .. week.DropPoints.Select(d => $"{d.Name} at {d.Place}: {List(d.Cutoffs)}"),
        .. Roads(week),
    ]);

    private static string Written(PatientHome p) =>
        $"{p.Id} at {p.Place}, crew {p.CrewSize}, starts {List(p.StartSpans)}, orders {List(p.Allowances)}, knows {List(p.KnownNurses)}, wishes {List(p.PreferredTraits)}, excludes {List(p.ExcludedTraits)}, interpreter {p.InterpreterUnless}";

    private static string Written(CareTask t) =>
        $"{t.Id} of {t.Patient}: {t.Opens} to {t.LateFrom}, at most {t.HardLatest}, target {t.TargetBy}, starts {List(t.StartSpans)}, {t.SetupMinutes} + {t.WorkMinutes} min, skills {List(t.Skills)}, weight {t.Weight}{(t.Critical ? " critical" : "")}, after {t.After} {t.MinGap}..{t.MaxGap} in days {t.GapInDays}, together {t.Together}, drop {t.DrawToDropMinutes}, usual {t.UsualDay}";

    private static IEnumerable<string> Roads(WeekProblem week)
    {
        int[] places = [.. week.Nurses.Select(n => n.Home).Concat(week.Patients.Select(p => p.Place)).Distinct().Order()];
        return places.Select(a => $"from {a}: {string.Join(' ', places.Select(b => $"{b}={week.Travel.Minutes(a, b)}"))}");
    }

    private static string List<T>(ImmutableArray<T> items) => "[" + string.Join("; ", items) + "]";
}
