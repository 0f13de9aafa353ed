using System.Collections.Immutable;

namespace HomeLine.Planning.Routing;

/// <summary>
/// A vehicle-routing problem with time windows: several bases, kinds of vehicle, days and optional requests. Whole numbers throughout, so that sums are
/// exact and equal on every machine; the caller chooses the unit (say tenths, or ten-thousandths) and rounds.
/// </summary>
/// <param name="Places">How many places the matrices know.</param>
/// <param name="Cost">Cost from place <c>a</c> to place <c>b</c> at index <c>a * Places + b</c>.</param>
/// <param name="Time">Travel time, laid out in the same way; may be the same array.</param>
/// <param name="Requests">What is asked for.</param>
/// <param name="Kinds">Who can drive.</param>
public sealed record RoutingProblem(
    int Places,
    int[] Cost,
    int[] Time,
    ImmutableArray<RoutingRequest> Requests,
    ImmutableArray<VehicleKind> Kinds)
{
    /// <summary>True when a route also costs its duration: travel, service and waiting with the best departure.</summary>
    public bool DurationIsCost { get; init; }

    /// <summary>Number of days.</summary>
    public int Days => Kinds.Length == 0 ? 1 : Kinds.Max(kind => kind.Day) + 1;

    /// <summary>Says what is wrong with the problem, or null when nothing is.</summary>
    public string? Fault()
    {
        if (Places < 1 || Cost.Length != Places * Places || Time.Length != Places * Places)
            return $"The matrices must have {Places} times {Places} entries.";
        for (int i = 0; i < Requests.Length; i++)
        {
            RoutingRequest request = Requests[i];
            if (request.Place < 0 || request.Place >= Places) return $"Request {i} names place {request.Place}, which does not exist.";
            if (request.Service < 0 || request.Demand < 0) return $"Request {i} has a negative service time or demand.";
            if (request.Opens > request.Closes) return $"Request {i} closes before it opens.";
            if (request.DayPatterns.IsDefaultOrEmpty || request.DayPatterns.Any(days => days <= 0 || days >= 1 << Days))
                return $"Request {i} has a day pattern outside the {Days} days.";
        }

        for (int k = 0; k < Kinds.Length; k++)
        {
            VehicleKind kind = Kinds[k];
            if (kind.Start < 0 || kind.Start >= Places || kind.End < 0 || kind.End >= Places) return $"Vehicle kind {k} starts or ends at a place that does not exist.";
            if (kind.Opens > kind.Closes || kind.Day < 0 || kind.Count < 0) return $"Vehicle kind {k} has impossible hours, day or number.";
        }

        return null;
    }
}
