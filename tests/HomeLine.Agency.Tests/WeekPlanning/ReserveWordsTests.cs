using System.Collections.Immutable;
using HomeLine.Agency.WeekPlanning;
using HomeLine.Planning.Plans;
using HomeLine.Planning.Reserve;
using NodaTime;

namespace HomeLine.Agency.Tests.WeekPlanning;

/// <summary>What the page says of the reserve once a week is planned. Invented figures.</summary>
public sealed class ReserveWordsTests
{
    private static readonly ImmutableArray<DayReserve> Week = [Day(8, 2, 3), Day(9, 1, 1), Day(14, 0, 0)];

    [Fact]
    public void Each_day_that_asks_for_slots_says_how_many_it_has() =>
        Assert.Equal("Slots free for care nobody planned (in brackets, asked for): Mon 8 Mar 3 (2); Tue 9 Mar 1 (1). No work was added for it.", ReserveWords.Of(Planned(300, 300, 0, [new(0, 2, 3)]), Week));

    [Fact]
    public void What_it_costs_is_said_in_minutes_of_work() =>
        Assert.EndsWith("With the week after, 2 slots more than a plan without the reserve would keep cost 15 min of work more (visits, driving, waiting, overtime).", ReserveWords.Of(Planned(315, 300, 2, [new(0, 2, 3)]), Week));

    [Fact]
    public void A_day_that_cannot_have_it_is_named() =>
        Assert.Contains("Below the reserve: Sat 13 Mar; no plan was found that frees more there and gives up no care.", ReserveWords.Of(Planned(300, 300, 1, [new(5, 1, 0)]), [.. Week, Day(13, 1, 0)]));

    [Fact]
    public void Where_policy_asks_for_none_nothing_is_said() => Assert.Equal("", ReserveWords.Of(Planned(300, 300, 0, []), [Day(8, 0, 4)]));

    private static DayReserve Day(int day, int asked, int free) => new(new LocalDate(2027, 3, day), asked, free, []);

    private static ReservedWeek Planned(long work, long without, int missingWithout, ImmutableArray<DaySlots> days) =>
        new(new WeekPlan([], [], default(PlanScore) with { Work = work }), days, without, missingWithout);
}
