using HomeLine.LineCare.Ledger;
using HomeLine.LineCare.Lines;
using NodaTime;
using static HomeLine.LineCare.Tests.Given;

namespace HomeLine.LineCare.Tests;

public sealed class WhatWouldMoveTests
{
    private static Given Weekly => Picc(2).Dressing(Mar(3)).Connector("A", Mar(3)).Connector("B", Mar(3));

    [Fact]
    public void Recording_a_dressing_moves_the_dressing_and_what_goes_with_it_and_nothing_else()
    {
        var entry = Weekly.Dressing(Mar(9), 9).Care.Events[^1];

        var moved = WhatWouldMove.If(Weekly.Care, [entry], Weekly.Policy, At(Mar(9), 10));

        Assert.Equal([CareItem.Dressing, CareItem.Securement, CareItem.OutsideLength], moved.Select(m => m.After!.Item).Order());
        Assert.All(moved, m => Assert.Equal((Mar(10), Mar(16)), (m.Before!.LastDay, m.After!.LastDay)));
    }

    [Fact]
    public void What_is_shown_before_saving_equals_what_shows_after_it()
    {
        var after = Weekly.Seal(SealFinding.EdgeLifted, Mar(9), 8);

        var shown = Assert.Single(
            WhatWouldMove.If(Weekly.Care, [after.Care.Events[^1]], Weekly.Policy, At(Mar(9), 9)), m => m.After?.Item == CareItem.Dressing).After!;

        var stands = after.Window(CareItem.Dressing, Mar(9), 9);
        Assert.Equal((stands.Opens, stands.Target, stands.LateFrom, stands.Because.Sentence), (shown.Opens, shown.Target, shown.LateFrom, shown.Because.Sentence));
    }

    [Fact]
    public void A_removal_makes_windows_disappear_and_the_site_check_appear()
    {
        var entry = Weekly.Event(LineEventKind.Removed, Mar(9)).Care.Events[^1];

        var moved = WhatWouldMove.If(Weekly.Care, [entry], Weekly.Policy, At(Mar(9), 12));

        Assert.Equal(CareItem.RemovalSiteCheck, Assert.Single(moved, m => m.Before is null).After!.Item);
        Assert.All(moved.Where(m => m.Before is not null), m => Assert.Null(m.After));
    }

    [Fact]
    public void A_phone_call_moves_nothing() =>
        Assert.Empty(WhatWouldMove.If(Weekly.Care, [Weekly.Event(LineEventKind.PhoneCall, Mar(9), 9).Care.Events[^1]], Weekly.Policy, At(Mar(9), 10)));

    [Fact]
    public void A_weekly_film_shows_eight_windows_in_eight_weeks()
    {
        var ahead = Picc().Dressing(Mar(8)).Window(CareItem.Dressing, Mar(8), 12).Ahead(Mar(8).PlusWeeks(8));

        Assert.Equal(8, ahead.Length);
        Assert.Equal((Mar(13), Mar(15)), ahead[0]);
        Assert.All(ahead.Zip(ahead.Skip(1)), pair => Assert.Equal(7, Period.DaysBetween(pair.First.Last, pair.Second.Last)));
    }

    [Fact]
    public void An_hour_clock_across_the_spring_change_is_told_by_the_wall_clock()
    {
        var sentence = Picc().Infusion(InfusionKind.ParenteralNutrition, PerformerKind.Nurse)
            .Event(LineEventKind.SetChanged, Mar(13), 20, 0, e => e with { LumensUsed = ["A"] }).Window(CareItem.Set, Mar(13), 21).Because.Sentence;

        Assert.EndsWith("the clocks change in between, it ends Sun 14 Mar 21:00 by the wall clock.", sentence, StringComparison.Ordinal);
    }

    [Fact]
    public void A_date_no_nurse_saw_says_where_it_comes_from() =>
        Assert.Contains("(from the discharge paper)", Picc().Event(LineEventKind.DressingChanged, Mar(3), but: e => e with
        {
            Dressing = DressingKind.Film,
            Performer = PerformerKind.Outside,
            PerformerName = "the ward",
            Certainty = Certainty.DischargePaper,
        }).Window(CareItem.Dressing, Mar(8)).Because.Sentence, StringComparison.Ordinal);

    [Fact]
    public void A_start_of_care_edited_lists_what_it_moves()
    {
        var given = Picc().Dressing(Mar(5));
        var moved = WhatWouldMove.Between(
            given.AnswerAt(Mar(8)), given.But(c => c with { CareStartedOn = new LocalDate(2027, 1, 11) }).AnswerAt(Mar(8)));

        Assert.Equal(CareItem.Recertification, Assert.Single(moved).After!.Item);
    }

    [Fact]
    public void A_policy_edited_lists_what_it_moves_before_it_is_approved()
    {
        var given = Picc().Dressing(Mar(5)).Connector("A", Mar(5));
        var shorter = given.AgencyRule("dressing.film.max", 5, "days", Mar(9));
        var moved = WhatWouldMove.Between(given.AnswerAt(Mar(8)), shorter.AnswerAt(Mar(8)));

        Assert.Equal([CareItem.Dressing, CareItem.Securement, CareItem.OutsideLength], moved.Select(m => m.After!.Item).Order());
        Assert.All(moved, m => Assert.Equal((Mar(12), Mar(10)), (m.Before!.LastDay, m.After!.LastDay)));
    }
}
