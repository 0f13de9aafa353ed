using HomeLine.LineCare.Policy;
using NodaTime;
using static HomeLine.LineCare.Tests.Given;

namespace HomeLine.LineCare.Tests.Sources;

/// <summary>US FDA drug label, 2 % chlorhexidine gluconate in 70 % isopropyl alcohol, three-swab format, 2023, Directions (looked up):
/// use with care in infants under 2 months. The same limit is in one published compendium (SHEA/IDSA/APIC 2022, second hand).</summary>
public sealed class ChlorhexidineSwabLabel
{
    [Theory]
    [InlineData(1, false)]
    [InlineData(6, false)]
    [InlineData(9, true)]
    [InlineData(60, true)]
    public void Under_two_months_chlorhexidine_is_refused(int weeks, bool allowed)
    {
        var care = Picc().But(c => c with { BornOn = Mar(8).PlusWeeks(-weeks) }).Care;

        Assert.Equal(allowed, Materials.ChlorhexidineAllowed(care, PolicyBook.Default, Mar(8)).Allowed);
    }

    [Fact]
    public void The_limit_is_two_months_to_the_day_also_at_the_end_of_a_short_month()
    {
        var care = Picc().But(c => c with { BornOn = new LocalDate(2027, 12, 31) }).Care;

        Assert.False(Materials.ChlorhexidineAllowed(care, PolicyBook.Default, new LocalDate(2028, 2, 28)).Allowed);
        Assert.True(Materials.ChlorhexidineAllowed(care, PolicyBook.Default, new LocalDate(2028, 2, 29)).Allowed);
    }
}
