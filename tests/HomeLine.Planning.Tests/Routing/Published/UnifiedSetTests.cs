using HomeLine.Benchmarks.Classic;
using HomeLine.Benchmarks.Classic.Unified;
using HomeLine.Planning.Routing;
using HomeLine.Planning.Routing.Shifts;

namespace HomeLine.Planning.Tests.Routing.Published;

/// <summary>
/// The unified home-care format (Ceschia, Da Ros, Di Gaspero, Mancini, Maniezzo, Montemanni, Rosati and Schaerf, International Transactions in Operational Research 2026):
/// a small day of our own with everything in it, and the published solutions where the files are at hand.
/// </summary>
public sealed class UnifiedSetTests
{
    // Places lie on a line, ten minutes apart.
    private const string Own = """
        {
          "metadata": { "time_window_met": "at_service_end", "origin": "generated", "cost_components": {
            "travel_time": 2, "total_tardiness": 3, "highest_tardiness": 5, "total_waiting_time": 4, "total_extra_time": 6, "max_idle_time": 7,
            "caregiver_preferences": 11, "optional_patients": 90, "missed_lunch_break": 60, "workload_balance": 1 } },
          "distances": [[0,10,20,30,40],[10,0,10,20,30],[20,10,0,10,20],[30,20,10,0,10],[40,30,20,10,0]],
          "terminal_points": [{ "id": "base", "distance_matrix_index": 0 }, { "id": "home", "distance_matrix_index": 4 }],
          "lunch_breaks": { "start": 100, "end": 170, "min_duration": 20 },
          "caregivers": [
            { "id": "a", "abilities": ["s1", "s2"], "departing_point": "base", "arrival_point": "base", "working_shift": { "start": 0, "end": 300 }, "lunch_break": true },
            { "id": "b", "abilities": ["s2", "s3"], "departing_point": "home", "arrival_point": "base", "working_shift": { "start": 30, "end": 260 }, "lunch_break": true },
            { "id": "c", "abilities": ["s1", "s3"], "departing_point": "base", "working_shift": { "start": 0, "end": 200 } }],
          "patients": [
            { "id": "p1", "required_services": [{ "service": "s1", "duration": 20 }], "distance_matrix_index": 1, "time_windows": [{ "start": 20, "end": 60 }, { "start": 150, "end": 200 }] },
            { "id": "p2", "required_services": [{ "service": "s2", "duration": 15 }, { "service": "s3", "duration": 25 }], "distance_matrix_index": 2, "time_windows": [{ "start": 50.0, "end": 120.0 }], "synchronization": { "type": "simultaneous" } },
            { "id": "p3", "required_services": [{ "service": "s1", "duration": 30 }, { "service": "s2", "duration": 10 }], "distance_matrix_index": 3, "time_windows": [{ "start": 80, "end": 180 }], "synchronization": { "type": "independent" }, "preferred_caregivers": ["b"] },
            { "id": "p4", "required_services": [{ "service": "s3", "duration": 25 }], "distance_matrix_index": 4, "time_windows": [{ "start": 10, "end": 40 }, { "start": 200, "end": 240 }], "incompatible_caregivers": ["c"], "optional": true },
            { "id": "p5", "required_services": [{ "service": "s1", "duration": 10 }, { "service": "s3", "duration": 10 }], "distance_matrix_index": 1, "time_windows": [{ "start": 120, "end": 170 }], "synchronization": { "type": "sequential", "distance": { "min": 10, "max": 30 } } }]
        }
        """;

    [Theory]
    [InlineData(true, false)]
    [InlineData(false, false)]
    [InlineData(true, true)]
    [InlineData(false, true)]
    public void What_the_search_says_a_day_costs_is_what_the_checker_finds(bool boundTheEnd, bool leaveWithTheShift)
    {
        UnifiedDay day = UnifiedFile.Read("own", Own) with { BoundTheEnd = boundTheEnd, LeaveWithTheShift = leaveWithTheShift };
        var model = new UnifiedModel(day);
        for (ulong seed = 1; seed <= 40; seed++)
        {
            ShiftPlan plan = new ShiftSearch(model.Problem, seed).Run(new IterationBudget((long)(100 * seed)), TestContext.Current.CancellationToken);
            Verdict verdict = UnifiedCheck.Judge(day, model.Rows(plan));
            Assert.Empty(verdict.Faults);
            Assert.Equal(plan.Cost, verdict.Cost, 1e-6);
        }
    }

    [Fact]
    public void A_wrong_row_is_found()
    {
        UnifiedDay day = UnifiedFile.Read("own", Own);
        var model = new UnifiedModel(day);
        IReadOnlyList<UnifiedRow> rows = model.Rows(new ShiftSearch(model.Problem, 1).Run(new IterationBudget(5_000), TestContext.Current.CancellationToken));

        Assert.Contains(UnifiedCheck.Judge(day, [.. rows.Skip(1)]).Faults, fault => fault.Contains("given 0 times", StringComparison.Ordinal) || fault.Contains("left out", StringComparison.Ordinal));
        Assert.Contains(UnifiedCheck.Judge(day, [.. rows.Select(row => row with { Person = "a" })]).Faults, fault => fault.StartsWith("a may not give s3", StringComparison.Ordinal));
        Assert.Contains(UnifiedCheck.Judge(day, [.. rows.Select(row => row.Patient == "p2" && row.Service == "s3" ? row with { Start = row.Start + 1, End = row.End + 1 } : row)]).Faults, fault => fault.StartsWith("p2: 1 between", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("{", "not a unified")]
    [InlineData("""{"metadata":{"cost_components":{}},"distances":[[0,1]],"terminal_points":[]}""", "not a square")]
    [InlineData("""{"metadata":{"cost_components":{"travel_time":0.5}},"distances":[[0]],"terminal_points":[]}""", "travel_time: 0.5 is not a whole number")]
    public void A_broken_file_is_refused_in_words(string text, string words) =>
        Assert.Contains(words, Assert.Throws<UnreadableFileException>(() => UnifiedFile.Read("broken", text)).Message, StringComparison.Ordinal);

    [Fact]
    public void Every_published_solution_costs_what_its_authors_say()
    {
        string? folder = PublishedFolder.Of("hhc-unified");
        Assert.SkipUnless(folder is not null, PublishedFolder.Absent);
        foreach ((string name, double stated) in PublishedFolder.Stated(folder))
        {
            UnifiedDay day = UnifiedFile.Read(name, File.ReadAllText(Path.Combine(folder, name + ".json")));
            Verdict verdict = UnifiedCheck.Judge(day, UnifiedFile.Solution(File.ReadAllText(Path.Combine(folder, name + ".sol.json"))));
            Assert.Empty(verdict.Faults);
            Assert.Equal(stated, verdict.Cost, 1e-6);
        }
    }
}
