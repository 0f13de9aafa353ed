using HomeLine.LineCare.Ledger;
using HomeLine.LineCare.Orders;
using HomeLine.LineCare.Policy;
using HomeLine.LineCare.Recording;
using NodaTime;
using static HomeLine.LineCare.Tests.Given;

namespace HomeLine.LineCare.Tests.Sources;

/// <summary>Orders for home health visits, 42 CFR 409.43 (looked up), and the first visit, 42 CFR 484.55 (looked up).</summary>
public sealed class HomeInfusionRegulation
{
    /// <summary>409.43(b): an as-needed order describes the signs that would occasion a visit and limits the number.</summary>
    [Theory]
    [InlineData(3, "dressing lifting, wet or soiled", true)]
    [InlineData(null, "dressing lifting, wet or soiled", false)]
    [InlineData(3, "", false)]
    public void An_as_needed_order_has_signs_and_a_limit(int? limit, string signs, bool good)
    {
        var order = AnOrder(OrderKind.VisitFrequency) with { VisitsPerWeek = 1, AsNeededVisits = limit };
        var replies = BeforeOrdering.Replies(Picc().Care, new OrderDraft(order, AsNeeded: true, Signs: signs), PolicyBook.Default, At(Mar(8), 9));

        Assert.Equal(good, replies.All(reply => reply.Weight != ReplyWeight.Refuse));
    }

    /// <summary>484.55(a)(1): within 48 hours of referral, or of the return home, or on the ordered start of care.</summary>
    [Fact]
    public void The_first_visit_is_due_48_hours_after_the_referral() =>
        Assert.Equal(Duration.FromHours(48), FirstVisit.Due(At(Mar(9), 8), At(Mar(9), 9), null, null, PolicyBook.Default, Zone).By - At(Mar(9), 8));

    /// <summary>484.55(d)(2), from memory, not an oracle: within 48 hours of the return home from a stay of 24 hours or more.</summary>
    [Fact]
    public void From_memory_the_return_home_brings_an_assessment_within_48_hours()
    {
        Assert.Equal(RuleStanding.FromMemory, PolicyBook.Default.InForce("resumption.max", Mar(8))!.Standing);
        var window = Picc().Event(LineEventKind.AdmittedToHospital, Mar(2), but: e => e with { Line = null })
            .Event(LineEventKind.ReturnedHome, Mar(4), but: e => e with { Line = null }).Window(Lines.CareItem.Recertification, Mar(4), 12);
        Assert.Equal(Duration.FromHours(48), window.LateFrom - window.Opens);
    }
}
