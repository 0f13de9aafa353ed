using System.Collections.Immutable;
using HomeLine.Benchmarks.Weeks;
using HomeLine.Planning.Answers;
using HomeLine.Planning.Checking;
using HomeLine.Planning.Mending;
using HomeLine.Planning.Plans;
using HomeLine.Planning.Problem;
using HomeLine.Planning.Tests.Week;

namespace HomeLine.Planning.Tests.Mending;

/// <summary>
/// A working day of the demonstration week on which one to four things happen, one after another, each on the plan the one before left: a nurse calls out, a visit overruns, a
/// dressing lifts, somebody new is referred. What happens is drawn by the seed; the shares are our own.
/// </summary>
internal sealed class EventfulDay
{
    private readonly Draw _draw;
    private readonly int _day;
    private WeekProblem _problem;

    public EventfulDay(int seed)
    {
        _draw = new Draw(seed);
        _day = _draw.Below(5);
        _problem = DemoWeek.Problem with { Published = DemoWeek.Published };
    }

    /// <summary>What happened, in order.</summary>
    public List<Happened> Events { get; } = [];

    /// <summary>Lets the day go by.</summary>
    public void GoBy(CancellationToken cancel)
    {
        int now = DemoWeek.Minute(_day, "06:30");
        for (int i = 1 + _draw.Below(4); i > 0; i--)
        {
            now += 20 + _draw.Below(200);
            _problem = At(now);
            int kind = _draw.Below(100);
            Happened? happened = kind < 35 ? Lifts() : kind < 60 ? NurseOut(cancel) : kind < 80 ? Overrun(cancel) : Referred();
            if (happened is null) continue;
            Events.Add(happened);
            _problem = happened.After;
        }
    }

    /// <summary>The same week later: what has started by then is done, everybody else has been told.</summary>
    private WeekProblem At(int now) => _problem with
    {
        Now = now,
        Published = _problem.Published! with
        {
            Visits =
            [
                .. _problem.Published!.Visits.OrderBy(v => v.Start).ThenBy(v => v.Nurse, StringComparer.Ordinal)
                    .Select(v => v.Start <= now ? v with { Promise = PromiseState.Done } : v with { Promise = PromiseState.Told, ToldFrom = v.ToldFrom == 0 ? v.Start : v.ToldFrom }),
            ],
        },
    };

    private Happened? NurseOut(CancellationToken cancel)
    {
        Nurse nurse = _problem.Nurses[_draw.Below(_problem.Nurses.Length)];
        if (!_problem.Published!.Visits.Any(v => v.Nurse == nurse.Id && v.Start > _problem.Now && v.Start < (_day + 1) * 1440)) return null;
        Happened happened = Mend("call-out", new Trouble.NurseOut(nurse.Id, _problem.Now, (_day + 1) * 1440), cancel);
        bool began = _problem.Published.Visits.Any(v => v.Nurse == nurse.Id && v.Start <= _problem.Now && v.Start >= _day * 1440);
        ImmutableArray<Shift> left = began
            ? [.. nurse.Shifts.Select(s => s.Day == _day ? s with { To = Math.Max(s.From, _problem.Now), OvertimeTo = Math.Max(s.From, _problem.Now), LunchMinutes = 0 } : s)]
            : [.. nurse.Shifts.Where(s => s.Day != _day)];
        return happened with { After = happened.After with { Nurses = _problem.Nurses.Replace(nurse, nurse with { Shifts = left }) } };
    }

    private Happened? Overrun(CancellationToken cancel)
    {
        PlannedVisit[] today = [.. _problem.Published!.Visits.Where(v => v.Start / 1440 == _day && v.Start + v.Minutes > _problem.Now)];
        return today.Length == 0 ? null : Mend("overrun", new Trouble.Overrun(today[_draw.Below(today.Length)].Id, 15 + _draw.Below(60)), cancel);
    }

    private Happened Mend(string kind, Trouble trouble, CancellationToken cancel)
    {
        MendedWeek mended = Planner.Mend(_problem, [trouble], new MendOptions((ulong)_draw.Below(1_000), 100), cancel);
        return new Happened(kind, _problem, _problem with { Published = mended.Plan }, true, (int)mended.Score.Disruption, mended.Findings, [.. mended.Calls.Select(c => c.Patient)], trouble);
    }

    /// <summary>A dressing that was planned for a later day is reported lifting: target four hours, last acceptable eight. The later visit is no longer needed.</summary>
    private Happened? Lifts()
    {
        var care = _problem.Tasks.ToDictionary(t => t.Id, StringComparer.Ordinal);
        PlannedVisit[] later =
        [
            .. _problem.Published!.Visits.Where(v => v.Start >= (_day + 1) * 1440 && v.Second is null
                && v.Tasks is [var t] && !care[t].Critical && care[t].After is null && care[t].DrawToDropMinutes is null && !care.Values.Any(c => c.After == t)),
        ];
        if (later.Length == 0) return null;
        PlannedVisit visit = later[_draw.Below(later.Length)];
        CareTask urgent = care[visit.Tasks[0]] with
        {
            Opens = _problem.Now,
            TargetBy = _problem.Now + 240,
            LateFrom = _problem.Now + 481,
            HardLatest = int.MaxValue,
            StartSpans = [],
            Critical = true,
            Safety = true,
        };
        WeekProblem asked = _problem with { Tasks = _problem.Tasks.Replace(care[urgent.Id], urgent) };
        return Answered("dressing lifts", asked, new UrgentNeed(visit.Patient, [urgent.Id], [visit.Id]), without: visit.Id);
    }

    /// <summary>Somebody new, next door to a patient at hand, to be seen for the first time within two days.</summary>
    private Happened Referred()
    {
        PatientHome door = _problem.Patients[_draw.Below(_problem.Patients.Length)];
        string id = $"R{Events.Count}";
        PatientHome home = door with { Id = id, Name = "Referred", CrewSize = 1, PreferredTraits = [], KnownNurses = [], Allowances = [] };
        var first = new CareTask
        {
            Id = $"{id} first visit",
            Patient = id,
            Label = "first visit",
            Opens = _problem.Now,
            LateFrom = _problem.Now + 2880,
            SetupMinutes = 15,
            WorkMinutes = 60,
            Skills = ["PICC"],
            Weight = 5,
        };
        WeekProblem asked = _problem with { Patients = _problem.Patients.Add(home), Tasks = _problem.Tasks.Add(first) };
        return Answered("referral", asked, new UrgentNeed(id, [first.Id], []), without: null);
    }

    private static Happened Answered(string kind, WeekProblem asked, UrgentNeed need, string? without)
    {
        UrgentAnswers answers = Planner.Answer(asked, need);
        if (answers.Answers is [var best, ..])
        {
            ImmutableArray<Finding> broken = [.. Checker.Check(asked, best.Plan).Findings.Where(f => !Checker.Check(asked, asked.Published!).Findings.Any(b => (b.Rule, b.Visit, b.Nurse) == (f.Rule, f.Visit, f.Nurse)))];
            return new Happened(kind, asked, asked with { Published = best.Plan }, true, best.Disruption, broken, [.. best.Moved.Select(m => m.Before.Patient), need.Patient], null);
        }

        // Nobody can: it is named as unmet, and every nurse with a reason.
        ImmutableArray<PlanningReason> reasons = [.. answers.RuledOut.Select(r => r.Reason)];
        WeekPlan left = asked.Published! with
        {
            Visits = [.. asked.Published!.Visits.Where(v => v.Id != without)],
            Unmet = [.. asked.Published.Unmet.IsDefault ? [] : asked.Published.Unmet, .. need.Tasks.Select(t => new UnmetTask(t, reasons, []))],
        };
        return new Happened(kind, asked, asked with { Published = left }, false, 0, [], [need.Patient], null);
    }
}

/// <summary>One event and what was done about it.</summary>
/// <param name="Kind">What happened.</param>
/// <param name="Before">The week as it stood, the new need in it.</param>
/// <param name="After">The week with the plan that was taken.</param>
/// <param name="Answered">Whether there was a workable answer.</param>
/// <param name="Disruption">Points of the disruption table.</param>
/// <param name="Broken">Rules broken that were not broken before, as the program names them.</param>
/// <param name="Told">Patients whose families the program names.</param>
/// <param name="Trouble">The trouble, where it was one.</param>
internal sealed record Happened(
    string Kind, WeekProblem Before, WeekProblem After, bool Answered, int Disruption, ImmutableArray<Finding> Broken, ImmutableArray<string> Told, Trouble? Trouble);
