using HomeLine.Benchmarks.Classic;
using HomeLine.Benchmarks.Classic.Revealed;
using HomeLine.Planning.Routing;

namespace HomeLine.Planning.Tests.Routing.Published;

/// <summary>A day whose requests arrive while it goes on (the layout of Lackner 2004), with small days of our own.</summary>
public sealed class RevealedDayTests
{
    [Fact]
    public void Nobody_sets_out_for_a_request_before_it_has_arrived()
    {
        for (int seed = 1; seed <= 20; seed++)
        {
            RevealedDay day = Invented(seed, late: 60);
            Assert.Empty(RevealedCheck.Judge(day, Lived(day)).Faults);
        }
    }

    [Fact]
    public void What_is_done_before_a_request_arrives_does_not_depend_on_it()
    {
        RevealedDay day = Invented(7, late: 60), other = day with { Nodes = [.. day.Nodes.Select((node, i) => day.Known[i] >= 60 ? node with { X = 90 - node.X, Demand = 3 } : node)] };

        Assert.Equal(SetOutBefore(60, Lived(day)), SetOutBefore(60, Lived(other)));
    }

    [Fact]
    public void A_request_that_arrives_too_late_is_refused_and_the_rest_is_served()
    {
        RevealedDay day = new([Node(0, 0, 0, 200), Node(10, 0, 0, 100), Node(90, 0, 0, 60)], 2, 10, [-1, -1, 50], Distance.Exact);

        Assert.Equal([1], Lived(day).SelectMany(route => route.Stops).Select(stop => stop.Node));
    }

    [Fact]
    public void The_checker_finds_who_set_out_too_early()
    {
        RevealedDay day = new([Node(0, 0, 0, 200), Node(10, 0, 0, 100)], 1, 10, [-1, 20], Distance.Exact);

        Assert.Contains("request 1: left for at 5, known from 20", RevealedCheck.Judge(day, [new DrivenRoute([(1, 5)])]).Faults);
    }

    private static IReadOnlyList<DrivenRoute> Lived(RevealedDay day) => new RevealedReplay(day).Live(_ => new IterationBudget(640), new RoutingOptions { FirstPolish = 2 });

    private static string SetOutBefore(double moment, IReadOnlyList<DrivenRoute> routes) =>
        string.Join(" | ", routes.Select(route => string.Join(' ', route.Stops.Where(stop => stop.Left < moment).Select(stop => stop.Node))).Where(stops => stops.Length > 0).Order(StringComparer.Ordinal));

    private static RevealedDay Invented(int seed, double late)
    {
        var chance = new Chance((ulong)seed);
        PlaneNode[] nodes = [Node(30, 30, 0, 400), .. Enumerable.Range(0, 12).Select(i => Node(chance.Next(60), chance.Next(60), i < 8 ? chance.Next(100) : (int)late + 60, 300))];
        return new RevealedDay(nodes, 5, 8, [-1, .. Enumerable.Range(0, 12).Select(i => i < 6 ? -1.0 : i < 8 ? 20 : late + i)], Distance.Exact);
    }

    private static PlaneNode Node(double x, double y, double opens, double closes) => new(x, y, 1, opens, closes, 5);
}
