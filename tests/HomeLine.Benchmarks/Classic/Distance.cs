namespace HomeLine.Benchmarks.Classic;

/// <summary>How a set turns coordinates into costs and times.</summary>
internal enum Distance
{
    /// <summary>Euclidean, each leg cut off after one decimal, for cost and for time.</summary>
    Tenths,

    /// <summary>Euclidean in double precision.</summary>
    Exact,
}

/// <summary>
/// Whole-number matrices for the search. Tenths are exact. Exact distances are searched in ten-thousandths: costs rounded, times rounded up, so
/// that a plan in time here is in time in double precision; the cost reported is always computed afresh in double precision.
/// </summary>
internal sealed record Unit(Distance Distance)
{
    public int PerOne => Distance == Distance.Tenths ? 10 : 10_000;

    public string Words => Distance == Distance.Tenths
        ? "Euclidean, every leg truncated to one decimal, for cost and time"
        : "Euclidean in double precision, for cost and time";

    public int Of(double time) => (int)Math.Round(Math.Clamp(time * PerOne, int.MinValue / 4, int.MaxValue / 4));

    public (int[] Cost, int[] Time) Matrices(IReadOnlyList<PlaneNode> nodes)
    {
        int places = nodes.Count;
        var cost = new int[places * places];
        int[] time = Distance == Distance.Tenths ? cost : new int[places * places];
        for (int a = 0; a < places; a++)
            for (int b = 0; b < places; b++)
            {
                double length = nodes[a].To(nodes[b]) * PerOne;
                cost[(a * places) + b] = Distance == Distance.Tenths ? (int)Math.Floor(length + 1e-7) : (int)Math.Round(length);
                if (Distance == Distance.Exact) time[(a * places) + b] = (int)Math.Ceiling(length - 1e-6);
            }

        return (cost, time);
    }
}
