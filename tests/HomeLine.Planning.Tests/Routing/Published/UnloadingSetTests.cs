using HomeLine.Benchmarks.Classic;
using HomeLine.Benchmarks.Classic.Unloading;

namespace HomeLine.Planning.Tests.Routing.Published;

/// <summary>The periodic problem with places for unloading on road minutes (Taverna and Tilk, instances with their own solutions): reader and checker.</summary>
public sealed class UnloadingSetTests
{
    private const string Own = """
        {
          "info": { "numVehicles": 1, "maxDuration": 60, "maxCapacity": 10, "planningHorizon": 2 },
          "features": [
            { "properties": { "type": "depot", "frequency": 0.0, "demand": 0.0, "service": 0.0 } },
            { "properties": { "type": "customer", "frequency": 2.0, "demand": 6.0, "service": 5.0 } },
            { "properties": { "type": "customer", "frequency": 1.0, "demand": 6.0, "service": 5.0 } },
            { "properties": { "type": "intermediateFacility", "frequency": 0.0, "demand": 0.0, "service": 0.0 } }],
          "duration": [[0,10,8,2],[11,0,5,9],[8,5,0,7],[3,9,7,0]]
        }
        """;

    [Fact]
    public void A_round_unloads_before_it_is_too_full_and_before_it_comes_home()
    {
        UnloadingWeek week = UnloadingFile.Read("own", Own);

        Verdict good = UnloadingCheck.Judge(week, [(0, [0, 1, 3, 2, 3, 0]), (1, [0, 1, 3, 0])]);
        Assert.Empty(good.Faults);
        Assert.Equal(10 + 9 + 7 + 7 + 3 + (10 + 9 + 3), good.Cost);
        Assert.Contains("day 0: load 12 at node 2, 10 allowed", UnloadingCheck.Judge(week, [(0, [0, 1, 2, 3, 0]), (1, [0, 1, 3, 0])]).Faults);
        Assert.Contains("day 1: a round comes home with 6 not unloaded", UnloadingCheck.Judge(week, [(0, [0, 1, 3, 2, 3, 0]), (1, [0, 1, 0])]).Faults);
        Assert.Contains("node 1: its days are none of the schemes for 2 visits", UnloadingCheck.Judge(week, [(0, [0, 1, 3, 2, 3, 0])]).Faults);
    }

    [Fact]
    public void Days_of_a_frequency_are_evenly_spread()
    {
        UnloadingWeek six = UnloadingFile.Read("own", Own.Replace("\"planningHorizon\": 2", "\"planningHorizon\": 6", StringComparison.Ordinal));

        Assert.Equal([0b001001, 0b010010, 0b100100], six.Schemes(2));
        Assert.Equal([0b010101, 0b101010], six.Schemes(3));
        Assert.Equal(6, six.Schemes(1).Count);
        Assert.Contains("node 1: 2 visits cannot be spread evenly over 3 days", Assert.Throws<UnreadableFileException>(() => UnloadingFile.Read("odd", Own.Replace("\"planningHorizon\": 2", "\"planningHorizon\": 3", StringComparison.Ordinal))).Message, StringComparison.Ordinal);
    }

    /// <summary>The list says of Torino_040_4_1 that the stored rounds cost 612 and not the 609 of the authors' table; the others are as stated.</summary>
    [Fact]
    public void Every_published_solution_costs_what_its_authors_say()
    {
        string? folder = PublishedFolder.Of("pvrp-if");
        Assert.SkipUnless(folder is not null, PublishedFolder.Absent);
        foreach ((string name, double stated) in PublishedFolder.Stated(folder))
        {
            UnloadingWeek week = UnloadingFile.Read(name, File.ReadAllText(Path.Combine(folder, name + ".geojson")));
            Verdict verdict = UnloadingCheck.Judge(week, UnloadingFile.Solution(File.ReadAllText(Path.Combine(folder, name + ".sol.txt"))));
            Assert.Empty(verdict.Faults);
            Assert.Equal(name == "Torino_040_4_1" ? 612 : stated, verdict.Cost);
        }
    }
}
