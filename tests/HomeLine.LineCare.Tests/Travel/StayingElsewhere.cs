using CsCheck;
using HomeLine.LineCare.Ledger;
using HomeLine.LineCare.Lines;
using HomeLine.LineCare.Recording;
using HomeLine.LineCare.Travel;
using NodaTime;
using static HomeLine.LineCare.Tests.Given;

namespace HomeLine.LineCare.Tests.Travel;

/// <summary>A patient who travels: days are those of the wall clock there, hours are hours. Common practice, no source.</summary>
public sealed class StayingElsewhere
{
    private static readonly DateTimeZone Chicago = DateTimeZoneProviders.Tzdb["America/Chicago"];
    private static readonly DateTimeZone London = DateTimeZoneProviders.Tzdb["Europe/London"];

    private static Given Away(Given given, DateTimeZone zone, LocalDate from, LocalDate through) =>
        given.But(care => care with { Zone = TravellingZone.Of(Zone, [new Stay(from, through, zone, "Westling")]) });

    [Fact]
    public void A_film_due_while_away_is_late_from_midnight_of_the_place()
    {
        var window = Away(Picc().Dressing(Mar(3)), Chicago, Mar(9), Mar(14)).Window(CareItem.Dressing, Mar(8));

        Assert.Equal(Mar(10), window.LastDay);
        Assert.Equal(Chicago.AtStartOfDay(Mar(11)).ToInstant(), window.LateFrom);
    }

    [Fact]
    public void Back_home_the_homes_midnight_counts_again() =>
        Assert.Equal(Start(Mar(18)), Away(Picc().Dressing(Mar(10)), Chicago, Mar(9), Mar(14)).Window(CareItem.Dressing, Mar(16)).LateFrom);

    [Fact]
    public void Care_given_late_at_night_far_away_belongs_to_the_day_there()
    {
        var lateThere = Mar(10).At(new LocalTime(23, 30)).InZoneLeniently(Chicago).ToInstant();
        var given = Away(Picc(), Chicago, Mar(9), Mar(14));

        Assert.Equal(Mar(10), CareMoment.Exactly(lateThere, given.Care.Zone).Date);
        Assert.Equal(Mar(11), CareMoment.Exactly(lateThere, Zone).Date);
    }

    [Fact]
    public void Hours_do_not_care_where_they_pass()
    {
        var set = Picc().Infusion(InfusionKind.Continuous, PerformerKind.Nurse).Event(LineEventKind.SetChanged, Mar(8), 20);

        Assert.Equal(set.Window(CareItem.Set, Mar(9)).LateFrom, Away(set, London, Mar(9), Mar(20)).Window(CareItem.Set, Mar(9)).LateFrom);
    }

    [Fact]
    public void Every_day_starts_once_and_in_order_wherever_the_patient_is() =>
        Gen.Select(Gen.Int[0, 20], Gen.Int[0, 10], Gen.Bool).Sample((first, length, east) =>
        {
            var zone = TravellingZone.Of(Zone, [new Stay(Mar(1).PlusDays(first), Mar(1).PlusDays(first + length), east ? London : Chicago, "")]);
            var starts = Enumerable.Range(-2, 45).Select(i => zone.AtStartOfDay(Mar(1).PlusDays(i)).ToInstant()).ToList();
            return starts.Zip(starts.Skip(1)).All(pair => pair.First < pair.Second && pair.Second - pair.First is var day && day >= Duration.FromHours(18) && day <= Duration.FromHours(30));
        });

    [Fact]
    public void Without_a_stay_it_is_the_home()
    {
        Assert.Same(Zone, TravellingZone.Of(Zone, []));
        Assert.Equal("Marrow", Stay.StateOn("Marrow", [new Stay(Mar(9), Mar(14), Chicago, "Westling")], Mar(15)));
        Assert.Equal("Westling", Stay.StateOn("Marrow", [new Stay(Mar(9), Mar(14), Chicago, "Westling")], Mar(14)));
    }

    [Fact]
    public void A_stay_outside_every_licence_is_told_with_what_can_be_done_and_one_that_overlaps_is_refused()
    {
        var stay = new Stay(Mar(9), Mar(14), Chicago, "Farland");

        Assert.Equal((Stay.Unlicensed, ReplyWeight.Tell), (Assert.Single(stay.Replies([], ["Marrow"])).Code, stay.Replies([], ["Marrow"])[0].Weight));
        Assert.Empty(stay.Replies([], ["Marrow", "Farland"]));
        Assert.Equal(ReplyWeight.Refuse, Assert.Single(stay.Replies([new Stay(Mar(14), Mar(15), London, "Farland")], ["Farland"])).Weight);
        Assert.Equal(ReplyWeight.Refuse, Assert.Single((stay with { Through = Mar(8) }).Replies([], ["Farland"])).Weight);
    }

    [Theory]
    [InlineData("soap?", true)]
    [InlineData("CHG swabs burn", true)]
    [InlineData("", false)]
    public void An_allergy_in_free_text_is_kept_and_asked_about(string text, bool asks) =>
        Assert.Equal(asks, AllergyNote.Ask(text, RiskFactors.None) is { Code: AllergyNote.Uncoded });

    [Fact]
    public void An_allergy_on_file_is_not_asked_about_again() => Assert.Null(AllergyNote.Ask("chlorhexidine", RiskFactors.ChlorhexidineAllergy));
}
