using HomeLine.Planning.Problem;
using HomeLine.Planning.Reserve;
using HomeLine.Planning.Tests.Week;

namespace HomeLine.Planning.Tests.Reserve;

/// <summary>
/// How free time of a nurse's day is counted in slots of 75 minutes, worked out by hand: places ten minutes apart on a line, the nurse at place 0 works from eight to four and writes
/// for 15 minutes after each visit. Invented data.
/// </summary>
public sealed class FreeSlotsTests
{
    private static readonly FreeSlots Slots = new(75, 15);
    private static readonly Shift Day = new(0, SmallWeek.At(0, 8), SmallWeek.At(0, 16), SmallWeek.At(0, 17));

    [Fact]
    public void A_day_without_visits_has_as_many_as_fit() => Assert.Equal(6, Of(Day));

    [Fact]
    public void Time_counts_in_one_piece_before_between_and_after_visits()
    {
        // 08:00 to 09:10 are 70 minutes, too little. From 10:15 to 11:30 are 75: one. From 12:20 to the way home at 15:40 are 200: two.
        Assert.Equal(3, Of(Day, Visit(2, 9, 30), Visit(2, 11, 35)));
    }

    [Fact]
    public void Overtime_is_not_free_time() => Assert.Equal(0, Of(Day with { To = SmallWeek.At(0, 9) }));

    [Fact]
    public void What_lies_behind_now_is_not_free() => Assert.Equal(1, Slots.Of(Day, SmallWeek.At(0, 14), [], new Line(), 0));

    [Fact]
    public void A_break_is_taken_where_it_costs_fewest_slots()
    {
        // Free from 08:00 to 10:40, two slots, and from 14:05 to 15:40, one. Half an hour that begins between 11:00 and 14:30 leaves 65 minutes of the second stretch.
        Shift withBreak = Day with { LunchMinutes = 30, LunchFrom = SmallWeek.At(0, 11), LunchTo = SmallWeek.At(0, 14, 30) };
        BusyTime visit = new(2, SmallWeek.At(0, 11), 170);
        Assert.Equal(3, Of(Day, visit));
        Assert.Equal(2, Of(withBreak, visit));

        // With ten minutes more at the end of the day there is room for both.
        Assert.Equal(3, Of(withBreak with { To = SmallWeek.At(0, 16, 10) }, visit));
    }

    [Fact]
    public void A_break_in_a_gap_too_short_for_a_slot_costs_nothing()
    {
        // 40 minutes between the two visits hold the break; 08:00 to 10:40 hold two slots, 12:55 to 15:40 two more.
        Shift withBreak = Day with { LunchMinutes = 30, LunchFrom = SmallWeek.At(0, 11), LunchTo = SmallWeek.At(0, 14) };
        Assert.Equal(4, Of(withBreak, Visit(2, 11, 0), Visit(2, 12, 30, 10)));
    }

    private static int Of(Shift shift, params BusyTime[] visits) => Slots.Of(shift, 0, visits, new Line(), 0);

    private static BusyTime Visit(int place, int hour, int minute, int minutes = 30) => new(place, SmallWeek.At(0, hour, minute), minutes);

    private sealed class Line : ITravelTimes
    {
        public int Minutes(int from, int to) => from == to ? 5 : 10 * Math.Abs(from - to);
    }
}
