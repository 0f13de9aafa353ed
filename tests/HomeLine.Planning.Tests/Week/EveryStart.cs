using HomeLine.Planning.Plans;
using HomeLine.Planning.Problem;

namespace HomeLine.Planning.Tests.Week;

/// <summary>
/// The starts worth trying for visits in a given order: for each place of the break as early as can be, and then, with the last visit where it is, as late as
/// nobody's care costs more, so that she does not wait between visits. Minutes are tried one by one.
/// </summary>
internal sealed class EveryStart(WeekProblem problem)
{
    private readonly TripTimes _trips = TripTimes.Of(problem);
    private int _stops;

    /// <summary>One visit alone at its first allowed minute of the day; empty when there is none.</summary>
    public PlannedVisit? First(CareTask[] care, Nurse nurse, Shift shift)
    {
        Door door = At(care, nurse, shift.Day);
        int start = Next(door, shift.Day * 1440);
        return start < 0 ? null : Visit(door, nurse, start);
    }

    public IEnumerable<PlannedVisit[]> Of(CareTask[][] order, Nurse nurse, Shift shift)
    {
        Door[] doors = [.. order.Select(care => At(care, nurse, shift.Day))];
        // With drives to drop points: time made for a stop at any of them after any of the visits but the last, or not.
        int ways = problem.Rules.HandInMinutes is null ? 1 : (int)Math.Pow(problem.DropPoints.Length + 1, doors.Length - 1);
        for (int way = 0; way < ways; way++)
        {
            _stops = way;
            foreach (PlannedVisit[] visits in OfWay(doors, nurse, shift)) yield return visits;
        }
    }

    private IEnumerable<PlannedVisit[]> OfWay(Door[] doors, Nurse nurse, Shift shift)
    {
        for (int gap = shift.LunchMinutes > 0 ? 0 : doors.Length; gap <= doors.Length; gap++)
        {
            // She may also let slow hours pass at home.
            foreach (SlowHours slow in problem.SlowHours.Where(s => s.To > shift.From && s.To < shift.OvertimeTo))
            {
                if (Early(doors, nurse, shift, gap, slow.To) is { } rested) yield return Visits(doors, nurse, rested);
            }

            if (Early(doors, nurse, shift, gap) is not { } starts) continue;
            yield return Visits(doors, nurse, starts);
            if (Later(doors, shift, gap, starts)) yield return Visits(doors, nurse, starts);
        }
    }

    /// <summary>The break is before leaving home (gap 0), before visit number gap, or (gap = number of visits) nowhere between.</summary>
    private int[]? Early(Door[] doors, Nurse nurse, Shift shift, int gap, int notBefore = int.MinValue)
    {
        var starts = new int[doors.Length];
        int leave = Math.Max(notBefore, gap == 0 ? Math.Max(shift.From, shift.LunchFrom + shift.LunchMinutes) : shift.From), place = nurse.Home;
        for (int i = 0; i < doors.Length; i++)
        {
            int arrival = leave + Way(i - 1, place, doors[i].Place, leave);
            if (gap == i && i > 0) arrival = Math.Max(arrival, shift.LunchFrom) + shift.LunchMinutes;
            starts[i] = Next(doors[i], arrival);
            if (starts[i] < 0) return null;
            (leave, place) = (Left(doors[i], starts[i]), doors[i].Place);
        }

        return starts;
    }

    private bool Later(Door[] doors, Shift shift, int gap, int[] starts)
    {
        bool moved = false;
        for (int i = doors.Length - 2; i >= 0; i--)
        {
            int arrive = gap == i + 1 ? starts[i + 1] - shift.LunchMinutes : starts[i + 1];
            int last = arrive - Before(i, doors[i].Place, doors[i + 1].Place, arrive) - Left(doors[i], 0);
            if (gap == i + 1) last = Math.Min(last, shift.LunchTo - Left(doors[i], 0));
            last = Math.Min(last, doors[i].SamePointsUntil(starts[i]));
            while (last > starts[i] && !doors[i].Allows(last)) last--;
            if (last <= starts[i]) continue;
            (starts[i], moved) = (last, true);
        }

        return moved;
    }

    /// <summary>The drop point of the stop after a visit; empty for none.</summary>
    private DropPoint? StopAfter(int position)
    {
        if (position < 0) return null;
        int stop = _stops / (int)Math.Pow(problem.DropPoints.Length + 1, position) % (problem.DropPoints.Length + 1);
        return stop == 0 ? null : problem.DropPoints[stop - 1];
    }

    private int Way(int position, int from, int to, int leave)
    {
        if (StopAfter(position) is not { } drop) return _trips.Leaving(from, to, leave);
        int on = leave + _trips.Leaving(from, drop.Place, leave) + problem.Rules.HandInMinutes!.Value;
        return on + _trips.Leaving(drop.Place, to, on) - leave;
    }

    private int Before(int position, int from, int to, int arrive)
    {
        if (StopAfter(position) is not { } drop) return _trips.Reaching(from, to, arrive);
        int there = arrive - _trips.Reaching(drop.Place, to, arrive) - problem.Rules.HandInMinutes!.Value;
        return arrive - there + _trips.Reaching(from, drop.Place, there);
    }

    private int Left(Door door, int start) => start + door.Minutes + problem.Rules.DocumentationMinutes;

    private static int Next(Door door, int from)
    {
        for (int minute = Math.Max(from, door.Day * 1440); minute < (door.Day + 1) * 1440; minute++)
        {
            if (door.Allows(minute)) return minute;
        }

        return -1;
    }

    private Door At(CareTask[] care, Nurse nurse, int day)
    {
        PatientHome patient = problem.Patients.Single(p => p.Id == care[0].Patient);
        bool interpreter = patient.InterpreterUnless is { } trait && !nurse.Traits.Contains(trait);
        int minutes = care.Max(t => t.SetupMinutes) + care.Sum(t => t.WorkMinutes) + (interpreter ? patient.InterpreterMinutes : 0);
        return new Door(problem, _trips, patient, care, day, minutes);
    }

    private static PlannedVisit[] Visits(Door[] doors, Nurse nurse, int[] starts) => [.. doors.Select((door, i) => Visit(door, nurse, starts[i]))];

    private static PlannedVisit Visit(Door door, Nurse nurse, int start) => new()
    {
        Id = door.Care[0].Id,
        Patient = door.Care[0].Patient,
        Nurse = nurse.Id,
        Start = start,
        Minutes = door.Minutes,
        Tasks = [.. door.Care.Select(t => t.Id)],
    };

    /// <summary>A visit's care at a home on a day.</summary>
    private sealed record Door(WeekProblem Problem, TripTimes Trips, PatientHome Patient, CareTask[] Care, int Day, int Minutes)
    {
        public int Place => Patient.Place;

        public bool Allows(int minute) =>
            minute >= Problem.Now && Within(Patient.StartSpans, minute)
            && Care.All(t => minute >= t.Opens && minute <= t.HardLatest && Within(t.StartSpans, minute) && (t.DrawToDropMinutes is not { } most || Drops(minute, most)));

        /// <summary>Late care costs more after every step; a target is missed after it.</summary>
        public int SamePointsUntil(int start) => Care.Min(task =>
        {
            int step = task.Critical ? Problem.Rules.CriticalStepMinutes : 1440;
            long late = start < task.LateFrom ? task.LateFrom : task.LateFrom + ((((long)start - task.LateFrom) / step) + 1) * step;
            return (int)Math.Min(late - 1, task.TargetBy is { } target && start <= target ? target : int.MaxValue);
        });

        private bool Drops(int minute, int most) => Problem.DropPoints.Any(drop =>
        {
            int ready = Minutes + (Problem.Rules.HandInMinutes is null ? 0 : Problem.Rules.DocumentationMinutes);
            int taken = ready + Trips.Leaving(Place, drop.Place, minute + ready);
            return taken <= most && drop.Cutoffs.Any(c => c / 1440 == Day && minute + taken <= c);
        });

        private static bool Within(System.Collections.Immutable.ImmutableArray<Span> spans, int minute) =>
            spans.IsEmpty || spans.Any(s => minute >= s.From && minute <= s.To);
    }
}
