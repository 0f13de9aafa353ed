using System.Collections.Immutable;
using HomeLine.Planning.Plans;
using HomeLine.Planning.Problem;
using HomeLine.Planning.Search;

namespace HomeLine.Planning.Explaining;

/// <summary>
/// Loosens one rule at a time around a finished plan and sees whether the unmet care then finds a place. A relaxation is named, never applied.
/// </summary>
internal sealed class WhatWouldPlaceIt(WeekProblem problem, ImmutableArray<PlannedVisit> visits, CancellationToken cancel)
{
    /// <summary>Most overtime tried beyond what is allowed, minutes. Our own default.</summary>
    private const int OvertimeTried = 180;

    /// <summary>Gaining a skill is put last: nobody gains one today. Minutes, for ordering only.</summary>
    private const int ScopePrice = 7 * 1440;

    /// <summary>The changes that would place these tasks, cheapest first; those found so far when it is stopped.</summary>
    public ImmutableArray<Relaxation> For(IReadOnlyCollection<CareTask> care)
    {
        var ids = care.Select(t => t.Id).ToHashSet(StringComparer.Ordinal);
        Relaxation?[] found = [Overtime(ids), OnCall(ids), OtherTime(ids, care), DayLater(ids, care), GainScope(ids, care)];
        return [.. found.OfType<Relaxation>().OrderBy(r => r.CostMinutes)];
    }

    private Relaxation? Overtime(HashSet<string> ids)
    {
        WeekProblem loose = problem with { Nurses = Shifts(s => s.OnCall ? s : s with { OvertimeTo = s.OvertimeTo + OvertimeTried }) };
        if (Place(loose, ids) is not { } place) return null;
        int extra = place.Overtime - (place.Shift.OvertimeTo - OvertimeTried - place.Shift.To);
        return extra <= 0 ? null : new Relaxation(ReasonCode.Overtime,
            $"{extra} more minutes of overtime for {place.Nurse.Name} on {Day(place.Start)}, starting {PlanClock.Time(place.Start)}.", extra);
    }

    private Relaxation? OnCall(HashSet<string> ids)
    {
        if (!problem.Nurses.Any(n => n.Shifts.Any(s => s.OnCall))) return null;
        WeekProblem loose = problem with { Nurses = Shifts(s => s with { OnCall = false }) };
        if (Place(loose, ids) is not { } place || problem.Nurses.Single(n => n.Id == place.Nurse.Id).Shifts.All(s => s.Day != place.Shift.Day || !s.OnCall))
            return null;
        return new Relaxation(ReasonCode.OnCall,
            $"{place.Nurse.Name}, on call on {Day(place.Start)}, starting {PlanClock.Time(place.Start)}.", place.Busy);
    }

    private Relaxation? OtherTime(HashSet<string> ids, IReadOnlyCollection<CareTask> care)
    {
        string patient = care.First().Patient;
        Span[] allowed = [.. problem.Patients.Single(p => p.Id == patient).StartSpans, .. care.SelectMany(t => t.StartSpans)];
        if (allowed.Length == 0) return null;
        WeekProblem loose = problem with
        {
            Tasks = Tasks(ids, t => t with { StartSpans = [] }),
            Patients = [.. problem.Patients.Select(p => p.Id == patient ? p with { StartSpans = [] } : p)],
        };
        if (Place(loose, ids) is not { } place) return null;
        int away = allowed.Min(s => Math.Max(0, Math.Max(s.From - place.Start, place.Start - s.To)));
        return new Relaxation(ReasonCode.OtherTime,
            $"A start at {PlanClock.Say(problem.FirstDay, place.Start)} with {place.Nurse.Name}, if patient and prescriber agree.", Math.Max(1, away));
    }

    private Relaxation? DayLater(HashSet<string> ids, IReadOnlyCollection<CareTask> care)
    {
        int latest = care.Min(t => t.HardLatest);
        if (latest == int.MaxValue) return null;
        WeekProblem loose = problem with { Tasks = Tasks(ids, t => t with { HardLatest = int.MaxValue, StartSpans = [] }) };
        if (Place(loose, ids) is not { } place || place.Start <= latest) return null;
        return new Relaxation(ReasonCode.DayLater,
            $"Later than the latest start: {PlanClock.Say(problem.FirstDay, place.Start)} with {place.Nurse.Name}, if the prescriber agrees.",
            place.Start - latest);
    }

    private Relaxation? GainScope(HashSet<string> ids, IReadOnlyCollection<CareTask> care)
    {
        PatientHome patient = problem.Patients.Single(p => p.Id == care.First().Patient);
        if (problem.Nurses.All(n => n.Shifts.All(s => Lacks(n, s.Day, patient, care).Length == 0))) return null;
        WeekProblem loose = problem with
        {
            Tasks = Tasks(ids, t => t with { Skills = [] }),
            Nurses = [.. problem.Nurses.Select(n => n with { Licences = [.. n.Licences, new Licence(patient.State, int.MaxValue)] })],
        };
        if (Place(loose, ids) is not { } place) return null;
        Nurse nurse = problem.Nurses.Single(n => n.Id == place.Nurse.Id);
        string[] lacks = Lacks(nurse, place.Shift.Day, patient, care);
        return lacks.Length == 0 ? null : new Relaxation(ReasonCode.GainScope,
            $"{nurse.Name} has time on {Day(place.Start)} but would first need {string.Join(" and ", lacks)}.", ScopePrice);
    }

    private static string[] Lacks(Nurse nurse, int day, PatientHome patient, IReadOnlyCollection<CareTask> care) =>
    [
        .. care.SelectMany(t => t.Skills).Distinct().Where(s => !nurse.IsSignedOff(s, day)),
        .. nurse.Licences.Any(l => l.State == patient.State && l.LastDay >= day) ? Array.Empty<string>() : [$"a licence in {patient.State}"],
    ];

    private Found? Place(WeekProblem loose, HashSet<string> ids)
    {
        if (cancel.IsCancellationRequested) return null;
        var week = new CompiledWeek(loose);
        var search = new WeekSearch(week);
        WeekState state = search.Reading.Fresh();
        search.Reading.Adopt(state, new WeekPlan(visits, [], default));
        int unit = week.Units.OfTask[week.TaskIndex[ids.First()]];
        Proposal place = search.PlaceFor(state, unit);
        if (double.IsInfinity(place.Cost) || place.Cost >= 0) return null;
        search.Put(state, unit, place);
        int route = state.RouteA[place.Slot];
        Nurse nurse = loose.Nurses[week.Routes.Nurse[route]];
        Shift shift = nurse.Shifts.First(s => s.Day == week.Routes.Day[route] + week.FirstDay);
        return new Found(nurse, shift, state.Start[place.Slot], state.Figures[route].Overtime, state.Figures[route].Stay + state.Figures[route].Driving);
    }

    private ImmutableArray<Nurse> Shifts(Func<Shift, Shift> change) =>
        [.. problem.Nurses.Select(n => n with { Shifts = [.. n.Shifts.Select(change)] })];

    private ImmutableArray<CareTask> Tasks(HashSet<string> ids, Func<CareTask, CareTask> change) =>
        [.. problem.Tasks.Select(t => ids.Contains(t.Id) ? change(t) : t)];

    private string Day(int minute) => PlanClock.DayName(problem.FirstDay, CompiledWeek.DayOf(minute));

    private sealed record Found(Nurse Nurse, Shift Shift, int Start, int Overtime, int Busy);
}
