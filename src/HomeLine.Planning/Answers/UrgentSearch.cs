using System.Collections.Immutable;
using HomeLine.Planning.Checking;
using HomeLine.Planning.Plans;
using HomeLine.Planning.Problem;
using HomeLine.Planning.Search;

namespace HomeLine.Planning.Answers;

/// <summary>
/// Tries the urgent visit in every nurse's day by pushing later visits only, gentlest first; goes deeper (more moves, another visit elsewhere,
/// overtime, the nurse on call, a later day) only when nothing gentle meets the deadline.
/// </summary>
internal sealed class UrgentSearch(UrgentCase urgent)
{
    private const int GentleMoves = 1, DeeperMoves = 3;

    private readonly List<UrgentAnswer> _workable = [];
    private readonly RulingOut _ruledOut = new(urgent);
    private readonly HashSet<(string Rule, string? Visit, string Code)> _known =
        [.. Checker.Check(urgent.Problem, urgent.Published).Findings.Select(f => (f.Rule, f.Visit, f.Reason.Code))];

    private bool MetInTime => _workable.Any(a => a.Visit.Start < urgent.LateFrom);

    public UrgentAnswers Answers()
    {
        int firstDay = CompiledWeek.DayOf(Math.Max(urgent.Problem.Now, urgent.Care.Max(t => t.Opens)));
        int lastDay = Math.Clamp(CompiledWeek.DayOf(urgent.LateFrom - 1), firstDay, urgent.Problem.DayCount - 1);
        for (int day = firstDay; day <= lastDay; day++) OnDay(day, GentleMoves, deeper: false);
        if (!MetInTime)
        {
            for (int day = firstDay; day <= lastDay; day++) OnDay(day, DeeperMoves, deeper: true);
        }

        for (int day = lastDay + 1; day < urgent.Problem.DayCount && _workable.Count == 0; day++) OnDay(day, DeeperMoves, deeper: true);
        (ImmutableArray<UrgentAnswer> answers, ImmutableArray<UrgentAnswer> others) = Ranking.Split(urgent, _workable);
        var able = _workable.SelectMany(a => new[] { a.Visit.Nurse, a.Visit.Second }).ToHashSet();
        return new UrgentAnswers(answers, others, _ruledOut.Except(able));
    }

    private void OnDay(int day, int moves, bool deeper)
    {
        foreach (Nurse nurse in urgent.Problem.Nurses)
        {
            var line = NurseLine.Of(urgent, nurse, day, urgent.Staying);
            if (_ruledOut.AtOnce(line, deeper)) continue;
            if (urgent.Patient.CrewSize > 1) Pairs(line, moves, deeper);
            else Alone(line, moves, deeper);
        }
    }

    private static int HomeBy(NurseLine line, bool deeper) => deeper ? line.Shift!.OvertimeTo : line.Shift!.To;

    private void Alone(NurseLine line, int moves, bool deeper)
    {
        PlannedVisit visit = urgent.NewVisit(line.Nurse);
        for (int position = 0; position <= line.Visits.Length; position++)
        {
            int start = urgent.StartAfter(urgent.Patient, urgent.Care, line.ArrivalAt(position, urgent.Patient.Place));
            if (start < 0)
            {
                _ruledOut.Note(line, new PlanningReason(ReasonCode.NoTimeLeft,
                    $"{line.Nurse.Name} would reach {urgent.Patient.Name} after the last start allowed there.", "Agree a later start."));
                continue;
            }

            Take(line, visit with { Start = start }, position, moves, deeper);
        }

        if (deeper) MakingRoom(line, visit, moves);
    }

    private void Take(NurseLine line, PlannedVisit visit, int position, int moves, bool deeper)
    {
        Pushed pushed = line.PutIn(visit, position, HomeBy(line, deeper));
        if (pushed.Fault is not null) _ruledOut.Note(line, pushed);
        else Offer(line, visit, Replace(urgent.Staying, pushed.Visits), moves);
    }

    /// <summary>Two people at the same start, each in the gap of her own day.</summary>
    private void Pairs(NurseLine line, int moves, bool deeper)
    {
        foreach (Nurse second in urgent.Problem.Nurses.Where(n => n.Id != line.Nurse.Id && Scope.HomeFault(urgent.Patient, n) is null))
        {
            var other = NurseLine.Of(urgent, second, line.Day, urgent.Staying);
            if (other.Shift is null || (other.Shift.OnCall && !deeper)) continue;
            for (int i = 0; i <= line.Visits.Length; i++)
            {
                for (int j = 0; j <= other.Visits.Length; j++) Pair(line, other, i, j, moves, deeper);
            }
        }

        _ruledOut.Note(line, new PlanningReason(ReasonCode.SecondMissing,
            $"No second person is free when {line.Nurse.Name} could be at {urgent.Patient.Name}.", "Ask somebody to come along."));
    }

    private void Pair(NurseLine line, NurseLine other, int i, int j, int moves, bool deeper)
    {
        int arrival = Math.Max(line.ArrivalAt(i, urgent.Patient.Place), other.ArrivalAt(j, urgent.Patient.Place));
        int start = urgent.StartAfter(urgent.Patient, urgent.Care, arrival);
        if (start < 0) return;
        PlannedVisit visit = urgent.NewVisit(line.Nurse, other.Nurse) with { Start = start };
        Pushed here = line.PutIn(visit, i, HomeBy(line, deeper)), there = other.PutIn(visit, j, HomeBy(other, deeper));
        if (here.Fault is null && there.Fault is null)
            Offer(line, visit, Replace(Replace(urgent.Staying, here.Visits), there.Visits), moves);
    }

    /// <summary>Takes one other visit out of the day, puts the urgent one in, and finds the other a new place with least disruption.</summary>
    private void MakingRoom(NurseLine line, PlannedVisit visit, int moves)
    {
        foreach (PlannedVisit other in line.Visits.Where(v => !urgent.IsFixed(v) && v.Second is null && v.Nurse == line.Nurse.Id))
        {
            ImmutableArray<PlannedVisit> without = urgent.Staying.Remove(other);
            var thinner = NurseLine.Of(urgent, line.Nurse, line.Day, without);
            for (int position = 0; position <= thinner.Visits.Length; position++)
            {
                int start = urgent.StartAfter(urgent.Patient, urgent.Care, thinner.ArrivalAt(position, urgent.Patient.Place));
                if (start < 0 || start >= urgent.LateFrom) continue;
                PlannedVisit timed = visit with { Start = start };
                Pushed pushed = thinner.PutIn(timed, position, HomeBy(thinner, deeper: true));
                if (pushed.Fault is not null) continue;
                if (Elsewhere(Replace(without, pushed.Visits), other, timed, moves) is { } visits) Offer(line, timed, visits, moves);
            }
        }
    }

    /// <summary>The least disrupting place for a visit taken out, on time, with any nurse and day.</summary>
    private ImmutableArray<PlannedVisit>? Elsewhere(ImmutableArray<PlannedVisit> visits, PlannedVisit other, PlannedVisit added, int moves)
    {
        CareTask[] care = [.. urgent.CareOf(other)];
        PatientHome patient = urgent.PatientOf(other);
        if (care.Length == 0) return null;
        ImmutableArray<PlannedVisit>? best = null;
        (int Disruption, int Driving) least = (int.MaxValue, int.MaxValue);
        for (int day = CompiledWeek.DayOf(urgent.Problem.Now); day < urgent.Problem.DayCount; day++)
        {
            foreach (Nurse nurse in urgent.Problem.Nurses.Where(n => Scope.Fault(urgent.Problem, patient, care, n, day) is null))
            {
                var line = NurseLine.Of(urgent, nurse, day, visits);
                if (line.Shift is not { OnCall: false } shift) continue;
                PlannedVisit moved = other with { Nurse = nurse.Id, Minutes = UrgentCase.MinutesOf(patient, care, nurse) };
                for (int position = 0; position <= line.Visits.Length; position++)
                {
                    int start = urgent.StartAfter(patient, care, line.ArrivalAt(position, patient.Place));
                    if (start < 0 || start >= care.Min(t => t.LateFrom)) continue;
                    Pushed pushed = line.PutIn(moved with { Start = start }, position, shift.To);
                    if (pushed.Fault is not null) continue;
                    ImmutableArray<PlannedVisit> after = Replace(visits, pushed.Visits);
                    var cost = (Disruption.Of(urgent, after, added), line.DrivingOf(pushed.Visits) - line.Driving);
                    if (Disruption.Moved(urgent, after).Length > moves || cost.CompareTo(least) >= 0) continue;
                    (least, best) = (cost, after);
                }
            }
        }

        return best;
    }

    private void Offer(NurseLine line, PlannedVisit visit, ImmutableArray<PlannedVisit> visits, int moves)
    {
        ImmutableArray<MovedVisit> moved = Disruption.Moved(urgent, visits);
        if (moved.Length > moves)
        {
            _ruledOut.Note(line, moved);
            return;
        }

        var done = visit.Tasks.ToHashSet(StringComparer.Ordinal);
        ImmutableArray<UnmetTask> unmet = urgent.Published.Unmet.IsDefault ? [] : [.. urgent.Published.Unmet.Where(u => !done.Contains(u.Task))];
        var plan = new WeekPlan([.. visits.OrderBy(v => v.Start).ThenBy(v => v.Nurse, StringComparer.Ordinal)], unmet, default);
        CheckReport report = Checker.Check(urgent.Problem, plan);
        if (report.Findings.FirstOrDefault(f => !_known.Contains((f.Rule, f.Visit, f.Reason.Code))) is { } finding)
        {
            _ruledOut.Note(line, finding.Reason);
            return;
        }

        var answer = new UrgentAnswer(
            plan with { Score = report.Score },
            visit,
            moved,
            urgent.Replaced,
            DrivingOn(line.Day, visits) - DrivingOn(line.Day, urgent.Published.Visits),
            visit.Start <= urgent.Target,
            Disruption.Of(urgent, visits, visit),
            Freed());
        if (!_workable.Any(a => a.Visit == visit && a.Disruption == answer.Disruption && a.DrivingDelta == answer.DrivingDelta)) _workable.Add(answer);
    }

    private int DrivingOn(int day, ImmutableArray<PlannedVisit> visits) =>
        urgent.Problem.Nurses.Sum(n => NurseLine.Of(urgent, n, day, visits).Driving);

    private ImmutableArray<FreedTime> Freed()
    {
        var seats = urgent.Replaced.SelectMany(v => new[] { v.Nurse, v.Second }.OfType<string>()
            .Select(n => (Nurse: n, Day: CompiledWeek.DayOf(v.Start), Minutes: v.Minutes + urgent.Problem.Rules.DocumentationMinutes)));
        return
        [
            .. from seat in seats
               group seat by (seat.Nurse, seat.Day) into day
               orderby day.Key.Day, day.Key.Nurse
               let nurse = urgent.Nurse(day.Key.Nurse)
               select new FreedTime(day.Key.Nurse, day.Key.Day, day.Sum(s => s.Minutes),
                   NurseLine.Of(urgent, nurse, day.Key.Day, urgent.Published.Visits).Driving
                   - NurseLine.Of(urgent, nurse, day.Key.Day, urgent.Staying).Driving),
        ];
    }

    /// <summary>The visits with those of a changed nurse-day put in place of the old ones.</summary>
    private static ImmutableArray<PlannedVisit> Replace(ImmutableArray<PlannedVisit> visits, ImmutableArray<PlannedVisit> changed)
    {
        var ids = changed.Select(v => v.Id).ToHashSet(StringComparer.Ordinal);
        return [.. visits.Where(v => !ids.Contains(v.Id)), .. changed];
    }
}
