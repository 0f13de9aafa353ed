using System.Collections.Immutable;
using System.Globalization;
using HomeLine.Planning.Routing;

namespace HomeLine.Planning.Tests.Routing;

/// <summary>
/// Published instances with 100 customers (M. M. Solomon, Operations Research 35, 1987) whose best distances are proven (CVRPLIB; legs truncated to one
/// decimal): reached within a fixed number of iterations. Skipped where the files are not at hand: HOMELINE_BENCHMARK_DATA names their folder.
/// </summary>
public sealed class PublishedSetTests
{
    [Theory]
    [InlineData("C101", 8273)]
    [InlineData("C206", 5860)]
    [InlineData("R101", 16377)]
    [InlineData("RC101", 16198)]
    public void An_easy_instance_reaches_the_best_known_distance(string name, long tenths)
    {
        string? path = Find(name);
        Assert.SkipUnless(path is not null, "The published instances are not here; HOMELINE_BENCHMARK_DATA can name their folder.");
        RoutingProblem problem = Read(path);

        RoutingPlan plan = new RoutingSearch(problem, new RoutingOptions()).Run(new IterationBudget(300_000), cancel: TestContext.Current.CancellationToken);

        Assert.Empty(RoutingCheck.Judge(problem, plan).Faults);
        Assert.Equal(tenths, RoutingCheck.Judge(problem, plan).Cost);
    }

    private static string? Find(string name)
    {
        IEnumerable<string> folders = Environment.GetEnvironmentVariable("HOMELINE_BENCHMARK_DATA") is { Length: > 0 } named
            ? [named]
            : Above(AppContext.BaseDirectory).Select(folder => Path.Combine(folder, "shared", "data"));
        return folders.Select(folder => Path.Combine(folder, "solomon", name + ".txt")).FirstOrDefault(File.Exists);
    }

    private static IEnumerable<string> Above(string folder)
    {
        for (DirectoryInfo? at = new(folder); at is not null; at = at.Parent) yield return at.FullName;
    }

    // Node lines have seven numbers; "vehicles capacity" is the only line with two.
    private static RoutingProblem Read(string path)
    {
        int[][] rows = [.. File.ReadLines(path)
            .Select(line => line.Split(' ', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries))
            .Where(words => words.Length > 0 && words.All(word => int.TryParse(word, CultureInfo.InvariantCulture, out _)))
            .Select(words => words.Select(word => int.Parse(word, CultureInfo.InvariantCulture)).ToArray())];
        int[] fleet = rows.Single(row => row.Length == 2);
        int[][] nodes = [.. rows.Where(row => row.Length == 7)];
        int[] matrix = [.. from a in nodes from b in nodes select (int)(10 * Math.Sqrt(Math.Pow(a[1] - b[1], 2) + Math.Pow(a[2] - b[2], 2)))];
        ImmutableArray<RoutingRequest> requests = [.. nodes.Skip(1).Select((node, i) => new RoutingRequest(i + 1, node[3], 10 * node[6], 10 * node[4], 10 * node[5]))];
        return new RoutingProblem(nodes.Length, matrix, matrix, requests, [new VehicleKind(0, 0, 0, fleet[0], fleet[1], 10 * nodes[0][4], 10 * nodes[0][5])]);
    }
}
