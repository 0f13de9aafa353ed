using System.Collections.Immutable;
using HomeLine.Planning.Plans;
using HomeLine.Planning.Problem;
using HomeLine.Planning.Search;

namespace HomeLine.Planning.Explaining;

/// <summary>The list of unmet tasks with reasons and relaxations, most at risk first.</summary>
internal static class UnmetCare
{
    /// <summary>Relaxations are looked for only for this many of the most endangered units: each takes a few trials.</summary>
    private const int Relaxed = 20;

    private static readonly ImmutableArray<PlanningReason> Stopped =
    [
        new(ReasonCode.SearchStopped, "Planning was stopped before a place for this care was looked for to the end.", "Plan again, or place it by hand."),
    ];

    /// <param name="week">The problem.</param>
    /// <param name="search">Tools of the search.</param>
    /// <param name="state">The finished plan.</param>
    /// <param name="visits">Its visits.</param>
    /// <param name="only">Only these tasks; empty for all that are unmet.</param>
    /// <param name="cancel">Once it asks to stop, no more reasons and relaxations are looked for.</param>
    public static ImmutableArray<UnmetTask> List(
        CompiledWeek week, WeekSearch search, WeekState state, ImmutableArray<PlannedVisit> visits, IReadOnlySet<string>? only = null, CancellationToken cancel = default)
    {
        var why = new WhyUnmet(week, search);
        int[] units =
        [
            .. Enumerable.Range(0, week.Units.Count).Where(u => state.UnitSlot[u] < 0 && (only is null || week.Units.Tasks[u].Any(t => only.Contains(week.Problem.Tasks[t].Id))))
                .OrderByDescending(u => week.Units.Tasks[u].Any(t => week.Tasks.Critical[t]))
                .ThenByDescending(u => week.Units.Tasks[u].Sum(t => week.Tasks.UnmetPoints[t])).ThenBy(u => u),
        ];
        CareTask[][] care = [.. units.Select(u => week.Units.Tasks[u].Select(t => week.Problem.Tasks[t]).ToArray())];
        ImmutableArray<PlanningReason>[] reasons = [.. units.Select(u => cancel.IsCancellationRequested ? Stopped : why.Reasons(state, u))];

        // Each is tried around a part of the plan of its own, so the cores share them; the order stays.
        ImmutableArray<Relaxation>[] relaxations =
        [
            .. care.Take(Relaxed).AsParallel().AsOrdered().Select(c => cancel.IsCancellationRequested ? [] : Relaxations(week, visits, c, cancel)),
        ];
        return [.. units.SelectMany((_, i) => care[i].Select(t => new UnmetTask(t.Id, reasons[i], i < relaxations.Length && reasons[i] != Stopped ? relaxations[i] : [])))];
    }

    private static ImmutableArray<Relaxation> Relaxations(CompiledWeek week, ImmutableArray<PlannedVisit> visits, CareTask[] care, CancellationToken cancel)
    {
        PatientHome patient = week.Problem.Patients[week.PatientIndex[care[0].Patient]];
        var ids = care.Select(t => t.Id).ToHashSet(StringComparer.Ordinal);
        (WeekProblem part, ImmutableArray<PlannedVisit> kept) = Surroundings.Of(week.Problem, visits, patient, ids);
        return new WhatWouldPlaceIt(part, kept, cancel).For(care);
    }
}
