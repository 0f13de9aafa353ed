using System.Collections.Immutable;
using HomeLine.Planning.Answers;
using HomeLine.Planning.Checking;
using HomeLine.Planning.Explaining;
using HomeLine.Planning.Plans;
using HomeLine.Planning.Problem;
using HomeLine.Planning.Search;
using HomeLine.Planning.Standing;

namespace HomeLine.Planning.Mending;

/// <summary>Writes a repaired plan out, has it checked, and lists whom it concerns.</summary>
internal sealed class MendReport(StandingTable table, BrokenDay day, WeekProblem before, WeekPlan published)
{
    private readonly WeekProblem _problem = day.Problem;
    private int[] _merged = [];
    private bool _anyMerged;

    /// <summary>Looked up only where the repaired plan has findings at all.</summary>
    private readonly Lazy<HashSet<(string Rule, string? Visit, string Code)>> _known =
        new(() => [.. Checker.Check(before, published).Findings.Select(f => (f.Rule, f.Visit, f.Reason.Code))]);

    public MendedWeek Of(MendSearch search, MendState state, bool reasons, CancellationToken cancel)
    {
        _merged = [.. state.Standing.MergedInto[..table.Visits.Length]];
        _anyMerged = _merged.Any(m => m >= 0);
        PlannedVisit?[] after = [.. Enumerable.Range(0, table.Visits.Length).Select(v => Then(state.Standing, v))];
        CheckReport check = Checked(search, state.Standing, after, out WeekPlan plan, cancel);
        plan = plan with { Score = check.Score, Unmet = reasons ? Explained(_problem, published, plan, cancel) : plan.Unmet };
        int[] moved = [.. Enumerable.Range(0, after.Length).Where(v => after[v] is { } then && Felt(v, then))];
        int[] called = [.. Enumerable.Range(0, after.Length).Where(v => table.Visits[v].Told && NeedsCall(v, after[v]))];
        PlanScore s = check.Score;
        return new MendedWeek(
            plan,
            new SameDayScore(s.Critical, s.Risk, s.Duties, search.DisruptionOf(state), s.Work, s.People, s.UnusedLife),
            [.. search.Broken.Select(v => new BrokenVisit(Was(v), WhyBroken(v, after[v])))],
            [.. moved.Select(v => new MovedVisit(Was(v), after[v]!, after[v]!.Start - Was(v).Start))],
            [.. Urgency.Order(table, called).OrderBy(v => By(v, after) is not null).Select(v => new FamilyCall(Was(v).Patient, Was(v), By(v, after), WhatToTell(v, after)))],
            NursesOf(after),
            New(check));
    }

    /// <summary>As it was published, before any minutes were added.</summary>
    private PlannedVisit Was(int visit) => published.Visits.First(v => v.Id == table.Visits[visit].Was.Id);

    /// <summary>The visit that does a visit's care: itself, the one it joined, or none.</summary>
    private PlannedVisit? By(int v, PlannedVisit?[] after) => _merged[v] >= 0 ? after[_merged[v]] : after[v];

    private PlannedVisit? Then(StandingState state, int v)
    {
        StandingVisit visit = table.Visits[v];
        if (state.Nurse[v] < 0) return null;
        int[] joined = _anyMerged ? [.. table.OfPatient[visit.Patient].Where(m => _merged[m] == v)] : [];
        if (joined.Length > 0)
        {
            return visit.Was with
            {
                Nurse = _problem.Nurses[state.Nurse[v]].Id,
                Start = state.Start[v],
                Minutes = Merging.Minutes(table, state, v),
                Tasks = [.. visit.Was.Tasks.Concat(joined.SelectMany(m => table.Visits[m].Was.Tasks)).Order(StringComparer.Ordinal)],
            };
        }

        bool same = state.Nurse[v] == visit.WasNurse && state.Second[v] == visit.WasSecond && state.Start[v] == visit.Was.Start;
        return same ? visit.Was : visit.Was with
        {
            Nurse = _problem.Nurses[state.Nurse[v]].Id,
            Second = state.Second[v] < 0 ? null : _problem.Nurses[state.Second[v]].Id,
            Start = state.Start[v],
            Minutes = state.Minutes[v],
        };
    }

    /// <summary>
    /// What the checker will not have is left unmet rather than promised: one visit at a time, which may save the next; all of them at once when it shall stop.
    /// Ends, for each turn leaves a changed visit without what joined it or without a visit.
    /// </summary>
    private CheckReport Checked(MendSearch search, StandingState state, PlannedVisit?[] after, out WeekPlan plan, CancellationToken cancel)
    {
        while (true)
        {
            plan = PlanOf(after);
            CheckReport check = Checker.Check(_problem, plan, day.Changes);
            int[] refused = [.. New(check).Where(f => !Unavoidable(search, f)).Select(f => Refused(f, after)).Where(v => v >= 0).Distinct()];
            if (refused.Length == 0) return check;
            foreach (int visit in cancel.IsCancellationRequested ? refused : refused[..1]) after[visit] = Parted(state, visit);
        }
    }

    /// <summary>A refused visit without the care that joined it; nothing when none had.</summary>
    private PlannedVisit? Parted(StandingState state, int visit)
    {
        int[] joined = [.. Enumerable.Range(0, _merged.Length).Where(m => _merged[m] == visit)];
        if (joined.Length == 0) return null;
        foreach (int mate in joined) _merged[mate] = state.MergedInto[mate] = -1;
        state.Minutes[visit] = Merging.Minutes(table, state, visit);
        return Then(state, visit);
    }

    /// <summary>A break that the overrun itself has eaten: leaving somebody without a visit would not bring it back.</summary>
    private static bool Unavoidable(MendSearch search, Finding finding) =>
        finding is { Visit: null, Nurse: { } nurse, Reason.Code: ReasonCode.BreakMissing } && search.BreakGone(nurse);

    /// <summary>The changed visit a finding is about, or a changed visit of the nurse-day it is about; -1 when neither has changed.</summary>
    private int Refused(Finding finding, PlannedVisit?[] after)
    {
        for (int v = after.Length - 1; v >= 0; v--)
        {
            bool about = finding.Visit is { } id ? table.Visits[v].Was.Id == id : after[v] is { } then && finding.Nurse is { } n && (then.Nurse == n || then.Second == n);
            if (about && after[v] is not null && after[v] != table.Visits[v].Was) return v;
        }

        return -1;
    }

    private ImmutableArray<Finding> New(CheckReport check) =>
        [.. check.Findings.Where(f => !_known.Value.Contains((f.Rule, f.Visit, f.Reason.Code)))];

    private WeekPlan PlanOf(PlannedVisit?[] after)
    {
        ImmutableArray<PlannedVisit> visits = [.. after.OfType<PlannedVisit>().OrderBy(v => v.Start).ThenBy(v => v.Nurse, StringComparer.Ordinal)];
        var done = visits.SelectMany(v => v.Tasks).ToHashSet(StringComparer.Ordinal);
        return new WeekPlan(visits, [.. _problem.Tasks.Where(t => !done.Contains(t.Id)).Select(t => new UnmetTask(t.Id, [], []))], default);
    }

    /// <summary>Reasons and relaxations for care that has lost its visit; care that was unmet before keeps those it had.</summary>
    /// <param name="problem">The problem with the troubles worked in.</param>
    /// <param name="published">What was published.</param>
    /// <param name="plan">The repaired plan.</param>
    /// <param name="cancel">Once it asks to stop, care that lost its visit is named without reasons.</param>
    public static ImmutableArray<UnmetTask> Explained(WeekProblem problem, WeekPlan published, WeekPlan plan, CancellationToken cancel)
    {
        if (plan.Unmet.IsEmpty) return [];
        var known = (published.Unmet.IsDefault ? [] : published.Unmet).ToDictionary(u => u.Task, StringComparer.Ordinal);
        var planned = published.Visits.SelectMany(v => v.Tasks).ToHashSet(StringComparer.Ordinal);
        var lost = plan.Unmet.Select(u => u.Task).Where(planned.Contains).ToHashSet(StringComparer.Ordinal);
        if (lost.Count == 0 || cancel.IsCancellationRequested) return [.. plan.Unmet.Select(u => known.GetValueOrDefault(u.Task, u))];
        var week = new CompiledWeek(problem);
        var search = new WeekSearch(week);
        WeekState state = search.Reading.Fresh();
        search.Reading.Adopt(state, plan);
        var found = UnmetCare.List(week, search, state, plan.Visits, lost, cancel).ToDictionary(u => u.Task, StringComparer.Ordinal);
        return [.. plan.Unmet.Select(u => found.GetValueOrDefault(u.Task) ?? known.GetValueOrDefault(u.Task, u))];
    }

    private bool Felt(int v, PlannedVisit then) => DisruptionPrice.Felt(
        table.Visits[v], table.NurseIndex[then.Nurse], then.Second is null ? -1 : table.NurseIndex[then.Second], then.Start);

    private bool NeedsCall(int v, PlannedVisit? then) =>
        then is null || Felt(v, then) || Math.Abs(then.Start - table.Visits[v].Was.Start) > _problem.Rules.CourtesyCallMinutes;

    private ImmutableArray<string> NursesOf(PlannedVisit?[] after)
    {
        var nurses = new SortedSet<string>(StringComparer.Ordinal);
        for (int v = 0; v < after.Length; v++)
        {
            PlannedVisit was = table.Visits[v].Was;
            if (after[v] == was) continue;
            foreach (string? nurse in new[] { was.Nurse, was.Second, after[v]?.Nurse, after[v]?.Second })
            {
                if (nurse is not null) nurses.Add(nurse);
            }
        }

        return [.. nurses];
    }

    private PlanningReason WhyBroken(int v, PlannedVisit? then)
    {
        StandingVisit visit = table.Visits[v];
        string who = visit.Home.Name, at = PlanClock.Say(_problem.FirstDay, visit.Was.Start), nurse = _problem.Nurses[visit.WasNurse].Name;
        if (day.IsOut(visit.Was.Id))
            return new PlanningReason(ReasonCode.NurseOut, $"{nurse} cannot be at {who} on {at}.", "See who takes it.");
        bool stays = then is not null && then.Nurse == visit.Was.Nurse && CompiledWeek.DayOf(then.Start) == CompiledWeek.DayOf(visit.Was.Start);
        return stays
            ? new PlanningReason(ReasonCode.PushedLater, $"{nurse} reaches {who} at {PlanClock.Time(then!.Start)} instead of {PlanClock.Time(visit.Was.Start)}.", "Call if it leaves the range.")
            : new PlanningReason(ReasonCode.PushedOut, $"{nurse} can no longer be at {who} on {at}.", "See where it goes.");
    }

    private PlanningReason WhatToTell(int v, PlannedVisit?[] after)
    {
        PlannedVisit was = table.Visits[v].Was;
        PlannedVisit? then = after[v];
        if (_merged[v] >= 0 && after[_merged[v]] is { } joined)
        {
            return new PlanningReason(ReasonCode.TellJoined,
                $"What was planned for {PlanClock.Say(_problem.FirstDay, was.Start)} is done with the visit on {PlanClock.Say(_problem.FirstDay, joined.Start)}.",
                "Call: one visit less, and the other takes longer.");
        }

        if (then is null)
        {
            return new PlanningReason(ReasonCode.TellNobody,
                $"Nobody can come on {PlanClock.Say(_problem.FirstDay, was.Start)}; somebody will call about what to do.",
                "A licensed person decides what happens until then.");
        }

        string when = PlanClock.Say(_problem.FirstDay, then.Start), nurse = _problem.Nurses[table.NurseIndex[then.Nurse]].Name;
        if (CompiledWeek.DayOf(then.Start) != CompiledWeek.DayOf(was.Start))
            return new PlanningReason(ReasonCode.TellOtherDay, $"{nurse} comes on {when}.", "Call, and read the agency's wording for the time until then.");
        if (then.Nurse != was.Nurse || then.Second != was.Second)
            return new PlanningReason(ReasonCode.TellOtherNurse, $"{nurse} comes, on {when}.", "Call and say the name.");
        return Felt(v, then)
            ? new PlanningReason(ReasonCode.TellOtherTime, $"The visit is on {when}.", "Call before the promised time.")
            : new PlanningReason(ReasonCode.TellLaterInRange, $"The visit is on {when}, late in the promised range.", "A short call is kind.");
    }
}
