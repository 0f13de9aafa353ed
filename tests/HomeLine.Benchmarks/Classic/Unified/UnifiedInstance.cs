using HomeLine.Planning.Routing.Shifts;

namespace HomeLine.Benchmarks.Classic.Unified;

/// <summary>A day of the unified home-care set, ready to be solved.</summary>
internal sealed record UnifiedInstance(UnifiedDay Day) : Instance(Day.Name, "unified")
{
    public override IReadOnlyList<string> Conventions => ["hhc-unified"];

    /// <summary>The letter of the older files, or the number of patients.</summary>
    public override string Class => Day.LeaveWithTheShift ? $"waiting and balance, {Day.Patients.Count} patients" : "shifts, overtime, lunch";

    public override Solved Solve(Wanted wanted)
    {
        var model = new UnifiedModel(Day);
        try
        {
            (ShiftPlan plan, long iterations) = new Islands<ShiftPlan>(wanted).Best(
                (seed, budget) =>
                {
                    var search = new ShiftSearch(model.Problem, seed);
                    search = new ShiftSearch(model.Problem, seed)
                    {
                        FirstTemperature = wanted.Tuning.First ?? search.FirstTemperature,
                        LastTemperature = wanted.Tuning.Last ?? search.LastTemperature,
                    };
                    return (search.Run(budget), search.Iterations);
                },
                plan => plan.Cost);
            return Judged(plan, model.Rows(plan), iterations);
        }
        catch (ArgumentException fault)
        {
            throw new UnreadableFileException($"{Name}: {fault.Message}", fault);
        }
    }

    public override Verdict? Published(string path)
    {
        string solution = Path.ChangeExtension(path, ".sol.json");
        return File.Exists(solution) ? UnifiedCheck.Judge(Day, UnifiedFile.Solution(AnyFile.Text(solution))) : null;
    }

    private Solved Judged(ShiftPlan plan, IReadOnlyList<UnifiedRow> rows, long iterations) => new(
        UnifiedCheck.Judge(Day, rows),
        [.. Day.People.Select(person => new NamedRoute(person.Id, [.. rows.Where(row => row.Person == person.Id).OrderBy(row => row.Start).Select(row => $"{row.Patient}:{row.Service}@{row.Start:0}")])).Where(route => route.Stops.Count > 0)],
        [.. plan.LeftOut.Select(patient => Day.Patients[patient].Id)],
        iterations);
}
