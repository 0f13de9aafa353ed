using System.Collections.Immutable;
using HomeLine.Agency.Roster;
using HomeLine.Agency.WeekEditing;
using HomeLine.Agency.WeekPlanning;
using HomeLine.LineCare.Lines;
using NodaTime;

namespace HomeLine.Agency.Tests.WeekPlanning;

/// <summary>What a change of the demonstration week does to care tied to the dates of orders. Worked out by hand from the orders; invented data.</summary>
public sealed class OrderedAheadTests
{
    private static readonly Instant Now = DemoAgency.At(9, 6, 0);

    private static ImmutableArray<string> Move(string patient, Func<WeekVisit, WeekVisit?> change, int day)
    {
        AgencyRoster alone = DuesAhead.Alone(DemoAgency.Roster, new PatientId(patient));
        PlannedWeek before = DemoAgency.Published with { Visits = [.. DemoAgency.Published.Visits.Where(v => v.Patient.Value == patient)] };
        var date = new LocalDate(2027, 3, day);
        PlannedWeek after = before with { Visits = [.. before.Visits.Select(v => v.Day == date ? change(v) : v).OfType<WeekVisit>()] };
        Assert.Contains(before.Visits, v => v.Day == date);
        return OrderedAhead.Of(alone, before, after, Now);
    }

    [Fact]
    public void A_draw_on_another_day_is_said_with_its_ordered_days()
    {
        ImmutableArray<string> lines = Move("P12", v => v with { Day = v.Day.PlusDays(1) }, 9);

        string draw = Assert.Single(lines, l => l.StartsWith("weekly labs", StringComparison.Ordinal));
        Assert.Contains("by order", draw, StringComparison.Ordinal);
        Assert.Contains("made on Wed 10 Mar, not on Tue 9 Mar", draw, StringComparison.Ordinal);
    }

    [Fact]
    public void A_trough_at_another_hour_leaves_the_times_its_order_ties_it_to() =>
        Assert.Contains(Move("P04", v => v with { Start = new LocalTime(14, 0) }, 9), l => l.Contains("outside the times the order ties it to", StringComparison.Ordinal));

    [Fact]
    public void The_recertification_that_nobody_makes_any_more_is_named()
    {
        string line = Assert.Single(Move("P17", _ => null, 11), l => l.Contains("recertification", StringComparison.OrdinalIgnoreCase));

        Assert.Contains("nobody makes it any more, it was planned for Thu 11 Mar", line, StringComparison.Ordinal);
    }

    [Fact]
    public void The_same_day_in_time_says_nothing() =>
        Assert.Empty(Move("P12", v => v with { Start = v.Start.PlusMinutes(20), Nurse = "N3" }, 9));
}
