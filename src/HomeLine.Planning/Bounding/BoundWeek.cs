using System.Collections.Immutable;
using HomeLine.Planning.Plans;
using HomeLine.Planning.Problem;

namespace HomeLine.Planning.Bounding;

/// <summary>
/// The week as nurse-days and the visits each could make: every set of a patient's care the nurse may do that day, within starts that cost the same. Rest
/// between shifts, the drive to a drop point and that two people start together are left aside, which makes it easier than the real week.
/// </summary>
internal sealed class BoundWeek
{
    /// <summary>Own limit: from so many pieces of care of one patient on one day their sets are too many to list.</summary>
    private const int MostUnitsADay = 10;

    private int _bundles;

    public BoundWeek(WeekProblem problem)
    {
        Problem = problem;
        var patients = problem.Patients.Select((p, i) => (p.Id, i)).ToDictionary(p => p.Id, p => p.i, StringComparer.Ordinal);
        var stays = problem.FixedVisits().SelectMany(v => v.Tasks, (v, t) => (Visit: v, Task: t)).ToDictionary(p => p.Task, p => p.Visit, StringComparer.Ordinal);
        Units =
        [
            .. problem.Tasks.GroupBy(t => stays.TryGetValue(t.Id, out PlannedVisit? visit) ? ("visit", visit.Id) : t.Together is { } together ? (t.Patient, together) : ("", t.Id))
                .Select((g, i) => new CareUnit(problem, i, [.. g], patients[g.First().Patient]) { Fixed = stays.GetValueOrDefault(g.First().Id) }),
        ];
        UnitOfTask = Units.SelectMany(u => u.Tasks, (u, t) => (t.Id, u.Index)).ToDictionary(p => p.Id, p => p.Index, StringComparer.Ordinal);
        Days =
        [
            .. problem.Nurses.SelectMany((n, i) => n.Shifts.Where(s => !s.OnCall && s.Day >= 0 && s.Day < problem.DayCount).Select(s => (Nurse: i, Shift: s)))
                .Select((d, i) => new NurseDay(i, d.Nurse, d.Shift, problem.Nurses[d.Nurse].MaxVisitsADay, [])),
        ];
        ILookup<int, CareUnit> ofPatient = Units.Where(u => u.Fixed is null).ToLookup(u => u.Patient);
        foreach (NurseDay day in Days)
        {
            for (int p = 0; p < problem.Patients.Length; p++) Fill(day, p, [.. ofPatient[p]]);
        }

        foreach (CareUnit unit in Units.Where(u => u.Fixed is not null)) Stay(unit, unit.Fixed!);
    }

    public WeekProblem Problem { get; }

    public ImmutableArray<CareUnit> Units { get; }

    public Dictionary<string, int> UnitOfTask { get; }

    public ImmutableArray<NurseDay> Days { get; }

    private void Fill(NurseDay day, int patient, CareUnit[] units)
    {
        PatientHome home = Problem.Patients[patient];
        Nurse nurse = Problem.Nurses[day.Nurse];
        if (home.RefusedNurses.Contains(nurse.Id) || !home.RequiredTraits.All(nurse.Traits.Contains) || home.ExcludedTraits.Any(nurse.Traits.Contains)) return;
        CareUnit[] today = [.. units.Where(u => u.Tasks.All(t => t.Opens < (day.Shift.Day + 1L) * 1440 && t.HardLatest >= day.Shift.Day * 1440L))];
        bool licensed = nurse.Licences.Any(l => l.State == home.State && l.LastDay >= day.Shift.Day);
        CareUnit[] able = licensed ? [.. today.Where(u => u.Skills.All(nurse.Skills.Contains))] : [];
        Bundles(day, patient, able, second: false);
        if (home.CrewSize > 1) Bundles(day, patient, today, second: true);
    }

    /// <summary>A visit that must stay: on its nurse's day (and its second person's) at its start; its care has no other place, so every plan has it there.</summary>
    private void Stay(CareUnit unit, PlannedVisit visit)
    {
        int bundle = _bundles++;
        foreach ((string? nurse, bool second) in new[] { (visit.Nurse, false), (visit.Second, true) })
        {
            if (nurse is null) continue;
            NurseDay day = Days.First(d => Problem.Nurses[d.Nurse].Id == nurse && d.Shift.Day == StayingVisits.DayOf(visit.Start));
            day.Nodes.Add(Node(day, unit.Patient, [unit], second, visit.Minutes + Problem.Rules.DocumentationMinutes, visit.Start, visit.Start, bundle));
        }
    }

    private void Bundles(NurseDay day, int patient, CareUnit[] units, bool second)
    {
        if (units.Length > MostUnitsADay) throw new ArgumentException($"{Problem.Patients[patient].Name} has more than {MostUnitsADay} pieces of care on one day; the bound cannot list their sets.");
        for (int set = 1; set < 1 << units.Length; set++) Nodes(day, patient, [.. units.Where((_, i) => (set & (1 << i)) != 0)], second);
    }

    private void Nodes(NurseDay day, int patient, CareUnit[] units, bool second)
    {
        PatientHome home = Problem.Patients[patient];
        Nurse nurse = Problem.Nurses[day.Nurse];
        bool interpreter = !second && home.InterpreterUnless is { } trait && !nurse.Traits.Contains(trait);
        int minutes = units.Max(u => u.Setup) + units.Sum(u => u.Work) + (interpreter ? home.InterpreterMinutes : 0), stay = minutes + Problem.Rules.DocumentationMinutes;
        int earliest = Math.Max(Problem.Now, day.Shift.From + Problem.Travel.Minutes(nurse.Home, home.Place));
        int latest = Math.Min(LatestDraw(home, units, day.Shift.Day, minutes), day.Shift.OvertimeTo - stay - Problem.Travel.Minutes(home.Place, nurse.Home));
        int bundle = _bundles++;
        int[] edges = second ? [] : [.. units.SelectMany(u => u.Edges(day.Shift.Day)).Distinct().Order()];
        foreach (Span span in Starts(home, units, day.Shift.Day))
        {
            int from = Math.Max(span.From, earliest), to = Math.Min(span.To, latest);
            foreach (int edge in edges.Where(e => e > span.From && e <= to).Append(to + 1))
            {
                if (from <= edge - 1) day.Nodes.Add(Node(day, patient, units, second, stay, from, edge - 1, bundle));
                from = Math.Max(from, edge);
            }
        }
    }

    private VisitNode Node(NurseDay day, int patient, CareUnit[] units, bool second, int stay, int from, int to, int bundle)
    {
        long[][] points = [.. units.Select(u => second ? [0, 0, 0] : u.PointsAt(from))];
        return new VisitNode
        {
            Patient = patient,
            IsSecond = second,
            Units = units,
            Stay = stay,
            From = from,
            To = to,
            UnitPoints = points,
            Bundle = bundle,
            Adds =
            [
                points.Sum(p => p[0]), points.Sum(p => p[1]), points.Sum(p => p[2]),
                Problem.Rules.VisitPriceMinutes,
                second ? 0 : Welcome(patient, day.Nurse),
                second ? 0 : units.Sum(u => u.UnusedLife(day.Shift.Day)),
            ],
        };
    }

    private long Welcome(int patient, int nurse)
    {
        PatientHome home = Problem.Patients[patient];
        Nurse who = Problem.Nurses[nurse];
        SoftPoints soft = Problem.Rules.Soft;
        long wishes = home.PreferredTraits.Count(t => !who.Traits.Contains(t)) * (long)soft.MissingWish;
        if (home.KnownNurses.IsEmpty) return wishes;
        int place = home.KnownNurses.IndexOf(who.Id);
        return wishes + (place == 0 ? 0 : place > 0 ? soft.BackupNurse : soft.UnknownNurse);
    }

    private int LatestDraw(PatientHome home, CareUnit[] units, int day, int minutes)
    {
        int most = units.SelectMany(u => u.Tasks).Min(t => t.DrawToDropMinutes ?? int.MaxValue);
        if (most == int.MaxValue) return int.MaxValue;
        int latest = int.MinValue;
        foreach (DropPoint drop in Problem.DropPoints)
        {
            int taken = minutes + Problem.Travel.Minutes(home.Place, drop.Place);
            if (taken > most) continue;
            foreach (int cutoff in drop.Cutoffs.Where(c => (int)Math.Floor(c / 1440.0) == day)) latest = Math.Max(latest, cutoff - taken);
        }

        return latest;
    }

    private static List<Span> Starts(PatientHome home, CareUnit[] units, int day)
    {
        List<Span> spans = [new Span(day * 1440, ((day + 1) * 1440) - 1)];
        foreach (CareTask task in units.SelectMany(u => u.Tasks))
        {
            spans = Both(spans, [new Span(task.Opens, task.HardLatest)]);
            if (!task.StartSpans.IsDefaultOrEmpty) spans = Both(spans, task.StartSpans);
        }

        return home.StartSpans.IsDefaultOrEmpty ? spans : Both(spans, home.StartSpans);
    }

    private static List<Span> Both(List<Span> one, ImmutableArray<Span> other) =>
    [
        .. from a in one
           from b in other
           let both = new Span(Math.Max(a.From, b.From), Math.Min(a.To, b.To))
           where both.From <= both.To
           orderby both.From
           select both,
    ];
}
