using System.Runtime.CompilerServices;

namespace HomeLine.Planning.Routing;

/// <summary>
/// What a stretch of visits needs to know about time so that any two stretches can be joined in constant time (Vidal et al. 2013, section 4.5.1):
/// its shortest duration and the earliest and latest departure that reach it. Only stretches that keep their windows are described; joining says whether
/// the result still does.
/// </summary>
/// <param name="Duration">Shortest time from the departure at the first visit to the end of service at the last one, waiting included.</param>
/// <param name="Earliest">Earliest departure (start of service at the first visit) with that duration.</param>
/// <param name="Latest">Latest departure that keeps all windows and that duration.</param>
public readonly record struct TimeSegment(int Duration, int Earliest, int Latest)
{
    /// <summary>Earliest end of service at the last visit.</summary>
    public int Ready => Earliest + Duration;

    /// <summary>One visit alone.</summary>
    /// <param name="service">Its time of service.</param>
    /// <param name="opens">Earliest start of service.</param>
    /// <param name="closes">Latest start of service.</param>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static TimeSegment Of(int service, int opens, int closes) => new(service, opens, closes);

    /// <summary>Joins two stretches; false when some window of the second one would be missed.</summary>
    /// <param name="first">The earlier stretch.</param>
    /// <param name="travel">Travel time from the end of the first to the start of the second.</param>
    /// <param name="second">The later stretch.</param>
    /// <param name="joined">The joined stretch; meaningless when false is returned.</param>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static bool TryJoin(in TimeSegment first, int travel, in TimeSegment second, out TimeSegment joined)
    {
        int offset = first.Duration + travel;
        int wait = Math.Max(second.Earliest - offset - first.Latest, 0);
        joined = new TimeSegment(
            offset + wait + second.Duration,
            Math.Max(second.Earliest - offset, first.Earliest) - wait,
            Math.Min(second.Latest - offset, first.Latest));
        return first.Earliest + offset <= second.Latest;
    }
}
