using HomeLine.LineCare.Ledger;
using HomeLine.LineCare.Lines;
using HomeLine.LineCare.Policy;
using static HomeLine.LineCare.Tests.Given;

namespace HomeLine.LineCare.Tests.Clocks;

public sealed class LengthsAndMaterials
{
    private static Given Measured(decimal outside) => new Given().Line(LineKind.Picc, 1, but: l => l with { OutsideLengthCm = 2, InsertedLengthCm = 40 })
        .Event(LineEventKind.DressingChanged, Mar(3), but: e => e with { Dressing = DressingKind.Film, OutsideLengthCm = outside });

    [Theory]
    [InlineData(2.0, false, false)]
    [InlineData(2.5, false, false)]
    [InlineData(3.0, false, true)]
    [InlineData(3.5, true, true)]
    [InlineData(4.0, true, true)]
    public void Growth_that_reaches_the_step_asks_and_growth_beyond_it_locks(double outside, bool locks, bool asks)
    {
        var answer = Measured((decimal)outside).AnswerAt(Mar(8));

        Assert.Equal(locks, answer.Locks.Any(l => l.Lumen is null));
        Assert.Equal(asks, answer.Decisions.Any(d => d.Code == DecisionCodes.LengthGrew));
    }

    [Fact]
    public void A_release_accepts_the_length_it_was_made_on_and_only_growth_beyond_it_locks_again()
    {
        var released = Measured(4).Event(LineEventKind.UseReleased, Mar(4));
        var grownAgain = released.Event(LineEventKind.Measured, Mar(6), but: e => e with { OutsideLengthCm = 5.5m });

        Assert.Empty(released.AnswerAt(Mar(8)).Locks);
        Assert.DoesNotContain(released.AnswerAt(Mar(8)).Decisions, d => d.Code == DecisionCodes.LengthGrew);
        Assert.Contains("4 cm accepted on Wed 3 Mar", Assert.Single(grownAgain.AnswerAt(Mar(8)).Locks).Reason, StringComparison.Ordinal);
    }

    [Fact]
    public void A_question_names_what_it_is_about_and_since_when_and_is_the_same_the_next_day()
    {
        var monday = Assert.Single(Measured(3).AnswerAt(Mar(8)).Decisions, d => d.Code == DecisionCodes.LengthGrew);

        Assert.Equal(("E1", Mar(3)), (monday.About, monday.Since));
        Assert.Equal(monday, Assert.Single(Measured(3).AnswerAt(Mar(9)).Decisions, d => d.Code == DecisionCodes.LengthGrew));
    }

    [Fact]
    public void A_line_that_moved_inward_is_asked_about() =>
        Assert.Contains(new Given().Line(LineKind.Picc, 1, but: l => l with { OutsideLengthCm = 5 })
            .Event(LineEventKind.Measured, Mar(3), but: e => e with { OutsideLengthCm = 2.5m }).AnswerAt(Mar(8)).Decisions,
            d => d.Code == DecisionCodes.LengthShrank);

    [Fact]
    public void The_step_is_policy() =>
        Assert.Empty(Measured(3.5m).AgencyRule("length.step", 2, "cm", new(2026, 1, 1)).AnswerAt(Mar(8)).Locks);

    [Fact]
    public void A_removed_catheter_shorter_than_what_went_in_is_an_emergency()
    {
        static CareAnswer Removed(decimal length) => Measured(2).Event(LineEventKind.Removed, Mar(5), but: e => e with { OutsideLengthCm = length }).AnswerAt(Mar(5), 12);

        Assert.Contains(Removed(38).Decisions, d => d.Code == DecisionCodes.RemovedShorter && d.Sentence.Contains("emergency", StringComparison.Ordinal));
        Assert.DoesNotContain(Removed(42).Decisions, d => d.Code == DecisionCodes.RemovedShorter);
    }

    [Fact]
    public void No_chlorhexidine_with_an_allergy_at_any_age()
    {
        var given = Picc().But(c => c with { Risks = RiskFactors.ChlorhexidineAllergy }).Dressing(Mar(3), kind: DressingKind.AntisepticFilm);

        Assert.False(Materials.ChlorhexidineAllowed(given.Care, PolicyBook.Default, Mar(8)).Allowed);
        Assert.Contains(given.AnswerAt(Mar(8)).Decisions, d => d.Code == DecisionCodes.Chlorhexidine);
    }

    [Fact]
    public void An_infant_born_18_January_may_have_it_from_18_March()
    {
        var care = Picc().But(c => c with { BornOn = new(2027, 1, 18) }).Care;

        Assert.False(Materials.ChlorhexidineAllowed(care, PolicyBook.Default, Mar(17)).Allowed);
        Assert.True(Materials.ChlorhexidineAllowed(care, PolicyBook.Default, Mar(18)).Allowed);
    }

    [Fact]
    public void A_missing_birth_date_asks()
    {
        var given = Picc().But(c => c with { BornOn = null });

        Assert.True(Materials.ChlorhexidineAllowed(given.Care, PolicyBook.Default, Mar(8)).Ask);
        Assert.Contains(given.AnswerAt(Mar(8)).Decisions, d => d.Code == DecisionCodes.BirthDateMissing);
    }
}
