using HomeLine.Planning.Problem;
using HomeLine.Planning.Reserve;

namespace HomeLine.Planning.Tests.Reserve;

/// <summary>Where stand-ins stand: homes on a line, ten minutes apart. Invented data.</summary>
public sealed class SpreadTests
{
    private static readonly int[] Homes = [0, 1, 2, 10, 11, 12, 13];

    [Fact]
    public void The_first_is_the_home_nearest_to_everybody_the_next_stands_where_most_are_far_from_it()
    {
        // From 10 the ways to all are 33 places long, from 11 34, from 2 41: 10 is first. Then 1 stands among those who are far from it.
        Assert.Equal([10, 1], Spread.Of(Homes, new Line(), 2).Select(i => Homes[i]));
    }

    [Fact]
    public void The_few_are_the_first_of_the_many() =>
        Assert.Equal(Spread.Of(Homes, new Line(), 3), Spread.Of(Homes, new Line(), 6).Take(3));

    [Fact]
    public void There_are_no_more_than_homes() => Assert.Equal(7, Spread.Of(Homes, new Line(), 20).Distinct().Count());

    private sealed class Line : ITravelTimes
    {
        public int Minutes(int from, int to) => 10 * Math.Abs(from - to);
    }
}
