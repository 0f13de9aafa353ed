using HomeLine.LineCare.Ledger;
using HomeLine.LineCare.Lines;
using HomeLine.LineCare.Orders;
using static HomeLine.LineCare.Tests.Given;

namespace HomeLine.LineCare.Tests.Sources;

/// <summary>Routine laboratory tests in home antibiotic therapy, Brazilian guidelines, Ther Adv Infect Dis 2023;10, Table 4 (looked up).
/// The order carries the interval; nothing here decides which test a drug needs.</summary>
public sealed class HomeAntibioticLaboratoryTests
{
    [Theory]
    [InlineData("vancomycin: complete blood count, urea and creatinine, liver tests", 7)]
    [InlineData("vancomycin: serum level", 7)]
    [InlineData("ceftriaxone: complete blood count", 14)]
    [InlineData("linezolid: complete blood count", 7)]
    [InlineData("amphotericin B: urea and creatinine, potassium", 3)]
    public void A_repeating_draw_ends_with_its_interval(string tests, int days)
    {
        var window = Picc().Order(AnOrder(OrderKind.Labs) with { EveryDays = days, Text = tests })
            .Event(LineEventKind.LabsDrawn, Mar(4), but: e => e with { Order = "O1" }).Window(CareItem.Labs, Mar(5));

        Assert.Equal(Mar(4).PlusDays(days), window.LastDay);
        Assert.StartsWith(tests, window.Because.Sentence, StringComparison.Ordinal);
    }
}
