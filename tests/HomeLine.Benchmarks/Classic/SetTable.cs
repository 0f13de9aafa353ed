using System.Globalization;

namespace HomeLine.Benchmarks.Classic;

/// <summary>The rows of a run by class, as a table for a document.</summary>
internal static class SetTable
{
    /// <summary>Own limit for "at the best known value", in percent.</summary>
    private const double Same = 0.005;

    public static void Write(IReadOnlyList<RunRow> rows, TextWriter output)
    {
        output.WriteLine();
        output.WriteLine("| solver | class | runs | mean gap % | worst % | at best known | to the second value: mean %, above it | left out | not valid |");
        output.WriteLine("| --- | --- | --- | --- | --- | --- | --- | --- | --- |");
        foreach (IGrouping<string, RunRow> solver in rows.Where(row => row.Gap is not null).GroupBy(row => row.Solver))
        {
            foreach (IGrouping<string, RunRow> group in solver.GroupBy(row => row.Class).OrderBy(group => group.Key, StringComparer.Ordinal)) Line(output, solver.Key, group.Key, [.. group]);
            Line(output, solver.Key, "all", [.. solver]);
        }
    }

    private static void Line(TextWriter output, string solver, string name, RunRow[] rows)
    {
        RunRow[] valid = [.. rows.Where(row => row.Valid)];
        string mean = valid.Length == 0 ? "-" : valid.Average(row => row.Gap!.Value).ToString("0.000", CultureInfo.InvariantCulture);
        string worst = valid.Length == 0 ? "-" : valid.Max(row => row.Gap!.Value).ToString("0.00", CultureInfo.InvariantCulture);
        RunRow[] barred = [.. valid.Where(row => row.Bar is not null)];
        string bar = barred.Length == 0 ? "-" : string.Create(CultureInfo.InvariantCulture, $"{barred.Average(row => row.GapToBar!.Value):0.000}, {barred.Count(row => row.GapToBar > Same)}");
        output.WriteLine($"| {solver} | {name} | {rows.Length} | {mean} | {worst} | {valid.Count(row => row.Gap <= Same)} | {bar} | {valid.Sum(row => row.LeftOut)} | {rows.Length - valid.Length} |");
    }
}
