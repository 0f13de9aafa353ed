using System.Collections.Immutable;
using HomeLine.Planning.Checking;
using HomeLine.Planning.Plans;
using HomeLine.Planning.Problem;
using HomeLine.Planning.Search;
using HomeLine.Planning.Standing;

namespace HomeLine.Planning.Answers;

/// <summary>Writes a candidate out as an answer with its whole plan, which the checker has accepted as no worse than the published one.</summary>
internal sealed class WritingOut(UrgentCase urgent, PushTrial trial, PlanScore published)
{
    private readonly StandingTable _table = urgent.Table;
    private readonly StandingState _after = new(urgent.Staying);
    private ImmutableArray<FreedTime>? _freed;

    /// <summary>The answer, or what the checker holds against it.</summary>
    public (UrgentAnswer? Answer, PlanningReason? Refused) Of(Candidate candidate)
    {
        PlannedVisit visit = Put(candidate);
        List<(PlannedVisit Was, PlannedVisit Then, StandingVisit Facts)> changed = Changed(candidate);
        WeekPlan plan = PlanOf(visit, changed);
        (ImmutableArray<Finding> findings, PlanScore score) = Checked(candidate, visit, changed);
        if (!findings.IsEmpty) return (null, findings[0].Reason);
        ImmutableArray<MovedVisit> moved =
        [
            .. changed.Where(c => c.Facts.Told && DisruptionPrice.Felt(c.Facts, _table.NurseIndex[c.Then.Nurse], SecondOf(c.Then), c.Then.Start))
                .Select(c => new MovedVisit(c.Was, c.Then, c.Then.Start - c.Was.Start)),
        ];
        return (new UrgentAnswer(
            plan with { Score = score },
            visit,
            moved,
            [.. urgent.Replaced.Select(v => _table.Visits[v].Was)],
            candidate.Driving,
            visit.Start <= urgent.Target,
            candidate.Disruption,
            _freed ??= Freed()), null);
    }

    /// <summary>The checker's word on what changes: everything the touched patients have, and what the touched nurses do on the days around.</summary>
    private (ImmutableArray<Finding> Findings, PlanScore Score) Checked(
        Candidate candidate, PlannedVisit visit, List<(PlannedVisit Was, PlannedVisit Then, StandingVisit Facts)> changed)
    {
        var touched = urgent.Replaced.SelectMany(v => Lines(urgent.Table.Base, v)).Append(candidate.Line).ToHashSet();
        if (candidate.SecondLine >= 0) touched.Add(candidate.SecondLine);
        if (candidate.Other >= 0) touched.UnionWith(Lines(_table.Base, candidate.Other).Append(candidate.Elsewhere.Line));
        int[] patients = [.. changed.Select(c => c.Facts.Patient).Append(urgent.PatientIndex).Distinct()];
        var concerned = touched.SelectMany(Around).Distinct().SelectMany(l => _table.Base.On(l).ToArray())
            .Concat(patients.SelectMany(p => _table.OfPatient[p])).Distinct().Order().ToArray();
        var part = new PlanPart(_table, patients, concerned, urgent.NewTasks, published);
        var now = changed.ToDictionary(c => c.Was.Id, c => c.Then, StringComparer.Ordinal);
        return part.Compare([.. concerned.Where(v => !urgent.Replaced.Contains(v)).Select(v => now.GetValueOrDefault(_table.Visits[v].Was.Id, _table.Visits[v].Was)), visit]);
    }

    private IEnumerable<int> Lines(StandingState state, int visit)
    {
        int day = CompiledWeek.DayOf(state.Start[visit]);
        yield return _table.Line(state.Nurse[visit], day);
        if (state.Second[visit] >= 0) yield return _table.Line(state.Second[visit], day);
    }

    /// <summary>The nurse-day, the day before or after where the shifts alone do not leave the rest between, and the week of a nurse who has a cap for it.</summary>
    private IEnumerable<int> Around(int line)
    {
        yield return line;
        int day = _table.DayOf(line);
        if (day > _table.FirstDay && RestInDoubt(_table.Shifts[line - 1], _table.Shifts[line])) yield return line - 1;
        if (day < _table.FirstDay + _table.Days - 1 && RestInDoubt(_table.Shifts[line], _table.Shifts[line + 1])) yield return line + 1;
        foreach (int beside in StandingCaps.DaysBeside(_table, _table.NurseOf(line), day)) yield return _table.Line(_table.NurseOf(line), beside);
    }

    private bool RestInDoubt(Shift? one, Shift? next) =>
        one is null || next is null || next.From - one.OvertimeTo < _table.Problem.Rules.RestBetweenShiftsMinutes;

    private int SecondOf(PlannedVisit visit) => visit.Second is null ? -1 : _table.NurseIndex[visit.Second];

    private PlannedVisit Put(Candidate c)
    {
        _after.CopyFrom(urgent.Staying);
        if (c.Other >= 0) _after.TakeOut(c.Other);
        int nurse = _table.NurseOf(c.Line), second = c.SecondLine < 0 ? -1 : _table.NurseOf(c.SecondLine), index = _after.Newcomer;
        var entering = new Entering(urgent.PatientIndex, _table.MinutesOf(urgent.Visit, nurse), urgent.Visit.DrawToDrop);
        Enter(c.Line, c.Position, index, entering, c.Start);
        if (second >= 0) Enter(c.SecondLine, c.SecondPosition, index, entering with { Draw = int.MaxValue }, c.Start);
        (_after.Nurse[index], _after.Second[index]) = (nurse, second);
        if (c.Other >= 0)
        {
            StandingVisit other = _table.Visits[c.Other];
            int to = _table.NurseOf(c.Elsewhere.Line);
            Enter(c.Elsewhere.Line, c.Elsewhere.Position, c.Other, new Entering(other.Patient, _table.MinutesOf(other, to), other.DrawToDrop), c.Elsewhere.Start);
            (_after.Nurse[c.Other], _after.Second[c.Other]) = (to, -1);
        }

        return urgent.NewVisit(nurse, second) with { Start = c.Start };
    }

    private void Enter(int line, int position, int index, Entering entering, int start)
    {
        trial.Try(_after, line, position, entering, start, int.MaxValue / 2);
        trial.Apply(_after, line, position, index, entering);
    }

    private List<(PlannedVisit Was, PlannedVisit Then, StandingVisit Facts)> Changed(Candidate c)
    {
        var lines = new HashSet<int> { c.Line };
        if (c.SecondLine >= 0) lines.Add(c.SecondLine);
        if (c.Other >= 0) lines.Add(c.Elsewhere.Line);
        var changed = new List<(PlannedVisit, PlannedVisit, StandingVisit)>();
        foreach (int v in lines.SelectMany(l => _after.On(l).ToArray()).Where(v => v != _after.Newcomer).Distinct().Order())
        {
            StandingVisit facts = _table.Visits[v];
            if (_after.Start[v] == facts.Was.Start && _after.Nurse[v] == facts.WasNurse) continue;
            changed.Add((facts.Was, facts.Was with { Nurse = _table.Problem.Nurses[_after.Nurse[v]].Id, Start = _after.Start[v], Minutes = _after.Minutes[v] }, facts));
        }

        return changed;
    }

    private WeekPlan PlanOf(PlannedVisit visit, List<(PlannedVisit Was, PlannedVisit Then, StandingVisit Facts)> changed)
    {
        var gone = urgent.Replaced.Select(v => _table.Visits[v].Was.Id).Concat(changed.Select(c => c.Was.Id)).ToHashSet(StringComparer.Ordinal);
        PlannedVisit[] news = [.. changed.Select(c => c.Then).Append(visit).OrderBy(v => v.Start).ThenBy(v => v.Nurse, StringComparer.Ordinal)];
        var all = ImmutableArray.CreateBuilder<PlannedVisit>(_table.Visits.Length + 1);
        int next = 0;
        foreach (StandingVisit old in _table.Visits)
        {
            if (gone.Contains(old.Was.Id)) continue;
            while (next < news.Length && (news[next].Start, 0).CompareTo((old.Was.Start, string.CompareOrdinal(old.Was.Nurse, news[next].Nurse))) < 0)
                all.Add(news[next++]);
            all.Add(old.Was);
        }

        while (next < news.Length) all.Add(news[next++]);
        var done = visit.Tasks.ToHashSet(StringComparer.Ordinal);
        ImmutableArray<UnmetTask> unmet = _table.Plan.Unmet.IsDefault ? [] : [.. _table.Plan.Unmet.Where(u => !done.Contains(u.Task))];
        return new WeekPlan(all.DrainToImmutable(), unmet, default);
    }

    private ImmutableArray<FreedTime> Freed()
    {
        var seats = urgent.Replaced.Select(v => _table.Visits[v]).SelectMany(v => new[] { v.WasNurse, v.WasSecond }.Where(n => n >= 0)
            .Select(n => (Nurse: n, Day: CompiledWeek.DayOf(v.Was.Start), Minutes: v.Was.Minutes + _table.Problem.Rules.DocumentationMinutes)));
        return
        [
            .. from seat in seats
               group seat by (seat.Nurse, seat.Day) into day
               let line = _table.Line(day.Key.Nurse, day.Key.Day)
               let id = _table.Problem.Nurses[day.Key.Nurse].Id
               orderby day.Key.Day, id
               select new FreedTime(id, day.Key.Day, day.Sum(s => s.Minutes), trial.Driving(_table.Base, line) - trial.Driving(urgent.Staying, line)),
        ];
    }
}
