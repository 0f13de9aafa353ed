using System.Collections.Immutable;
using HomeLine.Planning.Routing;
using HomeLine.Planning.Routing.Shifts;

namespace HomeLine.Planning.Tests.Routing.Shifts;

/// <summary>Days with shifts, lunch and wishes: cases by hand. Places lie on a line, one minute apart; place 0 is home.</summary>
public sealed class ShiftSearchTests
{
    [Fact]
    public void Whoever_need_not_leave_with_the_shift_leaves_as_late_as_the_first_visit_allows()
    {
        // 3 there and 3 back; the second door opens at 50, the first visit can be put off until 40.
        ShiftProblem problem = Problem([new ShiftPerson(0, 0, 0, 200)], [Visit(0, 3, 10, 40, Part(5, 0)), Visit(1, 3, 50, 60, Part(5, 0))], new ShiftPrices { Waiting = 1, Lateness = 100 });

        Assert.Equal(50 - 40 - 5, Best(problem).Cost);
        Assert.Equal(50 - 10 - 5 + 7, Best(problem with { LeaveWithTheShift = true }).Cost);
    }

    [Fact]
    public void Lunch_goes_where_there_is_time_for_it()
    {
        ShiftProblem problem = Problem([new ShiftPerson(0, 0, 0, 200, Lunch: true)], [Visit(0, 3, 10, 20, Part(5, 0)), Visit(1, 3, 100, 110, Part(5, 0))], new ShiftPrices { MissedLunch = 50, Lateness = 1 }) with { Lunch = new ShiftLunch(30, 60, 30) };

        ShiftPlan plan = Best(problem);

        Assert.Equal(0, plan.Cost);
        Assert.InRange(plan.Stops.Single(stop => stop.LunchStart is not null).LunchStart!.Value, 30, 60);
    }

    [Fact]
    public void A_patient_is_left_out_only_where_that_is_allowed_and_cheaper()
    {
        ShiftProblem problem = Problem([new ShiftPerson(0, 0, 0, 200)], [Visit(0, 30, 0, 100, Part(5, 0))], new ShiftPrices { Travel = 1, LeftOut = 20 });

        Assert.Equal(60, Best(problem).Cost);
        Assert.Equal([0], Best(problem with { Optional = [true] }).LeftOut);
        Assert.Empty(Best(problem with { Optional = [true], Prices = new ShiftPrices { Travel = 1, LeftOut = 80 } }).LeftOut);
    }

    [Fact]
    public void The_person_wished_for_comes_unless_that_costs_more()
    {
        ShiftVisit visit = Visit(0, 3, 0, 100, new ShiftPart(5, [0, 1], [1]));
        ShiftProblem problem = Problem([new ShiftPerson(0, 0, 0, 200), new ShiftPerson(20, 20, 0, 200)], [visit], new ShiftPrices { Travel = 1, NotPreferred = 40 });

        Assert.Equal(1, Best(problem).Stops.Single().Person);
        Assert.Equal(0, Best(problem with { Prices = new ShiftPrices { Travel = 1, NotPreferred = 10 } }).Stops.Single().Person);
    }

    [Fact]
    public void Overtime_and_an_uneven_load_are_paid_for_each_minute()
    {
        // 10 there, 20 of service, 10 back: 40 of work, home at 50 because the door opens at 20; the other one has nothing to do.
        ShiftProblem problem = Problem([new ShiftPerson(0, 0, 0, 45), new ShiftPerson(0, 0, 0, 45)], [Visit(0, 10, 20, 20, Part(20, 0))], new ShiftPrices { Overtime = 3, Unevenness = 1, LargestIdle = 2 });

        Assert.Equal((5 * 3) + 40 + (2 * 45), Best(problem).Cost);
    }

    [Fact]
    public void A_visit_nobody_can_make_is_refused() =>
        Assert.Throws<ArgumentException>(() => Best(Problem([new ShiftPerson(0, 0, 0, 45)], [Visit(0, 10, 0, 20, Part(20, 0)) with { Second = Part(20, 0) }], new ShiftPrices())));

    private static ShiftPlan Best(ShiftProblem problem) => new ShiftSearch(problem, 1).Run(new IterationBudget(4_000), TestContext.Current.CancellationToken);

    private static ShiftPart Part(int duration, params int[] able) => new(duration, [.. able], []);

    private static ShiftVisit Visit(int patient, int place, int opens, int closes, ShiftPart first) => new(patient, place, [new ShiftWindow(opens, closes)], first);

    private static ShiftProblem Problem(ImmutableArray<ShiftPerson> people, ImmutableArray<ShiftVisit> visits, ShiftPrices prices)
    {
        const int places = 40;
        int[] line = [.. Enumerable.Range(0, places * places).Select(i => Math.Abs((i / places) - (i % places)))];
        return new ShiftProblem(places, line, people, visits, [.. visits.Select(_ => false)], prices);
    }
}
