using HomeLine.Web.Pages.Week;
using NodaTime;

namespace HomeLine.Web.Tests.Pages.Week;

public sealed class DayScaleTests
{
    [Fact]
    public void A_row_begins_at_the_full_hour_of_its_first_shift_or_visit()
    {
        DayScale scale = DayScale.For(Arrangement.Nurse(Arrangement.Stop(Arrangement.Visit(hour: 7, minute: 40))));

        Assert.Equal(7 * 60, scale.FromMinute);
        Assert.Equal(16 * 60 + 30, scale.ToMinute);
    }

    [Fact]
    public void An_hour_is_twelve_steps()
    {
        DayScale scale = new(8 * 60, 17 * 60);

        Assert.Equal("from-13 long-12", scale.Place(new LocalTime(9, 0), 60));
    }

    [Fact]
    public void A_visit_at_the_same_time_stands_at_the_same_height_on_every_day_of_a_nurse()
    {
        DayScale scale = DayScale.For(Arrangement.Nurse(Arrangement.Stop(Arrangement.Visit()), Arrangement.Stop(Arrangement.Visit("V2", hour: 14))));

        Assert.Equal(scale.StepOf(new LocalTime(9, 0)), scale.StepOf(new LocalTime(9, 4)));
        Assert.Equal(13, scale.StepOf(new LocalTime(9, 0)));
    }
}
