namespace HomeLine.Benchmarks.Classic;

/// <summary>What an independent checker found about a solution.</summary>
/// <param name="Cost">The set's own objective, computed from the file.</param>
/// <param name="Faults">Broken rules, none when the solution is valid.</param>
/// <param name="Convention">How distances, times and cost were computed.</param>
internal sealed record Verdict(double Cost, IReadOnlyList<string> Faults, string Convention);
