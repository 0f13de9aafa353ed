using HomeLine.LineCare.Lines;
using HomeLine.LineCare.Orders;
using HomeLine.LineCare.Policy;
using HomeLine.LineCare.Recording;
using NodaTime;
using static HomeLine.LineCare.Tests.Given;

namespace HomeLine.LineCare.Tests.Orders;

public sealed class ExceptionsAndFirstVisits
{
    private static BeforeExcepting Excepting(decimal value = 5, string owner = "Hyssop Lanternlow", LocalDate? through = null, string rule = "dressing.film.max") =>
        BeforeExcepting.Of(Patient, rule, value, owner, through, "skin breaks down", PolicyBook.Default, Mar(8));

    [Fact]
    public void An_exception_without_an_end_gets_the_longest_policy_allows()
    {
        var excepting = Excepting();

        Assert.Equal(Mar(8).PlusDays(90), excepting.Exception.Through);
        Assert.Equal((BeforeExcepting.WithoutEnd, ReplyWeight.Tell), (excepting.Replies.Single().Code, excepting.Replies.Single().Weight));
    }

    [Fact]
    public void An_exception_needs_an_owner_an_end_within_reach_and_a_value_that_can_be()
    {
        Assert.Contains(Excepting(owner: "").Replies, r => r is { Code: BeforeExcepting.Unowned, Weight: ReplyWeight.Refuse });
        Assert.Contains(Excepting(through: Mar(8).PlusDays(91)).Replies, r => r is { Code: BeforeExcepting.TooLong, Weight: ReplyWeight.Refuse });
        Assert.Contains(Excepting(value: 0, through: Mar(31)).Replies, r => r is { Code: BeforeExcepting.OutOfRange, Weight: ReplyWeight.Refuse });
        Assert.Contains(Excepting(value: 366, through: Mar(31)).Replies, r => r is { Code: BeforeExcepting.OutOfRange, Weight: ReplyWeight.Refuse });
        Assert.Contains(Excepting(rule: "dressing.cloth.max", through: Mar(31)).Replies, r => r is { Code: BeforeExcepting.OutOfRange, Weight: ReplyWeight.Refuse });
        Assert.Empty(Excepting(through: Mar(31)).Replies);
    }

    [Fact]
    public void An_exception_that_has_ended_stops_applying()
    {
        var given = Picc().Dressing(Mar(3)).But(c => c with { Exceptions = [new CareException(Patient, "dressing.film.max", 5, "lead", Mar(7), "skin")] });

        Assert.Equal(Mar(10), given.Window(CareItem.Dressing, Mar(8)).LastDay);
    }

    /// <summary>42 CFR 484.55(a)(1), looked up: within 48 hours of referral, or of the return home, or on the ordered day.</summary>
    [Fact]
    public void The_first_visit_comes_within_48_hours_of_referral_or_return_home_or_on_the_ordered_day()
    {
        FirstVisit Due(Instant? referred, Instant? home = null, LocalDate? ordered = null) => FirstVisit.Due(referred, At(Mar(9), 9), home, ordered, PolicyBook.Default, Zone);

        Assert.Equal(At(Mar(11), 8), Due(At(Mar(9), 8)).By);
        Assert.Equal(At(Mar(12), 13), Due(At(Mar(9), 8), home: At(Mar(10), 13)).By);
        Assert.Equal(Start(Mar(16)), Due(At(Mar(9), 8), ordered: Mar(15)).By);
    }

    [Fact]
    public void Without_the_referrals_time_the_time_of_entry_counts_and_is_flagged()
    {
        var due = FirstVisit.Due(null, At(Mar(12), 20), null, null, PolicyBook.Default, Zone);

        Assert.True(due.Assumed);
        Assert.Equal(At(Mar(14), 21), due.By);
    }

    /// <summary>42 CFR 484.55(b)(1), looked up.</summary>
    [Fact]
    public void The_comprehensive_assessment_is_done_within_five_days_of_the_start_of_care() =>
        Assert.Equal(Mar(13), FirstVisit.AssessmentBy(Mar(8), PolicyBook.Default));
}
