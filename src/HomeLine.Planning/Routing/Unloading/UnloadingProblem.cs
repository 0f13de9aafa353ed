using System.Collections.Immutable;

namespace HomeLine.Planning.Routing.Unloading;

/// <summary>
/// Days with rounds that unload on the way: whoever is full drives to a place for unloading and goes on, and everybody unloads before coming home. Each customer is
/// visited on all days of one pattern. To be made small: travel over all days. Whole numbers throughout.
/// </summary>
/// <param name="Places">How many places the matrix knows; place 0 is where every round begins and ends.</param>
/// <param name="Travel">Travel time and cost from <c>a</c> to <c>b</c> at index <c>a * Places + b</c>.</param>
/// <param name="Facilities">Places for unloading, at least one; unloading takes no time.</param>
/// <param name="Customers">Who is visited.</param>
/// <param name="Days">How many days, 1 to 31.</param>
/// <param name="Vehicles">Rounds on each day at most.</param>
/// <param name="Capacity">Most demand between two unloadings, included.</param>
/// <param name="LongestDuration">Longest travel and service of a round, included.</param>
public sealed record UnloadingProblem(
    int Places,
    int[] Travel,
    ImmutableArray<int> Facilities,
    ImmutableArray<UnloadingCustomer> Customers,
    int Days,
    int Vehicles,
    int Capacity,
    int LongestDuration);

/// <summary>A customer.</summary>
/// <param name="Place">Where.</param>
/// <param name="Demand">What each visit takes of the capacity.</param>
/// <param name="Service">Time each visit takes.</param>
/// <param name="Patterns">Sets of days, bit <c>d</c> for day <c>d</c>; one is chosen.</param>
public sealed record UnloadingCustomer(int Place, int Demand, int Service, ImmutableArray<int> Patterns);

/// <summary>A plan.</summary>
/// <param name="Rounds">Every round that is made.</param>
/// <param name="Cost">Travel over all days.</param>
/// <param name="Excess">Minutes by which rounds are too long, 0 in a valid plan.</param>
public sealed record UnloadingPlan(ImmutableArray<UnloadingRound> Rounds, long Cost, long Excess);

/// <summary>A round: its day and the places it passes, from home to home, unloading included.</summary>
public sealed record UnloadingRound(int Day, ImmutableArray<int> Places);
