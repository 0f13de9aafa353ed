using HomeLine.LineCare.Ledger;
using HomeLine.LineCare.Lines;
using HomeLine.LineCare.Recording;
using NodaTime;
using static HomeLine.LineCare.Tests.Given;

namespace HomeLine.LineCare.Tests.Recording;

public sealed class AddingALine
{
    private static readonly Line Second = new() { Id = new LineId("P1-2"), Patient = Patient, Kind = LineKind.Picc, Lumens = [new Lumen("A")], Site = "right basilic", InsertedOn = Mar(8) };

    private static void Says(Given given, Line line, string code, ReplyWeight weight) =>
        Assert.Equal(weight, Assert.Single(BeforeAddingLine.Replies(given.Care, line, given.Policy, At(Mar(8), 12)), reply => reply.Code == code).Weight);

    [Fact]
    public void A_line_placed_today_is_taken_without_a_word() =>
        Assert.Empty(BeforeAddingLine.Replies(new Given().Care, Second, new Given().Policy, At(Mar(8), 12)));

    [Fact]
    public void An_insertion_in_the_future_is_refused() => Says(new Given(), Second with { InsertedOn = Mar(9) }, LineCodes.InsertedInFuture, ReplyWeight.Refuse);

    [Fact]
    public void An_unconfirmed_tip_is_told_to_lock_the_line() => Says(new Given(), Second with { TipConfirmed = false }, DecisionCodes.TipUnconfirmed, ReplyWeight.Tell);

    [Fact]
    public void Lumens_need_a_letter_each() => Says(new Given(), Second with { Lumens = [new Lumen("A"), new Lumen("A")] }, LineCodes.LumensUnclear, ReplyWeight.Refuse);

    [Fact]
    public void Lengths_no_line_can_have_are_refused()
    {
        Says(new Given(), Second with { OutsideLengthCm = -1 }, RecordingCodes.LengthOutOfRange, ReplyWeight.Refuse);
        Says(new Given(), Second with { InsertedLengthCm = 400 }, RecordingCodes.LengthOutOfRange, ReplyWeight.Refuse);
    }

    [Fact]
    public void The_same_kind_on_the_same_side_asks_exchange_or_twice()
    {
        var given = new Given().Line(LineKind.Picc, 1, but: l => l with { Site = "Right cephalic" });

        Says(given, Second, LineCodes.Overlaps, ReplyWeight.Ask);
        Assert.Empty(BeforeAddingLine.Replies(given.Care, Second with { Site = "left basilic" }, given.Policy, At(Mar(8), 12)));
        Assert.Empty(BeforeAddingLine.Replies(given.Care, Second with { Kind = LineKind.Midline }, given.Policy, At(Mar(8), 12)));
        var exchanged = given.Event(LineEventKind.Exchanged, Mar(8));
        Assert.Empty(BeforeAddingLine.Replies(exchanged.Care, Second, given.Policy, At(Mar(8), 12)));
    }

    [Fact]
    public void Healing_before_three_weeks_is_asked_about_and_only_tunneled_lines_heal()
    {
        Says(new Given(), Second with { Kind = LineKind.Tunneled, ExitSiteHealed = true, InsertedOn = new LocalDate(2027, 2, 20) }, LineCodes.HealedEarly, ReplyWeight.Ask);
        Says(new Given(), Second with { ExitSiteHealed = true }, LineCodes.HealedEarly, ReplyWeight.Refuse);
        Assert.Empty(BeforeAddingLine.Replies(new Given().Care,
            Second with { Kind = LineKind.Tunneled, ExitSiteHealed = true, InsertedOn = new LocalDate(2027, 1, 2) }, new Given().Policy, At(Mar(8), 12)));
    }

    [Fact]
    public void A_dialysis_catheter_is_recorded_and_not_for_our_use() => Says(new Given(), Second with { Kind = LineKind.DialysisCatheter }, LineCodes.NotOurs, ReplyWeight.Tell);
}
