using HomeLine.Planning.Problem;

namespace HomeLine.Planning.Search;

/// <summary>Sets of allowed starts as ascending, disjoint spans.</summary>
internal static class SpanSet
{
    /// <summary>What both allow; an empty second set allows everything.</summary>
    public static Span[] Both(Span[] one, ReadOnlySpan<Span> other)
    {
        if (other.IsEmpty || one.Length == 0) return one;
        var both = new Span[one.Length + other.Length];
        int count = Meet(one, other, both);
        return both[..count];
    }

    /// <summary>What both allow, as one of the two where it is the same, so that nothing new is allocated in most cases.</summary>
    public static Span[] Shared(Span[] one, Span[] other, Span[] scratch)
    {
        Span<Span> both = scratch.AsSpan(0, Meet(one, other, scratch));
        return both.SequenceEqual(one) ? one : both.SequenceEqual(other) ? other : both.ToArray();
    }

    /// <summary>Writes what both sets allow into a buffer and returns how many spans that is.</summary>
    public static int Meet(ReadOnlySpan<Span> one, ReadOnlySpan<Span> other, Span[] into)
    {
        int count = 0, i = 0, j = 0;
        while (i < one.Length && j < other.Length)
        {
            int from = Math.Max(one[i].From, other[j].From), to = Math.Min(one[i].To, other[j].To);
            if (from <= to && count < into.Length) into[count++] = new Span(from, to);
            if (one[i].To < other[j].To) i++;
            else j++;
        }

        return count;
    }

    /// <summary>The first allowed minute at or after another; -1 when there is none.</summary>
    public static int NextAllowed(ReadOnlySpan<Span> spans, int minute)
    {
        foreach (Span span in spans)
        {
            if (minute <= span.To) return Math.Max(minute, span.From);
        }

        return -1;
    }

    /// <summary>The last allowed minute at or before another; -1 when there is none.</summary>
    public static int LastAllowed(ReadOnlySpan<Span> spans, int minute)
    {
        for (int i = spans.Length - 1; i >= 0; i--)
        {
            if (minute >= spans[i].From) return Math.Min(minute, spans[i].To);
        }

        return -1;
    }
}
