using System.Collections.Immutable;

namespace HomeLine.Planning.Routing.Shifts;

/// <summary>A day's plan.</summary>
/// <param name="Stops">In an order that respects everybody's own order; one for each part of each visit that is made.</param>
/// <param name="LeftOut">Patients left out, ascending.</param>
/// <param name="Cost">What is made small.</param>
public sealed record ShiftPlan(ImmutableArray<ShiftStop> Stops, ImmutableArray<int> LeftOut, long Cost);

/// <summary>One person's part of a visit, and when.</summary>
/// <param name="Visit">Index of the visit.</param>
/// <param name="Second">Whether it is the second part.</param>
/// <param name="Person">Who.</param>
/// <param name="LunchStart">When this person begins lunch there, before the visit; null for no lunch there.</param>
/// <param name="Start">When the service starts.</param>
public sealed record ShiftStop(int Visit, bool Second, int Person, int? LunchStart, int Start);
