using HomeLine.Paper.Layout;

namespace HomeLine.Paper.Tests;

public class DaySheetTests
{
    [Fact]
    public void A_full_day_reads_as_approved() =>
        PaperSnapshot.Matches(PlainText.Of(DaySheet.ToDocument(SampleDaySheet.SixStops, PaperSize.Letter)));

    [Theory]
    [InlineData(PaperSize.Letter)]
    [InlineData(PaperSize.A4)]
    public void Six_doors_fit_two_pages(PaperSize size)
    {
        using var pdf = new ReadPdf(DaySheet.ToPdf(SampleDaySheet.SixStops, size));
        Assert.Equal(2, pdf.Pages.Count);
    }

    [Fact]
    public void Every_page_names_the_plan_version_the_print_time_and_that_it_may_be_old()
    {
        using var pdf = new ReadPdf(DaySheet.ToPdf(SampleDaySheet.SixStops, PaperSize.Letter));
        for (var page = 0; page < pdf.Pages.Count; page++)
        {
            var text = pdf.TextOf(page);
            Assert.Contains("Plan version 7, printed Tuesday, March 9, 2027, 6:10 am.", text, StringComparison.Ordinal);
            Assert.Contains("May be out of date: check version 7.", text, StringComparison.Ordinal);
            Assert.Contains($"Page {page + 1} of 2", text, StringComparison.Ordinal);
            Assert.Contains("555-0103", text, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void No_door_is_torn_between_two_pages()
    {
        using var pdf = new ReadPdf(DaySheet.ToPdf(SampleDaySheet.SixStops, PaperSize.Letter));
        var names = SampleDaySheet.SixStops.Stops.Select(stop => stop.PatientName).ToList();
        var arrivals = pdf.Pages.Select((_, page) => pdf.TextOf(page).Split("Arrived").Length - 1).ToList();
        var doors = pdf.Pages.Select((_, page) => names.Count(name => pdf.TextOf(page).Contains(name, StringComparison.Ordinal))).ToList();
        Assert.Equal(doors, arrivals);
        Assert.Equal(6, doors.Sum());
    }

    [Fact]
    public void A_range_in_the_patients_own_zone_stands_beside_the_branchs()
    {
        var text = PlainText.Of(DaySheet.ToDocument(SampleDaySheet.SixStops, PaperSize.Letter));
        Assert.Contains("Told 5:30 to 6:30 pm (4:30 to 5:30 pm Central).", text, StringComparison.Ordinal);
    }

    [Fact]
    public void What_is_paid_by_estimate_stands_below_the_driving()
    {
        var text = PlainText.Of(DaySheet.ToDocument(SampleDaySheet.SixStops with { Paid = "Estimate by policy: 5 h 20 min and 23.1 of 31.0 miles paid." }, PaperSize.Letter));
        Assert.Contains("5 h 20 min and 23.1 of 31.0 miles paid.", text, StringComparison.Ordinal);
    }

    [Fact]
    public void An_empty_day_says_so()
    {
        var text = PlainText.Of(DaySheet.ToDocument(SampleDaySheet.SixStops with { Stops = [], DrivingMinutes = 0 }, PaperSize.A4));
        Assert.Contains("No visits, 0 minutes of driving.", text, StringComparison.Ordinal);
    }

    [Fact]
    public void A_door_with_more_to_do_than_a_page_holds_still_prints_all_of_it()
    {
        var door = SampleDaySheet.SixStops.Stops[0] with { ToDo = [.. Enumerable.Range(1, 90).Select(item => $"Item {item} of the list")] };
        using var pdf = new ReadPdf(DaySheet.ToPdf(SampleDaySheet.SixStops with { Stops = [door] }, PaperSize.Letter));
        Assert.All(Enumerable.Range(1, 90), item => Assert.Contains($"Item{item}ofthelist", pdf.Text, StringComparison.Ordinal));
    }
}
