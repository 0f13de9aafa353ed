using System.Collections.Immutable;
using HomeLine.Planning.Plans;

namespace HomeLine.Planning.Search;

/// <summary>
/// Writes a state as a plan. A visit keeps the identifier of the published visit of the same patient it shares most tasks with, so that people can follow
/// it from plan to plan; a new one is called after its first task.
/// </summary>
internal sealed class PlanWriting(CompiledWeek week)
{
    public ImmutableArray<PlannedVisit> Visits(WeekState state)
    {
        int[] starts = Starts(state);
        List<PlannedVisit> drafts =
        [
            .. Enumerable.Range(0, state.Trial).Where(s => state.RouteA[s] >= 0).Select(s => Draft(state, s, starts[s]))
                .OrderBy(v => v.Start).ThenBy(v => v.Nurse, StringComparer.Ordinal).ThenBy(v => v.Patient, StringComparer.Ordinal),
        ];
        KeepNames(drafts);
        return [.. drafts];
    }

    /// <summary>By slot: the starts as written, with no more waiting than has to be.</summary>
    private int[] Starts(WeekState state)
    {
        int[] starts = [.. state.Start];
        var timing = new RouteTiming(week, new SlotCare(week), state.Width);
        for (int route = 0; route < week.Routes.Count; route++)
        {
            timing.Load(state, route);
            if (timing.Count == 0 || !timing.Walk(state, route)) continue;
            for (int i = 0; i < timing.Count; i++) starts[timing.Order[i]] = timing.Written[i];
        }

        return starts;
    }

    private PlannedVisit Draft(WeekState state, int slot, int start)
    {
        if (state.Fixed[slot]) return week.FixedVisits[state.FirstUnit[slot]];
        var tasks = new List<string>();
        for (int u = state.FirstUnit[slot]; u >= 0; u = state.UnitNext[u])
            tasks.AddRange(week.Units.Tasks[u].Select(t => week.Problem.Tasks[t].Id));
        return new PlannedVisit
        {
            Id = string.Empty,
            Patient = week.Problem.Patients[state.Patient[slot]].Id,
            Nurse = NurseOf(state.RouteA[slot]),
            Second = state.RouteB[slot] >= 0 ? NurseOf(state.RouteB[slot]) : null,
            Start = start,
            Minutes = state.Minutes[slot],
            Tasks = [.. tasks.Order(StringComparer.Ordinal)],
        };
    }

    private string NurseOf(int route) => week.Problem.Nurses[week.Routes.Nurse[route]].Id;

    private void KeepNames(List<PlannedVisit> drafts)
    {
        var was = (week.Problem.Published?.Visits ?? [])
            .Where(v => !v.Tasks.IsDefault)
            .ToLookup(v => v.Patient, StringComparer.Ordinal);
        var taken = drafts.Where(d => d.Id.Length > 0).Select(d => d.Id).ToHashSet(StringComparer.Ordinal);
        for (int i = 0; i < drafts.Count; i++)
        {
            PlannedVisit draft = drafts[i];
            if (draft.Id.Length > 0) continue;
            PlannedVisit? before = was[draft.Patient]
                .Where(v => !taken.Contains(v.Id) && v.Tasks.Any(draft.Tasks.Contains))
                .OrderByDescending(v => v.Tasks.Count(draft.Tasks.Contains)).ThenBy(v => v.Start)
                .FirstOrDefault();
            drafts[i] = before is null ? draft with { Id = NewName(draft, taken) } : Renamed(draft, before);
            taken.Add(drafts[i].Id);
        }
    }

    /// <summary>An unchanged visit keeps its promise; a changed one keeps what the family was told, so that the change can be seen.</summary>
    private static PlannedVisit Renamed(PlannedVisit draft, PlannedVisit before)
    {
        bool same = draft.Nurse == before.Nurse && draft.Second == before.Second && draft.Start == before.Start
            && draft.Tasks.Order(StringComparer.Ordinal).SequenceEqual(before.Tasks.Order(StringComparer.Ordinal));
        return draft with { Id = before.Id, Promise = same ? before.Promise : PromiseState.Draft, ToldFrom = before.ToldFrom };
    }

    private string NewName(PlannedVisit draft, HashSet<string> taken)
    {
        string name = "visit " + draft.Tasks[0];
        var published = (week.Problem.Published?.Visits ?? []).Select(v => v.Id).ToHashSet(StringComparer.Ordinal);
        for (int n = 2; taken.Contains(name) || published.Contains(name); n++) name = $"visit {draft.Tasks[0]} ({n})";
        return name;
    }
}
