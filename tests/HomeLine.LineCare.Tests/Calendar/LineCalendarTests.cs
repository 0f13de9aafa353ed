using HomeLine.LineCare.Calendar;
using HomeLine.LineCare.Ledger;
using HomeLine.LineCare.Lines;
using HomeLine.LineCare.Orders;
using HomeLine.LineCare.Policy;
using HomeLine.LineCare.Windows;
using NodaTime;
using static HomeLine.LineCare.Tests.Given;

namespace HomeLine.LineCare.Tests.Calendar;

/// <summary>Past care and the weeks ahead: arithmetic on the shipped defaults, hand-checkable on a wall calendar.</summary>
public sealed class LineCalendarTests
{
    private static CareCalendar Calendar(Given given, LocalDate now, int weeks = 8, int hour = 6) =>
        LineCalendar.For(given.Care, given.Policy, At(now, hour), weeks);

    private static ItemCalendar Item(Given given, CareItem item, LocalDate now, int weeks = 8, string? lumen = null) =>
        Calendar(given, now, weeks).Items.Single(i => i.Item == item && (lumen is null || i.Lumen == lumen));

    [Fact]
    public void Weekly_film_shows_eight_windows_in_eight_weeks_each_done_on_its_last_day()
    {
        var film = Item(Picc().Dressing(Mar(3)), CareItem.Dressing, Mar(8));

        LocalDate[] days = [.. Enumerable.Range(1, 8).Select(week => Mar(3).PlusDays(7 * week))];
        Assert.Equal(days, film.Ahead.Where(w => w.AssumedOn is not null).Select(w => w.Window.LastDay));
        Assert.Equal(days.Select(day => (LocalDate?)day), film.Ahead.Where(w => w.AssumedOn is not null).Select(w => w.AssumedOn));
        Assert.False(film.Ahead[0].Foreseen);
        Assert.All(film.Ahead.Skip(1), window => Assert.True(window.Foreseen));
        Assert.All(film.Ahead, window => Assert.NotEmpty(window.Window.Because.Sentence));
    }

    [Fact]
    public void A_window_that_opens_inside_the_weeks_and_ends_beyond_them_is_shown_without_assumed_care()
    {
        var last = Item(Picc().Dressing(Mar(3)), CareItem.Dressing, Mar(8), weeks: 1).Ahead[^1];

        Assert.Equal((Mar(15), Mar(17)), (last.Window.OpensOn, last.Window.LastDay));
        Assert.Null(last.AssumedOn);
    }

    [Fact]
    public void The_first_window_ahead_is_the_one_that_runs_now()
    {
        var given = Picc(2).Dressing(Mar(3)).Connector("A", Mar(3)).Connector("B", Mar(5));
        foreach (var window in given.AnswerAt(Mar(8)).Windows)
            Assert.Equal(window, Calendar(given, Mar(8)).Items.Single(i => (i.Item, i.Line, i.Lumen) == (window.Item, window.Line, window.Lumen)).Ahead[0].Window,
                (one, other) => one.LateFrom == other.LateFrom && one.Opens == other.Opens && one.Because.Sentence == other.Because.Sentence);
    }

    [Fact]
    public void Gauze_goes_on_every_second_day_and_a_first_gauze_under_film_becomes_a_weekly_film()
    {
        var gauze = Item(Picc().Dressing(Mar(7), kind: DressingKind.Gauze), CareItem.Dressing, Mar(8), weeks: 1);
        Assert.Equal([Mar(9), Mar(11), Mar(13), Mar(15)], gauze.Ahead.Where(w => w.AssumedOn is not null).Select(w => w.Window.LastDay));

        var first = Item(Picc().Event(LineEventKind.Inserted, Mar(7), but: e => e with { Dressing = DressingKind.GauzeUnderFilm }),
            CareItem.Dressing, Mar(8), weeks: 2);
        Assert.Equal([Mar(9), Mar(16)], first.Ahead.Where(w => w.AssumedOn is not null).Select(w => w.Window.LastDay));
    }

    [Fact]
    public void A_shorter_policy_from_a_day_ahead_shortens_the_windows_from_that_day()
    {
        var film = Item(Picc().Dressing(Mar(3)).AgencyRule("dressing.film.max", 5, "days", Mar(14)), CareItem.Dressing, Mar(8), weeks: 2);

        Assert.Equal([Mar(10), Mar(15), Mar(20)], film.Ahead.Where(w => w.AssumedOn is not null).Select(w => w.Window.LastDay));
    }

    [Fact]
    public void A_late_dressing_is_assumed_today_and_an_unknown_date_at_the_first_contact()
    {
        Assert.Equal(Mar(8), Item(Picc().Dressing(new LocalDate(2027, 2, 24)), CareItem.Dressing, Mar(8)).Ahead[0].AssumedOn);

        var unknown = Item(Picc().Event(LineEventKind.DressingChanged, null, e => e with { Dressing = DressingKind.Film }), CareItem.Dressing, Mar(8), weeks: 2);
        Assert.Equal(WindowStanding.DateUnknown, unknown.Ahead[0].Window.Standing);
        Assert.Equal(Mar(8), unknown.Ahead[0].AssumedOn);
        Assert.Equal(Mar(15), unknown.Ahead[1].Window.LastDay);
    }

    [Fact]
    public void After_an_ordered_removal_only_the_site_is_looked_at()
    {
        var given = Picc().Dressing(Mar(5)).Connector("A", Mar(5)).Order(AnOrder(OrderKind.Removal) with { Line = First, Dates = [Mar(11)] });
        var calendar = Calendar(given, Mar(8));

        Assert.Empty(calendar.Items.Single(i => i.Item == CareItem.Dressing).Ahead);
        Assert.Equal(Mar(11), calendar.Items.Single(i => i.Item == CareItem.OrderedService).Ahead.Single().AssumedOn);
        Assert.Equal(Mar(14), calendar.Items.Single(i => i.Item == CareItem.RemovalSiteCheck).Ahead.Single().AssumedOn);
    }

    [Fact]
    public void Nothing_is_assumed_while_the_patient_is_in_hospital()
    {
        var given = Picc().Dressing(Mar(1)).Event(LineEventKind.AdmittedToHospital, Mar(6), but: e => e with { Line = null });
        var calendar = Calendar(given, Mar(8));

        Assert.NotNull(calendar.OnHold);
        Assert.All(calendar.Items.SelectMany(i => i.Ahead), window => Assert.Null(window.AssumedOn));
        Assert.Equal(Mar(8), calendar.Items.Single(i => i.Item == CareItem.Dressing).Ahead.Single().Window.LastDay);
    }

    [Fact]
    public void Care_waits_for_the_end_of_a_hold_and_is_late_when_it_comes()
    {
        var given = Picc().Dressing(Mar(3)).But(care => care with { Holds = [new Hold(Patient, Mar(9), Mar(12), "away")] });

        Assert.Equal(Mar(13), Item(given, CareItem.Dressing, Mar(8)).Ahead[0].AssumedOn);
    }

    [Fact]
    public void A_nightly_nutrition_set_is_shown_once_and_a_continuous_set_goes_on()
    {
        var nightly = Picc(2).Infusion(InfusionKind.ParenteralNutrition, PerformerKind.Nurse).Event(LineEventKind.SetChanged, Mar(8), 1, but: e => e with { LumensUsed = ["A"] });
        Assert.Single(Item(nightly, CareItem.Set, Mar(8)).Ahead);

        var running = Picc().Infusion(InfusionKind.Continuous, PerformerKind.Nurse).Event(LineEventKind.SetChanged, Mar(4), 14, but: e => e with { LumensUsed = ["A"] });
        Assert.Equal([At(Mar(8), 14), At(Mar(12), 14), At(Mar(16), 15)], Item(running, CareItem.Set, Mar(8), weeks: 1).Ahead.Select(w => w.Window.LateFrom));
    }

    [Fact]
    public void Past_care_says_what_it_reset_and_how_it_stood_to_its_window()
    {
        var given = Picc(2).Dressing(Mar(1)).Connector("A", Mar(1)).Connector("A", Mar(3)).Dressing(Mar(8)).Dressing(Mar(20));
        var calendar = Calendar(given, Mar(22));

        Assert.Equal([DoneWhen.NoWindow, DoneWhen.InsideTheWindow, DoneWhen.Late], calendar.Items.Single(i => i.Item == CareItem.Dressing).Past.Select(p => p.When));
        Assert.Equal([DoneWhen.NoWindow, DoneWhen.BeforeItOpened], calendar.Items.Single(i => i.Item == CareItem.Connector && i.Lumen == "A").Past.Select(p => p.When));
        Assert.Empty(calendar.Items.Single(i => i.Item == CareItem.Connector && i.Lumen == "B").Past);
    }

    [Fact]
    public void A_call_a_refusal_and_a_reinforced_edge_are_listed_and_touch_no_clock()
    {
        var calendar = Calendar(Picc().Dressing(Mar(3)).Event(LineEventKind.PhoneCall, Mar(4)).Event(LineEventKind.Refused, Mar(5))
            .Event(LineEventKind.DressingReinforced, Mar(6)), Mar(8));

        Assert.Equal(4, calendar.Events.Length);
        Assert.All(calendar.Events.Skip(1), entry => Assert.Empty(entry.Touched));
    }

    [Fact]
    public void A_report_cuts_the_dressing_clock_short_and_the_full_change_starts_it_again()
    {
        var past = Item(Picc().Dressing(Mar(3)).Seal(SealFinding.EdgeLifted, Mar(6), 8).Dressing(Mar(6), 14), CareItem.Dressing, Mar(8)).Past;

        Assert.Equal([ClockChange.Started, ClockChange.CutShort, ClockChange.Reset], past.Select(p => p.Change));
        Assert.Equal(DoneWhen.InsideTheWindow, past[^1].When);
    }

    [Fact]
    public void A_policy_made_later_does_not_make_past_care_late()
    {
        var given = Picc().Dressing(new LocalDate(2027, 2, 1)).Dressing(new LocalDate(2027, 2, 8)).AgencyRule("dressing.film.max", 5, "days", Mar(8));

        Assert.Equal(DoneWhen.InsideTheWindow, Item(given, CareItem.Dressing, Mar(9)).Past[^1].When);
    }

    [Theory]
    [InlineData(0)]
    [InlineData(27)]
    public void Weeks_outside_one_to_twenty_six_are_refused(int weeks) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => LineCalendar.For(Picc().Care, PolicyBook.Default, At(Mar(8), 6), weeks));
}
