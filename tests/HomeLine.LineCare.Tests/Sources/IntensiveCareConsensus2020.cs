using HomeLine.LineCare.Lines;
using HomeLine.LineCare.Policy;
using NodaTime;
using static HomeLine.LineCare.Tests.Given;

namespace HomeLine.LineCare.Tests.Sources;

/// <summary>Expert consensus guideline on intravascular catheters in the intensive care unit, Annals of Intensive Care 2020, Table 2 (looked up).</summary>
public sealed class IntensiveCareConsensus2020
{
    [Fact]
    public void A_film_is_changed_every_7_days_unless_detached_soiled_or_bleeding() =>
        Assert.Equal(7, Period.DaysBetween(Mar(3), Picc().Dressing(Mar(3)).Window(CareItem.Dressing, Mar(8)).LastDay));

    [Fact]
    public void A_continuous_set_is_changed_after_96_hours_and_one_with_lipid_or_blood_within_24()
    {
        Assert.Equal(96, PolicyBook.Default.ValueOf("set.continuous.max", Mar(8)));
        Assert.True(PolicyBook.Default.ValueOf("set.pn.max", Mar(8)) <= 24);
        Assert.True(PolicyBook.Default.ValueOf("set.blood.max", Mar(8)) <= 24);
    }
}
