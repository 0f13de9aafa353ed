using HomeLine.LineCare.Ledger;
using HomeLine.LineCare.Lines;
using HomeLine.LineCare.Policy;
using HomeLine.LineCare.Windows;
using static HomeLine.LineCare.Tests.Given;

namespace HomeLine.LineCare.Tests.Sources;

/// <summary>Facts of the trade: common practice, no source.</summary>
public sealed class CommonPractice
{
    [Theory]
    [InlineData("mask.distance", 3)] // everybody within three feet wears a mask
    [InlineData("skin.scrub.chlorhexidine", 30)] // three swabs of ten seconds; agrees with a label
    [InlineData("skin.dry.chlorhexidine.swab", 30)] // half a minute of drying; agrees with a label
    [InlineData("dressing.film.max", 7)]
    [InlineData("port.needle.max", 7)]
    [InlineData("firstdose.before.min", 30)]
    [InlineData("firstdose.after.min", 30)]
    [InlineData("sitelook.patient.max", 1)]
    [InlineData("frequency.weekstart", 7)] // Sunday
    public void The_default_is_the_usual_one(string rule, int value) => Assert.Equal(value, PolicyBook.Default.ValueOf(rule, Mar(8)));

    [Fact]
    public void Wet_lifting_or_soiled_is_changed_at_once_whatever_the_clock_says() =>
        Assert.All([SealFinding.WetThrough, SealFinding.EdgeLifted, SealFinding.Soiled], finding => Assert.Equal(
            WindowStanding.CutShort, Picc().Dressing(Mar(8), 9).Seal(finding, Mar(8), 11).Window(CareItem.Dressing, Mar(8), 12).Standing));

    [Fact]
    public void A_port_without_its_needle_needs_no_dressing() =>
        Assert.Empty(Port().Event(LineEventKind.PortDeaccessed, Mar(3)).Windows(CareItem.Dressing, Mar(8)));

    [Fact]
    public void The_first_gauze_may_be_changed_from_the_next_day_on() =>
        Assert.Equal(Mar(8), Picc().Event(LineEventKind.Inserted, Mar(7), but: e => e with { Dressing = DressingKind.Gauze }).Window(CareItem.Dressing, Mar(8)).OpensOn);
}
