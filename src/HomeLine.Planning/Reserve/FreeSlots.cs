using HomeLine.Planning.Problem;

namespace HomeLine.Planning.Reserve;

/// <summary>A visit as it fills a nurse's day.</summary>
/// <param name="Place">Where.</param>
/// <param name="Start">Its start, minutes on the axis of the shift.</param>
/// <param name="Minutes">Minutes in the home.</param>
public readonly record struct BusyTime(int Place, int Start, int Minutes);

/// <summary>How often a slot of some minutes fits into what a nurse's day leaves free in one piece: before she leaves home, between visits, after the last.</summary>
/// <param name="SlotMinutes">Length of a slot, at least 1.</param>
/// <param name="ChartingMinutes">Writing after each visit.</param>
public sealed record FreeSlots(int SlotMinutes, int ChartingMinutes)
{
    /// <summary>Slots of one day. The break is taken where it costs fewest of them; overtime is not free time.</summary>
    /// <param name="shift">Her hours and her break.</param>
    /// <param name="now">Nothing before this minute is free.</param>
    /// <param name="visits">Her visits, by start.</param>
    /// <param name="roads">Travel minutes, at their usual times.</param>
    /// <param name="home">Where she begins and ends.</param>
    public int Of(Shift shift, int now, IEnumerable<BusyTime> visits, ITravelTimes roads, int home)
    {
        int slots = 0, fewestLost = int.MaxValue;
        foreach ((int from, int to) in Stretches(shift, Math.Max(shift.From, now), visits, roads, home))
        {
            int here = Fits(to - from);
            slots += here;
            if (WithBreak(shift, from, to) is { } left) fewestLost = Math.Min(fewestLost, here - left);
        }

        // A break that fits into no stretch is on the way home, or does not fit at all: no slot is lost by it.
        return shift.LunchMinutes == 0 || fewestLost == int.MaxValue ? slots : slots - fewestLost;
    }

    private IEnumerable<(int From, int To)> Stretches(Shift shift, int free, IEnumerable<BusyTime> visits, ITravelTimes roads, int home)
    {
        int here = home;
        bool hasLeft = false;
        foreach (BusyTime visit in visits)
        {
            yield return (free, Math.Min(visit.Start - roads.Minutes(here, visit.Place), shift.To));
            free = Math.Max(free, visit.Start + visit.Minutes + ChartingMinutes);
            (here, hasLeft) = (visit.Place, true);
        }

        yield return (free, shift.To - (hasLeft ? roads.Minutes(here, home) : 0));
    }

    private int Fits(int minutes) => Math.Max(0, minutes) / Math.Max(1, SlotMinutes);

    /// <summary>Slots left in a stretch that also holds the break, at the break's best minute; empty when the break may not begin in it or is too long.</summary>
    private int? WithBreak(Shift shift, int from, int to)
    {
        int slot = Math.Max(1, SlotMinutes), length = shift.LunchMinutes, earliest = Math.Max(from, shift.LunchFrom), latest = Math.Min(to - length, shift.LunchTo);
        if (earliest > latest) return null;
        int best = 0;
        foreach (int begin in (ReadOnlySpan<int>)[earliest, latest, from + (slot * Fits(latest - from)), to - length - (slot * Fits(to - length - earliest))])
        {
            if (begin >= earliest && begin <= latest) best = Math.Max(best, Fits(begin - from) + Fits(to - length - begin));
        }

        return best;
    }
}
