using HomeLine.LineCare.Ledger;
using HomeLine.LineCare.Lines;
using NodaTime;
using static HomeLine.LineCare.Tests.Given;

namespace HomeLine.LineCare.Tests.Clocks;

/// <summary>Days on which the clocks change, the leap day, midnight and a second zone.</summary>
public sealed class ClocksAndCalendars
{
    [Fact]
    public void A_film_window_over_the_spring_change_still_ends_at_local_midnight()
    {
        var window = Picc().Dressing(Mar(10), 15).Window(CareItem.Dressing, Mar(15));

        Assert.Equal(Mar(17), window.LastDay);
        Assert.Equal(new LocalTime(0, 0), window.LateFrom.InZone(Zone).TimeOfDay);
        Assert.Equal(Duration.FromHours((24 * 7) + 8), window.LateFrom - At(Mar(10), 15));
    }

    [Fact]
    public void A_96_hour_clock_over_the_spring_change_shows_an_hour_later_on_the_wall() =>
        Assert.Equal(new LocalTime(15, 0), Picc().Connector("A", Mar(12), 14).Window(CareItem.Connector, Mar(15)).Opens.InZone(Zone).TimeOfDay);

    [Fact]
    public void A_96_hour_clock_over_the_autumn_change_shows_an_hour_earlier_on_the_wall()
    {
        var window = Picc().Connector("A", new LocalDate(2027, 11, 5), 14).Window(CareItem.Connector, new LocalDate(2027, 11, 8));

        Assert.Equal(new LocalDate(2027, 11, 9).At(new LocalTime(13, 0)), window.Opens.InZone(Zone).LocalDateTime);
    }

    [Fact]
    public void The_last_day_of_25_hours_is_not_late_before_its_own_end()
    {
        var fallBack = new LocalDate(2027, 11, 7);
        var window = Picc().Dressing(new LocalDate(2027, 10, 31)).Window(CareItem.Dressing, fallBack);

        Assert.Equal(fallBack, window.LastDay);
        Assert.Equal(Duration.FromHours(25), window.LateFrom - window.Target);
        Assert.False(window.IsLateAt(window.LateFrom - Duration.Epsilon));
    }

    [Fact]
    public void A_seal_reported_in_the_hour_that_comes_twice_has_eight_elapsed_hours()
    {
        var twice = Zone.MapLocal(new LocalDate(2027, 11, 7).At(new LocalTime(1, 30)));
        Assert.Equal(2, twice.Count);
        var second = twice.Last().ToInstant();
        var window = Picc().Dressing(new LocalDate(2027, 11, 5))
            .Event(LineEventKind.SealReported, CareMoment.Exactly(second, Zone), e => e with { Seal = SealFinding.Off })
            .Window(CareItem.Dressing, new LocalDate(2027, 11, 7), 3);

        Assert.Equal(second + Duration.FromHours(8), window.LateFrom);
    }

    [Fact]
    public void The_leap_day_is_a_day_like_any_other()
    {
        Assert.Equal(new LocalDate(2028, 2, 29), Picc().Dressing(new LocalDate(2028, 2, 22)).Window(CareItem.Dressing, new LocalDate(2028, 2, 25)).LastDay);
        Assert.Equal(new LocalDate(2028, 3, 7), Picc().Dressing(new LocalDate(2028, 2, 29)).Window(CareItem.Dressing, new LocalDate(2028, 3, 3)).LastDay);
    }

    [Fact]
    public void A_change_at_twenty_past_midnight_belongs_to_the_new_date() =>
        Assert.Equal(Mar(17), Picc().Dressing(Mar(10), 0, 20).Window(CareItem.Dressing, Mar(11)).LastDay);

    [Fact]
    public void The_patients_own_zone_counts_the_days()
    {
        var chicago = DateTimeZoneProviders.Tzdb["America/Chicago"];
        var lateEvening = Mar(4).At(new LocalTime(0, 30)).InZoneStrictly(Zone).ToInstant();
        var given = Picc().But(c => c with { Zone = chicago })
            .Event(LineEventKind.DressingChanged, CareMoment.Exactly(lateEvening, chicago), e => e with { Dressing = DressingKind.Film });

        var window = given.Window(CareItem.Dressing, Mar(8));
        Assert.Equal(Mar(10), window.LastDay);
        Assert.Equal(chicago.AtStartOfDay(Mar(11)).ToInstant(), window.LateFrom);
    }

    [Fact]
    public void A_change_at_three_in_the_afternoon_is_not_late_at_one_past_three_on_the_last_day() =>
        Assert.False(Picc().Dressing(Mar(3), 15).Window(CareItem.Dressing, Mar(10), 15, minute: 1).IsLateAt(At(Mar(10), 15, 1)));

    [Fact]
    public void A_continuous_set_over_the_spring_change_runs_96_elapsed_hours() =>
        Assert.Equal(Mar(16).At(new LocalTime(15, 0)), Picc().Infusion(InfusionKind.Continuous, PerformerKind.Nurse)
            .Event(LineEventKind.SetChanged, Mar(12), 14).Window(CareItem.Set, Mar(13)).LateFrom.InZone(Zone).LocalDateTime);
}
