using System.Collections.Immutable;
using HomeLine.Planning.Problem;
using NodaTime;

namespace HomeLine.Planning.Tests.Week;

/// <summary>Invented weeks with a bit of everything, the same for the same seed.</summary>
internal static class RandomWeek
{
    private static readonly string[] AllSkills = ["PICC", "PORT", "LAB"], AllTraits = ["female", "language:vi", "allergy:cat"];

    /// <summary>Tiny weeks for full enumeration: plain tasks, two nurses, three days.</summary>
    public static WeekProblem Tiny(int seed, int tasks)
    {
        var draw = new Draw(seed);
        int patients = Math.Max(2, tasks - 1);
        return Assemble(draw, nurses: 2, patients, tasks, days: 3) with { DropPoints = [] };
    }

    /// <summary>Weeks with chains, groups, breaks, two-person visits, specimens, orders and on-call shifts.</summary>
    public static WeekProblem Rich(int seed)
    {
        var draw = new Draw(seed);
        int patients = 3 + draw.Below(8), days = 2 + draw.Below(5);
        WeekProblem plain = Assemble(draw, 2 + draw.Below(4), patients, patients + draw.Below(8), days);
        return plain with
        {
            Now = draw.Chance(3) ? 540 : 0,
            Nurses = [.. plain.Nurses.Select(n => EnrichNurse(draw, n))],
            Patients = [.. plain.Patients.Select(p => EnrichPatient(draw, p, days))],
            Tasks = Chained(draw, [.. plain.Tasks.Select(t => EnrichTask(draw, t, days))]),
            DropPoints = [new DropPoint("lab", 0, [.. Enumerable.Range(0, days).Select(d => SmallWeek.At(d, 15))])],
        };
    }

    /// <summary>
    /// Tiny weeks that still have everything <see cref="FullEnumeration"/> knows: breaks, hours at home, starts tied to doses, chains counted in days, groups, specimens, orders.
    /// </summary>
    public static WeekProblem TinyRich(int seed, int tasks)
    {
        var draw = new Draw(seed);
        int days = 2 + draw.Below(2);
        WeekProblem plain = Assemble(draw, nurses: 2, Math.Max(2, tasks - 1 - draw.Below(2)), tasks, days);
        return Everything(draw, plain, days);
    }

    /// <summary>Weeks of up to twenty patients with all that <see cref="TinyRich"/> has.</summary>
    public static WeekProblem Small(int seed)
    {
        var draw = new Draw(seed);
        int days = 4 + draw.Below(3), patients = 6 + draw.Below(15);
        WeekProblem plain = Assemble(draw, 2 + (patients / 7), patients, patients + draw.Below(patients), days);
        return Everything(draw, plain, days);
    }

    /// <summary>Tiny weeks with two-person visits and least separations in minutes as well.</summary>
    public static WeekProblem TinyTied(int seed, int tasks)
    {
        WeekProblem rich = TinyRich(seed, tasks);
        return rich with
        {
            Patients = [.. rich.Patients.Select((p, i) => i == seed % 3 ? p with { CrewSize = 2 } : p)],
            Tasks = [.. rich.Tasks.Select((t, i) => t.After is null || i % 2 == 0 ? t : t with { GapInDays = false, MinGap = 1_300 + (10 * (seed % 20)), MaxGap = int.MaxValue })],
        };
    }

    /// <summary>The same week with more draws, two drop points, and nurses who drive there themselves.</summary>
    public static WeekProblem WithDrops(WeekProblem problem, int seed)
    {
        var draw = new Draw(seed + 33);
        int Place() => draw.Below(problem.Nurses.Length + problem.Patients.Length);
        return problem with
        {
            Tasks = [.. problem.Tasks.Select(t => draw.Chance(2) ? t with { DrawToDropMinutes = 90 + (10 * draw.Below(15)) } : t)],
            Rules = problem.Rules with { HandInMinutes = draw.Below(12) },
            DropPoints =
            [
                new DropPoint("lab", Place(), [.. Enumerable.Range(0, problem.DayCount).Select(d => SmallWeek.At(d, 15))]),
                new DropPoint("box", Place(), [.. Enumerable.Range(0, problem.DayCount).Select(d => SmallWeek.At(d, 11 + draw.Below(5)))]),
            ],
        };
    }

    /// <summary>The same week with slow mornings and afternoons, and often with a place that cannot be reached for some hours of a day.</summary>
    public static WeekProblem WithHours(WeekProblem problem, int seed)
    {
        var draw = new Draw(seed + 77);
        int closed = draw.Below(problem.Nurses.Length + problem.Patients.Length), day = draw.Below(problem.DayCount), from = SmallWeek.At(day, 8 + draw.Below(4));
        return problem with
        {
            SlowHours =
            [
                .. Enumerable.Range(0, problem.DayCount).SelectMany(d => new[]
                {
                    new SlowHours(SmallWeek.At(d, 7, draw.Below(60)), SmallWeek.At(d, 9, draw.Below(60)), 30 + draw.Below(70)),
                    new SlowHours(SmallWeek.At(d, 13, draw.Below(60)), SmallWeek.At(d, 16, draw.Below(60)), 30 + draw.Below(70)),
                }),
            ],
            RoadChanges = draw.Chance(2) ? [] : [new RoadChange(from, from + 30 + draw.Below(180), new ShutPlace(problem.Travel, closed))],
        };
    }

    /// <summary>Breaks, hours at home, starts tied to doses, chains counted in days, groups, specimens, orders.</summary>
    private static WeekProblem Everything(Draw draw, WeekProblem plain, int days)
    {
        CareTask[] enriched = [.. plain.Tasks.Select(t => EnrichTask(draw, t, days) with { Safety = false })];
        return plain with
        {
            Now = draw.Chance(4) ? 540 : 0,
            Nurses = [.. plain.Nurses.Select(n => EnrichNurse(draw, n))],
            Patients = [.. plain.Patients.Select(p => EnrichPatient(draw, p, days) with { CrewSize = 1 })],
            Tasks = [.. Chained(draw, enriched).Select(t => t.After is null ? t : t with { GapInDays = true, MinGap = 1440 })],
            DropPoints = [new DropPoint("lab", 0, [.. Enumerable.Range(0, days).Select(d => SmallWeek.At(d, 15))])],
        };
    }

    private static WeekProblem Assemble(Draw draw, int nurses, int patients, int tasks, int days) => new()
    {
        FirstDay = new LocalDate(2027, 3, 8),
        DayCount = days,
        Travel = new MapTravel(
            [.. Enumerable.Range(0, nurses + patients).Select(_ => new MapPoint(draw.Below(30), draw.Below(20)))], [], MapSettings.Default),
        Nurses = [.. Enumerable.Range(0, nurses).Select(n => NurseOf(draw, n, days))],
        Patients = [.. Enumerable.Range(0, patients).Select(p => PatientOf(draw, p, nurses))],
        Tasks = [.. Enumerable.Range(0, tasks).Select(t => TaskOf(draw, t, patients, days))],
        Rules = new PlanningRules(15, 660, 60, 10),
    };

    private static Nurse NurseOf(Draw draw, int index, int days) => new()
    {
        Id = $"N{index + 1}",
        Name = $"Nurse {index + 1}",
        Home = index,
        Shifts = [.. Enumerable.Range(0, days).Where(_ => !draw.Chance(4)).Select(d => ShiftOf(draw, d))],
        Skills = [.. AllSkills.Where(_ => !draw.Chance(4))],
        Licences = [new Licence("Marrow", draw.Chance(8) ? 1 : int.MaxValue)],
        Traits = [.. AllTraits.Where(_ => draw.Chance(2))],
        MaxVisitsADay = draw.Chance(4) ? 2 : int.MaxValue,
    };

    private static Shift ShiftOf(Draw draw, int day)
    {
        int from = SmallWeek.At(day, 7 + draw.Below(3)), to = from + 180 + (30 * draw.Below(8));
        return new Shift(day, from, to, to + (draw.Chance(2) ? 30 : 0));
    }

    private static PatientHome PatientOf(Draw draw, int index, int nurses) => new()
    {
        Id = $"P{index + 1}",
        Name = $"Patient {index + 1}",
        Place = nurses + index,
        State = "Marrow",
        PreferredTraits = draw.Chance(3) ? ["female"] : [],
        ExcludedTraits = draw.Chance(8) ? ["allergy:cat"] : [],
        KnownNurses = draw.Chance(2) ? [$"N{1 + draw.Below(nurses)}"] : [],
        InterpreterUnless = draw.Chance(5) ? "language:vi" : null,
        InterpreterMinutes = 20,
    };

    private static CareTask TaskOf(Draw draw, int index, int patients, int days)
    {
        int first = draw.Below(days), last = Math.Min(days - 1, first + draw.Below(3));
        return new CareTask
        {
            Id = $"T{index + 1}",
            Patient = $"P{1 + draw.Below(patients)}",
            Label = "care",
            Opens = first * 1440,
            LateFrom = draw.Chance(8) ? -1440 : (last + 1) * 1440,
            HardLatest = draw.Chance(4) ? ((last + 1) * 1440) - 1 : int.MaxValue,
            SetupMinutes = 10,
            WorkMinutes = 10 + (10 * draw.Below(8)),
            Skills = draw.Chance(2) ? [] : [AllSkills[draw.Below(3)]],
            Critical = draw.Chance(6),
            Weight = 1 + draw.Below(8),
            TargetBy = draw.Chance(6) ? (first * 1440) + 720 : null,
        };
    }

    private static Nurse EnrichNurse(Draw draw, Nurse nurse) => nurse with
    {
        Shifts =
        [
            .. nurse.Shifts.Select(s => draw.Chance(3)
                ? s with { LunchMinutes = 30, LunchFrom = s.From + 120, LunchTo = s.From + 240 }
                : s with { OnCall = draw.Chance(8) }),
        ],
    };

    private static PatientHome EnrichPatient(Draw draw, PatientHome patient, int days) => patient with
    {
        CrewSize = draw.Chance(7) ? 2 : 1,
        StartSpans = draw.Chance(4)
            ? [.. Enumerable.Range(0, days).SelectMany(d => new[] { new Span(SmallWeek.At(d, 8), SmallWeek.At(d, 10)), new Span(SmallWeek.At(d, 12), SmallWeek.At(d, 14)) })]
            : [],
        Allowances = draw.Chance(2) ? [new WeekAllowance(0, days - 1, 1 + draw.Below(2))] : [],
    };

    private static CareTask EnrichTask(Draw draw, CareTask task, int days) => task with
    {
        StartSpans = draw.Chance(8) ? [.. Enumerable.Range(0, days).Select(d => new Span(SmallWeek.At(d, 9), SmallWeek.At(d, 9, 40)))] : [],
        Together = draw.Chance(5) ? "kit" : null,
        DrawToDropMinutes = draw.Chance(6) ? 120 : null,
        Safety = draw.Chance(5),
        UsualDay = draw.Chance(4) ? 1 : null,
    };

    /// <summary>Ties some tasks to the one before of the same patient, by minutes or by days.</summary>
    private static ImmutableArray<CareTask> Chained(Draw draw, CareTask[] tasks)
    {
        for (int i = 1; i < tasks.Length; i++)
        {
            string? before = tasks[..i].LastOrDefault(t => t.Patient == tasks[i].Patient)?.Id;
            if (before is null || tasks[i].Together is not null || !draw.Chance(2)) continue;
            bool inDays = draw.Chance(2);
            tasks[i] = tasks[i] with
            {
                After = before,
                GapInDays = inDays,
                MinGap = inDays ? 1440 : 1_300 + draw.Below(400),
                MaxGap = draw.Chance(2) ? 2_880 : int.MaxValue,
            };
        }

        return [.. tasks];
    }

    /// <summary>Nobody drives to or from one place.</summary>
    private sealed class ShutPlace(ITravelTimes usual, int shut) : ITravelTimes
    {
        public int Minutes(int from, int to) => from != to && (from == shut || to == shut) ? ITravelTimes.Unreachable : usual.Minutes(from, to);
    }

    private sealed class Draw(int seed)
    {
        private uint _state = ((uint)seed * 2_654_435_761u) | 1;

        public int Below(int count)
        {
            _state ^= _state << 13;
            _state ^= _state >> 17;
            _state ^= _state << 5;
            return (int)((_state >> 8) % (uint)count);
        }

        /// <summary>True once in so many times.</summary>
        public bool Chance(int oneIn) => Below(oneIn) == 0;
    }
}
