using HomeLine.LineCare.Ledger;
using HomeLine.LineCare.Lines;
using HomeLine.LineCare.Orders;
using HomeLine.LineCare.Policy;
using HomeLine.LineCare.Windows;
using NodaTime;
using static HomeLine.LineCare.Tests.Given;

namespace HomeLine.LineCare.Tests;

/// <summary>Hand-worked examples; arithmetic only, the intervals are the shipped defaults.</summary>
public sealed class WorkedExamples
{
    [Fact]
    public void Film_changed_Wednesday_may_be_changed_Monday_to_Wednesday_and_is_late_from_Thursday_midnight()
    {
        var window = Picc().Dressing(Mar(3), 15, 10).Window(CareItem.Dressing, Mar(8));

        Assert.Equal((Mar(8), Mar(10)), (window.OpensOn, window.LastDay));
        Assert.Equal(Start(Mar(8)), window.Opens);
        Assert.Equal(Start(Mar(11)), window.LateFrom);
        Assert.False(window.IsLateAt(At(Mar(10), 23, 59)));
        Assert.True(window.IsLateAt(Start(Mar(11))));
        Assert.StartsWith("Film changed Wed 3 Mar 15:10; at least every 7 days (", window.Because.Sentence, StringComparison.Ordinal);
    }

    [Fact]
    public void Gauze_changed_Sunday_is_due_Monday_to_Tuesday()
    {
        var window = Picc().Dressing(Mar(7), kind: DressingKind.Gauze).Window(CareItem.Dressing, Mar(8));

        Assert.Equal((Mar(8), Mar(9)), (window.OpensOn, window.LastDay));
    }

    [Fact]
    public void A_connector_opens_after_96_elapsed_hours_and_ends_with_the_seventh_day()
    {
        var window = Picc().Connector("A", Mar(4), 14).Window(CareItem.Connector, Mar(8));

        Assert.Equal(At(Mar(8), 14), window.Opens);
        Assert.Equal(Mar(11), window.LastDay);
        Assert.Equal(Start(Mar(12)), window.LateFrom);
    }

    [Fact]
    public void A_nutrition_set_spiked_the_evening_before_the_clocks_go_forward_ends_24_elapsed_hours_later()
    {
        var given = Picc(2).Infusion(InfusionKind.ParenteralNutrition, PerformerKind.Caregiver).Validated(CareItem.Set, Mar(31))
            .Event(LineEventKind.SetChanged, Mar(13), 20, 0, e => e with { LumensUsed = ["A"], Performer = PerformerKind.Caregiver, PerformerName = "spouse" });

        Assert.Equal(At(Mar(14), 21), given.Window(CareItem.Set, Mar(13), 22).LateFrom);
        Assert.Equal(At(Mar(14), 9), At(Mar(13), 20) + Duration.FromHours(12));

        var takenDown = given.Event(LineEventKind.DoseGiven, Mar(14), 9, 0, e => e with { LumensUsed = ["A"], Performer = PerformerKind.Caregiver });
        Assert.Empty(takenDown.Windows(CareItem.Set, Mar(14), 10));
    }

    [Fact]
    public void Film_then_gauze_then_film_moves_the_due_day_each_time()
    {
        var film = Picc().Dressing(Mar(1));
        var gauze = film.Dressing(Mar(5), kind: DressingKind.Gauze);
        var again = gauze.Dressing(Mar(7));

        Assert.Equal(Mar(8), film.Window(CareItem.Dressing, Mar(5), 6).LastDay);
        Assert.Equal(Mar(7), gauze.Window(CareItem.Dressing, Mar(6)).LastDay);
        Assert.Equal(Mar(14), again.Window(CareItem.Dressing, Mar(8)).LastDay);
    }

    [Fact]
    public void Care_started_11_January_is_recertified_7_to_11_March()
    {
        var window = Picc().But(care => care with { CareStartedOn = new LocalDate(2027, 1, 11) }).Window(CareItem.Recertification, Mar(1));

        Assert.Equal((Mar(7), Mar(11)), (window.OpensOn, window.LastDay));
    }

    [Fact]
    public void An_idle_port_flushed_11_February_is_due_11_March()
    {
        var window = Port().Event(LineEventKind.Flushed, new LocalDate(2027, 2, 11)).Window(CareItem.PortFlush, Mar(8));

        Assert.Equal((Mar(4), Mar(11)), (window.OpensOn, window.LastDay));
    }

    [Fact]
    public void Home_from_hospital_without_a_date_means_due_at_the_first_contact()
    {
        var given = Picc().Dressing(Mar(1)).Event(LineEventKind.AdmittedToHospital, Mar(6), but: e => e with { Line = null });
        Assert.Equal(Mar(8), given.Window(CareItem.Dressing, Mar(7)).LastDay);

        var window = given.Event(LineEventKind.ReturnedHome, Mar(10), but: e => e with { Line = null }).Window(CareItem.Dressing, Mar(12));

        Assert.Equal(WindowStanding.DateUnknown, window.Standing);
        Assert.Equal(Mar(12), window.LastDay);
        Assert.False(window.IsLateAt(At(Mar(20), 8)));
    }

    [Fact]
    public void Two_lumens_keep_their_own_connector_dates()
    {
        var given = Picc(2).Connector("A", Mar(1)).Connector("B", Mar(1))
            .Event(LineEventKind.ConnectorCompromised, Mar(3), 9, 0, e => e with { LumensUsed = ["B"] }).Connector("B", Mar(3), 10);

        var a = given.Window(CareItem.Connector, Mar(8), lumen: "A");
        var b = given.Window(CareItem.Connector, Mar(8), lumen: "B");

        Assert.Equal(Mar(8), a.LastDay);
        Assert.Equal(Mar(10), b.LastDay);
        Assert.True(b.Opens <= At(Mar(8), 10), "120 hours later lumen B may be changed");
    }

    [Fact]
    public void A_policy_made_shorter_bites_on_the_day_it_takes_effect()
    {
        var given = Picc().Dressing(new LocalDate(2027, 2, 27)).AgencyRule("dressing.film.max", 5, "days", Mar(4));

        var window = given.Window(CareItem.Dressing, Mar(4));

        Assert.Equal(Mar(4), window.LastDay);
        Assert.True(window.Opens <= At(Mar(4), 6));
    }

    [Fact]
    public void A_late_entry_starts_the_clock_from_the_day_it_was_done()
    {
        var given = Picc().Dressing(new LocalDate(2027, 2, 27)).Event(
            LineEventKind.DressingChanged, Mar(2), 11, 0, e => e with { Dressing = DressingKind.Film, RecordedAt = At(Mar(5), 17) });

        var window = given.Window(CareItem.Dressing, Mar(5), 18);

        Assert.Equal((Mar(7), Mar(9)), (window.OpensOn, window.LastDay));
        Assert.Equal(Mar(2), window.Because.AnchorDate);
    }

    [Fact]
    public void Care_always_on_day_five_is_73_changes_a_year_instead_of_52()
    {
        Assert.Equal(73, Changes(5));
        Assert.Equal(52, Changes(7));
        Assert.Equal(0.40, (Changes(5) - Changes(7)) / (double)Changes(7), 2);

        static int Changes(int everyDays) => 365 / everyDays;
    }

    private static readonly CareOrder OnceAWeek = AnOrder(OrderKind.VisitFrequency) with { VisitsPerWeek = 1, AsNeededVisits = 3, AsNeededUsed = 1 };

    [Fact]
    public void Once_a_week_is_met_by_a_Sunday_and_the_Saturday_after_next_while_the_dressing_is_late_since_Monday()
    {
        var weeks = VisitFrequency.Weeks(OnceAWeek, [Mar(7), Mar(20)], PolicyBook.Default);

        Assert.All(weeks, week => Assert.Equal(FrequencyStanding.Met, week.Standing));
        Assert.Equal(13, Period.DaysBetween(Mar(7), Mar(20)));
        var dressing = Picc().Dressing(Mar(7)).Window(CareItem.Dressing, Mar(15));
        Assert.Equal(Start(Mar(15)), dressing.LateFrom);
        Assert.True(dressing.IsLateAt(At(Mar(15), 6)));
    }

    [Fact]
    public void A_Monday_and_a_Saturday_of_one_week_keep_the_clock_and_exceed_the_order()
    {
        var week = Assert.Single(VisitFrequency.Weeks(OnceAWeek, [Mar(8), Mar(13)], PolicyBook.Default));

        Assert.Equal((FrequencyStanding.Exceeded, 1), (week.Standing, week.Beyond));
        Assert.Equal(2, VisitFrequency.AsNeededLeft(OnceAWeek));
        Assert.Equal(Mar(13), Picc().Dressing(Mar(8)).Window(CareItem.Dressing, Mar(9)).OpensOn);
    }

    /// <summary>The form of Bice and Boxerman is named in Ma et al., Med Care 2021; the formula is from memory.</summary>
    [Fact]
    public void Six_visits_by_two_nurses_four_and_two_have_a_continuity_of_0_467()
    {
        Assert.Equal(0.467, Continuity.Index([4, 2])!.Value, 3);
    }
}
