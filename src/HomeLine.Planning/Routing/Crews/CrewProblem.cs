using System.Collections.Immutable;

namespace HomeLine.Planning.Routing.Crews;

/// <summary>
/// One day of visits that may need two people, at the same time or one after the other, with soft windows. To be made small: travel, plus the lateness of all starts,
/// plus the largest lateness once more (the home-care routing objective of Mankowska, Meisel and Bierwirth 2014, times three).
/// </summary>
/// <param name="Places">How many places the matrix knows; place 0 is where everybody starts and ends.</param>
/// <param name="Travel">Travel time and cost from <c>a</c> to <c>b</c> at index <c>a * Places + b</c>.</param>
/// <param name="Caregivers">How many people there are.</param>
/// <param name="Visits">The visits; every one must be made.</param>
public sealed record CrewProblem(int Places, int[] Travel, int Caregivers, ImmutableArray<CrewVisit> Visits);

/// <summary>A visit for one person or two.</summary>
/// <param name="Place">Where.</param>
/// <param name="Opens">Earliest start, included; arriving earlier waits.</param>
/// <param name="Closes">Latest start without lateness, included.</param>
/// <param name="First">What the first person does.</param>
/// <param name="Second">What the second person does, or null.</param>
/// <param name="LeastGap">Least time from the first start to the second start; 0 with <paramref name="MostGap"/> 0 means together.</param>
/// <param name="MostGap">Most time from the first start to the second, included.</param>
public sealed record CrewVisit(int Place, int Opens, int Closes, CrewPart First, CrewPart? Second = null, int LeastGap = 0, int MostGap = 0);

/// <summary>One person's part of a visit.</summary>
/// <param name="Duration">How long it takes.</param>
/// <param name="Able">Who can do it, ascending.</param>
public sealed record CrewPart(int Duration, ImmutableArray<int> Able);

/// <summary>A plan: visits in an order that respects every person's own order, and who goes.</summary>
/// <param name="Stops">One for each visit, in that order.</param>
/// <param name="Travel">Sum of travel.</param>
/// <param name="Lateness">Sum of lateness.</param>
/// <param name="LargestLateness">The largest lateness.</param>
public sealed record CrewPlan(ImmutableArray<CrewStop> Stops, long Travel, long Lateness, long LargestLateness)
{
    /// <summary>What is made small.</summary>
    public long Cost => Travel + Lateness + LargestLateness;
}

/// <summary>Who makes a visit, and when.</summary>
/// <param name="Visit">Index of the visit.</param>
/// <param name="First">The first person.</param>
/// <param name="FirstStart">When that part starts.</param>
/// <param name="Second">The second person, or -1.</param>
/// <param name="SecondStart">When that part starts.</param>
public sealed record CrewStop(int Visit, int First, int FirstStart, int Second, int SecondStart);
