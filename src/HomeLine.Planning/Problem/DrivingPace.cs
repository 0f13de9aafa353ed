using System.Collections.Immutable;

namespace HomeLine.Planning.Problem;

/// <summary>
/// How far one comes by the minute. A trip of <c>m</c> usual minutes is <c>100·m</c> parts of a way: a usual minute covers 100 of them, a slow one as many as its
/// percent. Whoever leaves later has covered no more by any minute, so she never arrives earlier (first in, first out; the speed model of Ichoua, Gendreau
/// and Potvin, European Journal of Operational Research 144 (2003), from memory). Whole numbers; nothing is allocated.
/// </summary>
internal sealed class DrivingPace
{
    private const int Usual = 100;

    private readonly SlowHours[] _slow;

    /// <param name="slow">Slow times that do not overlap.</param>
    public DrivingPace(ImmutableArray<SlowHours> slow) => _slow = slow.IsDefaultOrEmpty ? [] : [.. slow.OrderBy(s => s.From)];

    /// <summary>Nobody ever drives slower than usual.</summary>
    public bool IsSteady => _slow.Length == 0;

    /// <summary>When a trip of so many usual minutes ends.</summary>
    public long Arrive(long leave, int minutes)
    {
        long left = (long)Usual * minutes, now = leave;
        for (int i = FirstEndingAfter(leave); i < _slow.Length && left > 0; i++)
        {
            SlowHours slow = _slow[i];
            long free = Math.Max(0, slow.From - now) * Usual;
            if (left <= free) break;
            left -= free;
            now = Math.Max(now, slow.From);
            long within = (slow.To - now) * slow.SpeedPercent;
            if (left <= within) return now + Up(left, slow.SpeedPercent);
            left -= within;
            now = slow.To;
        }

        return now + Up(left, Usual);
    }

    /// <summary>The latest minute at which a trip of so many usual minutes can begin to end by a minute.</summary>
    public long Depart(long arrive, int minutes)
    {
        long left = (long)Usual * minutes, now = arrive;
        for (int i = LastBeginningBefore(arrive); i >= 0 && left > 0; i--)
        {
            SlowHours slow = _slow[i];
            long free = Math.Max(0, now - slow.To) * Usual;
            if (left <= free) break;
            left -= free;
            now = Math.Min(now, slow.To);
            long within = (now - slow.From) * slow.SpeedPercent;
            if (left <= within) return now - Up(left, slow.SpeedPercent);
            left -= within;
            now = slow.From;
        }

        return now - Up(left, Usual);
    }

    private static long Up(long parts, int each) => (parts + each - 1) / each;

    private int FirstEndingAfter(long minute)
    {
        int low = 0, high = _slow.Length;
        while (low < high)
        {
            int middle = (low + high) / 2;
            if (_slow[middle].To > minute) high = middle;
            else low = middle + 1;
        }

        return low;
    }

    private int LastBeginningBefore(long minute)
    {
        int low = 0, high = _slow.Length;
        while (low < high)
        {
            int middle = (low + high) / 2;
            if (_slow[middle].From < minute) low = middle + 1;
            else high = middle;
        }

        return low - 1;
    }
}
