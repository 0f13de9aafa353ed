using System.Collections.Immutable;
using HomeLine.Planning.Checking;
using HomeLine.Planning.Plans;
using HomeLine.Planning.Problem;
using HomeLine.Planning.Search;

namespace HomeLine.Planning.Editing;

/// <summary>
/// A plan that people change by hand, looked up and checked once, so that what a move would do is answered at once. It never searches: the moved visit
/// takes the place it is given, later visits are pushed only as far as the road asks, and the checker says whether that may be.
/// Safe to ask from several threads. Make a new one after each change.
/// </summary>
public sealed class HandWeek
{
    private readonly HandTable _table;
    private readonly HandPart _part;

    /// <summary>Looks the plan up and checks it.</summary>
    /// <param name="problem">The problem. What it has as published plan is what was promised: fixed visits are found there.</param>
    /// <param name="visits">The visits as they stand. Care of the problem that is in none of them is unmet.</param>
    /// <param name="pinned">Visits people want to stay where they are; they are not moved and not pushed.</param>
    /// <exception cref="ArgumentException">The problem contradicts itself, or a visit names people who are not in it.</exception>
    public HandWeek(WeekProblem problem, ImmutableArray<PlannedVisit> visits, IReadOnlySet<string>? pinned = null)
    {
        ProblemFaults.Refuse(problem);
        Visits = [.. visits.OrderBy(v => v.Start).ThenBy(v => v.Id, StringComparer.Ordinal)];
        _table = new HandTable(problem, Visits, pinned ?? new HashSet<string>());
        var done = Visits.SelectMany(v => v.Tasks).ToHashSet(StringComparer.Ordinal);
        Unmet = [.. problem.Tasks.Where(t => !done.Contains(t.Id))];
        Check = Checker.Check(problem, new WeekPlan(Visits, [.. Unmet.Select(t => new UnmetTask(t.Id, [], []))], default));
        _part = new HandPart(_table, Check.Score);
    }

    /// <summary>The problem.</summary>
    public WeekProblem Problem => _table.Problem;

    /// <summary>The visits as they stand, by start.</summary>
    public ImmutableArray<PlannedVisit> Visits { get; }

    /// <summary>Care no visit does.</summary>
    public ImmutableArray<CareTask> Unmet { get; }

    /// <summary>The checker's verdict on the plan as it stands.</summary>
    public CheckReport Check { get; }

    /// <summary>Whether a visit is under way, done, about to start or pinned, and so stays.</summary>
    public bool Stays(string visit) => _table.Stays(visit);

    /// <summary>Where a nurse's break falls between her visits, plan minutes, for drawing; empty when it falls outside them or none is due.</summary>
    public Span? BreakOf(string nurse, int day) => BreakPlace.Of(_table, nurse, day);

    /// <summary>What a move would do.</summary>
    /// <exception cref="ArgumentException">The move names visits, tasks or nurses nobody knows.</exception>
    public HandChange Try(HandMove move) => Try(move, new Laying(_table, Delay.None).Of(move));

    private HandChange Try(HandMove move, Laid plainly)
    {
        HandChange first = _part.Judge(plainly);
        if (first.IsAllowed || !LaterMayMend(first)) return first;
        bool late = false;
        foreach (TimeMade made in Enum.GetValues<TimeMade>())
        {
            // Time for drop points is made only where a specimen is late for want of it.
            if (made > TimeMade.Nowhere && !(late && Problem.Rules.HandInMinutes is not null)) break;
            foreach (Delay delay in (ReadOnlySpan<Delay>)[Delay.None, Delay.Itself, Delay.TheNext])
            {
                HandChange change = (made, delay) == (TimeMade.Nowhere, Delay.None) ? first : _part.Judge(new Laying(_table, delay, made).Of(move));
                if (change.IsAllowed) return change;
                if (!LaterMayMend(change)) break;
                late |= change.Broken.Any(f => f.Reason.Code == ReasonCode.SpecimenLate);
                if (change.Broken.All(f => f.Reason.Code != ReasonCode.BreakMissing)) break;
            }
        }

        return first;
    }

    /// <summary>A missing break, and a specimen for which there is no time on the way, may be mended by starting later; nothing else is.</summary>
    private static bool LaterMayMend(HandChange change) => change.Broken.All(f => f.Reason.Code is ReasonCode.BreakMissing or ReasonCode.SpecimenLate);

    /// <summary>Every place where a visit may go, by day, nurse and position; where it stands is not among them.</summary>
    public ImmutableArray<WorkablePlace> PlacesOf(string visit)
    {
        PlannedVisit moved = _table.Visit(visit);
        return Stays(visit) ? [] : Places(moved.Patient, _table.CareOf(moved), to => new HandMove.Move(visit, to), moved);
    }

    /// <summary>Every place where care nobody covers may go, by day, nurse and position.</summary>
    public ImmutableArray<WorkablePlace> PlacesOf(ImmutableArray<string> tasks)
    {
        ImmutableArray<CareTask> care = [.. tasks.Select(_table.Task)];
        return Places(care[0].Patient, care, to => new HandMove.PlaceCare(tasks, to), null);
    }

    private ImmutableArray<WorkablePlace> Places(string patient, ImmutableArray<CareTask> care, Func<DayPlace, HandMove> move, PlannedVisit? moved)
    {
        // Each place is laid and judged by itself, so the cores share them; the order stays.
        DayPlace[] places = [.. PlacesToTry(patient, care, moved)];
        return [.. places.AsParallel().AsOrdered().Select(place => Workable(place, move(place))).OfType<WorkablePlace>()];
    }

    private WorkablePlace? Workable(DayPlace place, HandMove move)
    {
        var laying = new Laying(_table, Delay.None);
        Laid laid = laying.Of(move);
        return !laying.IsHopeless && Try(move, laid) is { IsAllowed: true } change ? new WorkablePlace(place, change) : null;
    }

    private IEnumerable<DayPlace> PlacesToTry(string patient, ImmutableArray<CareTask> care, PlannedVisit? moved)
    {
        PatientHome home = _table.Patient(patient);
        for (int day = Math.Max(0, CompiledWeek.DayOf(Problem.Now)); day < Problem.DayCount; day++)
        {
            if (!OpensOn(care, day)) continue;
            foreach (Nurse nurse in Problem.Nurses.Where(n => n.Shifts.Any(s => s.Day == day && !s.OnCall)))
            {
                if (Scope.Fault(Problem, home, care, nurse, day) is not null) continue;
                ImmutableArray<PlannedVisit> there = [.. _table.Day(nurse.Id, day).Where(v => v.Id != moved?.Id)];
                int stands = moved is not null && moved.Nurse == nurse.Id && CompiledWeek.DayOf(moved.Start) == day ? there.Count(v => v.Start < moved.Start) : -1;
                bool joins = moved is null && there.Any(v => v.Patient == patient);
                for (int position = 0; position <= (joins ? 0 : there.Length); position++)
                {
                    if (position == stands || (position < there.Length && Behind(there[position]))) continue;
                    yield return new DayPlace(nurse.Id, day, position);
                }
            }
        }
    }

    private bool Behind(PlannedVisit visit) => visit.Start < Problem.Now;

    private static bool OpensOn(ImmutableArray<CareTask> care, int day)
    {
        int from = day * 1440, to = from + 1440;
        return care.All(t => t.Opens < to && t.HardLatest >= from && (t.StartSpans.IsDefaultOrEmpty || t.StartSpans.Any(s => s.To >= from && s.From < to)));
    }
}
