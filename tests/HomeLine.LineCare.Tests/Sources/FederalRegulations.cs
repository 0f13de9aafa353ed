using HomeLine.LineCare.Ledger;
using HomeLine.LineCare.Lines;
using HomeLine.LineCare.Orders;
using HomeLine.LineCare.Policy;
using static HomeLine.LineCare.Tests.Given;

namespace HomeLine.LineCare.Tests.Sources;

/// <summary>Title 42 of the Code of Federal Regulations.</summary>
public sealed class FederalRegulations
{
    /// <summary>42 CFR 484.55(a)(1), looked up.</summary>
    [Fact]
    public void The_initial_visit_comes_within_48_hours() => Assert.Equal(48, PolicyBook.Default.ValueOf("initialvisit.max", Mar(8)));

    /// <summary>42 CFR 484.55(b)(1), looked up.</summary>
    [Fact]
    public void The_comprehensive_assessment_comes_within_5_days() => Assert.Equal(5, PolicyBook.Default.ValueOf("assessment.max", Mar(8)));

    /// <summary>42 CFR 484.55(d), as restated in public texts: the last 5 days of every 60 from the start of care.</summary>
    [Fact]
    public void Recertification_falls_in_days_56_to_60_when_the_start_of_care_is_day_1()
    {
        var window = Picc().Window(CareItem.Recertification, Mar(8));

        Assert.Equal(56, NodaTime.Period.DaysBetween(new(2027, 2, 8), window.OpensOn) + 1);
        Assert.Equal(60, NodaTime.Period.DaysBetween(new(2027, 2, 8), window.LastDay) + 1);
    }

    /// <summary>42 CFR 409.43(a)(3), looked up: a telephone contact cannot replace an ordered visit.</summary>
    [Fact]
    public void A_telephone_contact_replaces_no_ordered_care()
    {
        var given = Picc().Order(AnOrder(OrderKind.Hydration) with { Dates = [Mar(8)] })
            .Event(LineEventKind.PhoneCall, Mar(8), but: e => e with { Order = "O1" });

        Assert.Equal(Mar(8), Assert.Single(given.Windows(CareItem.OrderedService, Mar(8), 12)).LastDay);
    }

    /// <summary>42 CFR 409.43(b), looked up: when a range is ordered its upper limit is the frequency. The order holds the upper limit.</summary>
    [Fact]
    public void Visits_up_to_the_upper_limit_of_the_order_are_within_it() =>
        Assert.Equal(FrequencyStanding.Met, Assert.Single(VisitFrequency.Weeks(
            AnOrder(OrderKind.VisitFrequency) with { VisitsPerWeek = 3 }, [Mar(8), Mar(10), Mar(12)], PolicyBook.Default)).Standing);
}
