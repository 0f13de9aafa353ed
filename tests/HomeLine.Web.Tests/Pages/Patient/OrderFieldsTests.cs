using HomeLine.LineCare.Lines;
using HomeLine.LineCare.Orders;
using HomeLine.LineCare.Scope;
using HomeLine.Web.Pages.Patient;
using NodaTime;

namespace HomeLine.Web.Tests.Pages.Patient;

/// <summary>What is typed of an order, and the order it becomes. Invented data.</summary>
public sealed class OrderFieldsTests
{
    private static readonly LocalDate Today = new(2027, 3, 8);

    private static OrderFields Level() => new()
    {
        Kind = OrderKind.DrugLevel,
        Dates = "2027-03-10, 2027-03-12",
        DoseTimes = "10:00 22:00",
        NeedsCourier = true,
        Line = "P04-1",
    };

    [Fact]
    public void A_level_has_days_dose_times_and_the_courier()
    {
        CareOrder order = Level().ToOrder(new PatientId("P04"), Today);

        Assert.Equal("", Level().Unread());
        Assert.Equal([new LocalDate(2027, 3, 10), new LocalDate(2027, 3, 12)], order.Dates);
        Assert.Equal([new LocalTime(10, 0), new LocalTime(22, 0)], order.DoseTimes);
        Assert.True(order is { NeedsCourier: true, Line.Value: "P04-1", FirstDose: null });
        Assert.Equal(["LAB"], order.Skills);
    }

    [Fact]
    public void What_cannot_be_read_is_said_and_nothing_is_lost()
    {
        OrderFields fields = Level();
        fields.Dates = "10 March";
        Assert.Contains("2027-03-09", fields.Unread(), StringComparison.Ordinal);
        Assert.Equal("10 March", fields.Dates);
        fields.Dates = "2027-03-10";
        fields.DoseTimes = "10 o'clock";
        Assert.Contains("9:30", fields.Unread(), StringComparison.Ordinal);
        fields.DoseTimes = "";
        fields.Dates = "";
        Assert.Contains("On which days", fields.Unread(), StringComparison.Ordinal);
    }

    [Fact]
    public void A_first_dose_is_one_only_where_a_dose_is_given_and_needs_its_minutes()
    {
        var fields = new OrderFields { Kind = OrderKind.NurseDose, Dates = "2027-03-10", IsFirstDose = true };
        Assert.Contains("How long", fields.Unread(), StringComparison.Ordinal);
        fields.InfusingMinutes = 60;
        Assert.Equal(new FirstDoseFacts(false, null, 60), fields.ToOrder(new PatientId("P04"), Today).FirstDose);
        fields.Kind = OrderKind.Labs;
        Assert.Null(fields.ToOrder(new PatientId("P04"), Today).FirstDose);
    }

    [Fact]
    public void Visits_a_week_and_an_interval_ask_for_no_day()
    {
        Assert.Equal("", new OrderFields { Kind = OrderKind.VisitFrequency, VisitsPerWeek = 2 }.Unread());
        CareOrder interval = new OrderFields { Kind = OrderKind.Interval, Item = CareItem.Dressing, EveryDays = 6, Dates = "10 March" }.ToOrder(new PatientId("P04"), Today);
        Assert.True(interval is { EveryDays: 6, Item: CareItem.Dressing, Dates.IsEmpty: true });
    }
}
