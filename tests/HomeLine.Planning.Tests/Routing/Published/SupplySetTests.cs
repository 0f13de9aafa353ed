using HomeLine.Benchmarks.Classic;
using HomeLine.Benchmarks.Classic.Supplies;

namespace HomeLine.Planning.Tests.Routing.Published;

/// <summary>
/// People who start from home with skills, tools and parts (Pillac, Gueret and Medaglia, Optimization Letters 7, 2013; from memory): a small day of our own, and the
/// published solutions where the files are at hand.
/// </summary>
public sealed class SupplySetTests
{
    private const string Own = """
        own

        CREW COUNT  SKILLS  TOOLS   SPARE PARTS
        1           2       2       2

        0    0     10    0      100    0      [] 	[] 	[]
        1    0     0     0      100    0      [0,1] 	[1] 	[1,0]
        2    10    0     0      90     5      [1] 	[1] 	[1,0]
        3    20    0     30     90     5      [0] 	[] 	[1,0]
        """;

    [Fact]
    public void A_part_that_has_run_out_needs_a_visit_to_the_depot_before()
    {
        SupplyDay day = SupplyFile.Read("own", Own);

        Assert.Contains("person 1 has no part 0 left for 3", SupplyCheck.Judge(day, [(1, [2, 3])]).Faults);
        Assert.Empty(SupplyCheck.Judge(day, [(1, [0, 2, 3])]).Faults);
        Assert.Contains("request 3 is made 0 times", SupplyCheck.Judge(day, [(1, [2])]).Faults);
    }

    [Fact]
    public void A_day_lasts_from_the_latest_departure_to_the_earliest_return()
    {
        SupplyDay day = SupplyFile.Read("own", Own);

        // Ten to the depot, 14.14 to the first, five there, ten to the second, which opens at 30 but is reached later; five there, twenty home.
        Assert.Equal(10 + Math.Sqrt(200) + 5 + 10 + 5 + 20, SupplyCheck.Judge(day, [(1, [0, 2, 3])]).Cost, 1e-9);
        Assert.Equal(20 + 5 + 20, SupplyCheck.Judge(day, [(1, [3])]).Cost, 1e-9);
    }

    [Fact]
    public void A_broken_file_is_refused_in_words() =>
        Assert.Contains("line 7: node 1 with six numbers expected", Assert.Throws<UnreadableFileException>(() => SupplyFile.Read("odd", Own.Replace("1    0     0  ", "1    0  ", StringComparison.Ordinal))).Message, StringComparison.Ordinal);

    [Fact]
    public void Every_published_solution_costs_what_its_authors_say()
    {
        string? folder = PublishedFolder.Of("trsp-pillac");
        Assert.SkipUnless(folder is not null, PublishedFolder.Absent);
        foreach ((string name, double stated) in PublishedFolder.Stated(folder))
        {
            SupplyDay day = SupplyFile.Read(name, File.ReadAllText(Path.Combine(folder, name + ".txt")));
            Verdict verdict = SupplyCheck.Judge(day, SupplyFile.Solution(day, File.ReadAllText(Path.Combine(folder, name + ".sol.txt"))));
            Assert.Empty(verdict.Faults);
            Assert.Equal(stated, verdict.Cost, 1e-3);
        }
    }
}
