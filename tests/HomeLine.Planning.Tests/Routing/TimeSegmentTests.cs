using CsCheck;
using HomeLine.Planning.Routing;

namespace HomeLine.Planning.Tests.Routing;

/// <summary>Joining stretches of a route in constant time gives what driving them gives.</summary>
public sealed class TimeSegmentTests
{
    [Fact]
    public void Two_visits_with_a_wait_between_them()
    {
        // 10 minutes at a home that opens 0 to 20, 5 on the road, 7 at a home that opens at 60: leaving at 20, 33 of waiting and driving.
        bool fits = TimeSegment.TryJoin(TimeSegment.Of(10, 0, 20), 5, TimeSegment.Of(7, 60, 90), out TimeSegment joined);

        Assert.True(fits);
        Assert.Equal(new TimeSegment(47, 20, 20), joined);
        Assert.Equal(67, joined.Ready);
    }

    [Fact]
    public void A_missed_window_does_not_fit() =>
        Assert.False(TimeSegment.TryJoin(TimeSegment.Of(10, 0, 20), 5, TimeSegment.Of(7, 0, 14), out _));

    [Fact]
    public void Any_way_of_joining_gives_the_duration_of_the_drive() => Gen.Int[0, 1_000_000].Sample(
        seed =>
        {
            RoutingProblem problem = InventedTown.Simple((ulong)seed, 6) with { DurationIsCost = true };
            int[] order = [.. Enumerable.Range(0, 6).OrderBy(i => problem.Requests[i].Opens)];
            RoutingVerdict verdict = RoutingCheck.Judge(problem, new RoutingPlan([new PlannedRoute(0, [.. order])], [], 0, 0));
            (bool fits, TimeSegment whole) = Joined(problem, order, 1 + (seed % 5));
            Assert.Equal(verdict.Faults.All(fault => !fault.Contains("after", StringComparison.Ordinal)), fits);
            if (fits) Assert.Equal(verdict.Cost - Driven(problem, order), whole.Duration);
        },
        iter: 2_000,
        threads: 1);

    // The stretches before and after a cut are built first and then joined.
    private static (bool Fits, TimeSegment Whole) Joined(RoutingProblem problem, int[] order, int cut)
    {
        int[] stops = [-1, .. order, -1];
        bool fits = true;
        TimeSegment Stretch(int from, int to)
        {
            TimeSegment so = Own(problem, stops[from]);
            for (int i = from + 1; i <= to; i++) fits &= TimeSegment.TryJoin(so, Leg(problem, stops[i - 1], stops[i]), Own(problem, stops[i]), out so);
            return so;
        }

        TimeSegment head = Stretch(0, cut), tail = Stretch(cut + 1, stops.Length - 1);
        fits &= TimeSegment.TryJoin(head, Leg(problem, stops[cut], stops[cut + 1]), tail, out TimeSegment whole);
        return (fits, whole);
    }

    private static long Driven(RoutingProblem problem, int[] order)
    {
        int[] stops = [-1, .. order, -1];
        return Enumerable.Range(1, stops.Length - 1).Sum(i => (long)Leg(problem, stops[i - 1], stops[i]));
    }

    private static TimeSegment Own(RoutingProblem problem, int request) => request < 0
        ? TimeSegment.Of(0, problem.Kinds[0].Opens, problem.Kinds[0].Closes)
        : TimeSegment.Of(problem.Requests[request].Service, problem.Requests[request].Opens, problem.Requests[request].Closes);

    private static int Leg(RoutingProblem problem, int from, int to) =>
        problem.Time[((from < 0 ? 0 : problem.Requests[from].Place) * problem.Places) + (to < 0 ? 0 : problem.Requests[to].Place)];
}
