using System.Collections.Immutable;

namespace HomeLine.Planning.Routing.Supplies;

/// <summary>
/// A day of people who start from home with tools and a stock of parts. Whoever passes by the depot, at most once, is short of nothing from then on. To be made
/// small: the sum of the durations of all routes (travel, service and waiting with the best departure). Whole numbers throughout.
/// </summary>
/// <param name="Places">How many places the matrix knows.</param>
/// <param name="Travel">Travel time from <c>a</c> to <c>b</c> at index <c>a * Places + b</c>.</param>
/// <param name="Depot">The depot: its place and when it can be passed; passing takes no time.</param>
/// <param name="People">Who can go.</param>
/// <param name="Requests">What is asked for; each is made once.</param>
public sealed record SupplyProblem(int Places, int[] Travel, SupplyDepot Depot, ImmutableArray<SupplyPerson> People, ImmutableArray<SupplyRequest> Requests);

/// <summary>Where supplies are fetched.</summary>
/// <param name="Place">Where.</param>
/// <param name="Opens">Earliest passing, included; whoever comes earlier waits.</param>
/// <param name="Closes">Latest passing, included.</param>
public sealed record SupplyDepot(int Place, int Opens, int Closes);

/// <summary>Somebody who starts and ends at home.</summary>
/// <param name="Home">Place of the home.</param>
/// <param name="Opens">Earliest departure, included.</param>
/// <param name="Closes">Latest return, included.</param>
/// <param name="Tools">Tools at home, bit <c>t</c> for tool <c>t</c>; using one does not use it up.</param>
/// <param name="Parts">How many parts of each kind there are at home.</param>
public sealed record SupplyPerson(int Home, int Opens, int Closes, ulong Tools, ImmutableArray<int> Parts);

/// <summary>A visit.</summary>
/// <param name="Place">Where.</param>
/// <param name="Service">Time it takes.</param>
/// <param name="Opens">Earliest start of service, included; whoever comes earlier waits.</param>
/// <param name="Closes">Latest start of service, included.</param>
/// <param name="Able">Indices of the people with the skills for it.</param>
/// <param name="Tools">Tools it needs.</param>
/// <param name="Parts">Parts of each kind it uses up.</param>
public sealed record SupplyRequest(int Place, int Service, int Opens, int Closes, ImmutableArray<int> Able, ulong Tools, ImmutableArray<int> Parts);

/// <summary>One person's stops in order; <see cref="SupplyPlan.Pass"/> stands for passing by the depot.</summary>
public sealed record SupplyRound(int Person, ImmutableArray<int> Stops);

/// <summary>A plan.</summary>
/// <param name="Rounds">Every route with at least one request, by person.</param>
/// <param name="Duration">Sum of the durations.</param>
/// <param name="LeftOut">Requests that nobody makes, ascending; empty in a valid plan.</param>
public sealed record SupplyPlan(ImmutableArray<SupplyRound> Rounds, long Duration, ImmutableArray<int> LeftOut)
{
    /// <summary>The stop that is no request: passing by the depot.</summary>
    public const int Pass = -1;
}
