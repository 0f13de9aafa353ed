using CsCheck;
using HomeLine.LineCare.Lines;
using HomeLine.LineCare.Policy;
using HomeLine.LineCare.RedFlags;
using static HomeLine.LineCare.RedFlags.ScreenAnswer;
using static HomeLine.LineCare.Tests.Given;

namespace HomeLine.LineCare.Tests.RedFlags;

public sealed class Screening
{
    private static readonly ScreenContext Adult = new(false, false, false);

    private static Dictionary<string, ScreenAnswer> AllNo(ScreenContext context) =>
        SymptomScreen.Questions(context).ToDictionary(question => question.Id, _ => No);

    private static bool IsRedFlag(ScreenQuestion question) => question.Class is ScreenClass.Emergency or ScreenClass.UrgentClinician;

    [Fact]
    public void The_questions_come_in_order_emergency_first_same_day_last()
    {
        var classes = SymptomScreen.Questions(ScreenContext.Unknown).Select(question => question.Class).ToList();

        Assert.Equal(classes.Order(), classes);
        Assert.Equal("breathing", SymptomScreen.Evaluate(new Dictionary<string, ScreenAnswer>(), Adult).Next!.Id);
    }

    [Fact]
    public void Each_question_is_one_short_sentence_and_has_its_own_id()
    {
        var questions = SymptomScreen.Questions(ScreenContext.Unknown);

        Assert.Equal(questions.Length, questions.Select(question => question.Id).Distinct().Count());
        Assert.All(questions, question =>
        {
            Assert.EndsWith("?", question.Text, StringComparison.Ordinal);
            Assert.Equal(1, question.Text.Count(mark => mark == '?'));
            Assert.InRange(question.Text.Split(' ').Length, 3, 16);
        });
    }

    [Fact]
    public void All_no_may_go_on_and_never_says_that_all_is_well()
    {
        var outcome = SymptomScreen.Evaluate(AllNo(Adult), Adult);

        Assert.True(outcome.MaySchedule);
        Assert.Equal("No red flag was reported.", outcome.Wording[0]);
        Assert.Null(outcome.Next);
        Assert.DoesNotContain(outcome.Wording, line => line.Contains("safe", StringComparison.OrdinalIgnoreCase));
    }

    [Theory]
    [InlineData(Yes)]
    [InlineData(DoNotKnow)]
    public void Trouble_breathing_stops_at_once_with_the_emergency_number_first(ScreenAnswer answer)
    {
        var outcome = SymptomScreen.Evaluate(new Dictionary<string, ScreenAnswer> { ["breathing"] = answer }, Adult);

        Assert.Equal(ScreenClass.Emergency, outcome.Class);
        Assert.Equal("breathing", outcome.Stopped!.Id);
        Assert.Null(outcome.Next);
        Assert.False(outcome.MaySchedule);
        Assert.Equal("Call the emergency number now.", outcome.Wording[0]);
    }

    [Fact]
    public void Chills_after_a_flush_stop_for_a_clinician_and_the_line_is_not_used()
    {
        var answers = AllNo(Adult);
        answers["chills"] = Yes;
        answers["dressing-lifting"] = Yes;

        var outcome = SymptomScreen.Evaluate(answers, Adult);

        Assert.Equal((ScreenClass.UrgentClinician, "chills"), (outcome.Class, outcome.Stopped!.Id));
        Assert.Equal("Do not use the line until a nurse has spoken with you.", outcome.Wording[0]);
        Assert.Contains(outcome.Wording, line => line.Contains("emergency number", StringComparison.Ordinal));
    }

    [Fact]
    public void An_emergency_counts_before_an_urgent_answer_whatever_was_asked_first() =>
        Assert.Equal(ScreenClass.Emergency, SymptomScreen.Evaluate(
            new Dictionary<string, ScreenAnswer> { ["fever"] = Yes, ["air"] = Yes }, Adult).Class);

    [Fact]
    public void A_heart_infusion_is_never_told_to_stop()
    {
        var outcome = SymptomScreen.Evaluate(new Dictionary<string, ScreenAnswer> { ["fever"] = Yes }, new ScreenContext(true, false, false));

        Assert.Contains(outcome.Wording, line => line.Contains("Do not stop the heart infusion", StringComparison.Ordinal));
        Assert.DoesNotContain(outcome.Wording, line => line.StartsWith("Do not use the line until", StringComparison.Ordinal));
    }

    [Fact]
    public void A_broken_line_brings_the_clamp_and_air_the_left_side()
    {
        Assert.Contains(Emergency("line-broken"), line => line.Contains("between the break and the body", StringComparison.Ordinal));
        Assert.Contains(Emergency("air"), line => line.Contains("left side", StringComparison.Ordinal));
        Assert.Contains(Emergency("bleeding"), line => line.Contains("Press", StringComparison.Ordinal));

        static IEnumerable<string> Emergency(string id) => SymptomScreen.Evaluate(new Dictionary<string, ScreenAnswer> { [id] = Yes }, Adult).Wording;
    }

    [Fact]
    public void A_lifting_dressing_alone_is_same_day_with_interim_wording()
    {
        var answers = AllNo(Adult);
        answers["dressing-lifting"] = Yes;

        var outcome = SymptomScreen.Evaluate(answers, Adult);

        Assert.Equal((ScreenClass.SameDay, true), (outcome.Class, outcome.MaySchedule));
        Assert.All(ScreenWording.InterimForBrokenSeal, line => Assert.Contains(line, outcome.Wording));
    }

    [Fact]
    public void A_blocked_lumen_is_never_forced()
    {
        var answers = AllNo(Adult);
        answers["cannot-flush"] = Yes;

        Assert.Contains(SymptomScreen.Evaluate(answers, Adult).Wording, line => line.StartsWith("Do not force it.", StringComparison.Ordinal));
    }

    [Fact]
    public void A_misspelt_question_is_refused_so_that_no_yes_gets_lost() =>
        Assert.Throws<ArgumentException>(() => SymptomScreen.Evaluate(new Dictionary<string, ScreenAnswer> { ["fevre"] = Yes }, Adult));

    [Fact]
    public void A_child_a_nutrition_patient_and_a_heart_infusion_bring_their_own_questions()
    {
        Assert.DoesNotContain(SymptomScreen.Questions(Adult), q => q.Id is "seems-unwell" or "nutrition-stopped" or "heart-infusion-stopped");
        Assert.Contains(SymptomScreen.Questions(ScreenContext.Of(Picc().But(c => c with { BornOn = new(2021, 1, 1) }).Care, PolicyBook.Default, Mar(8))), q => q.Id == "seems-unwell");
        Assert.Contains(SymptomScreen.Questions(ScreenContext.Of(Picc().But(c => c with { BornOn = null }).Care, PolicyBook.Default, Mar(8))), q => q.Id == "seems-unwell");
        Assert.Contains(
            SymptomScreen.Questions(ScreenContext.Of(Picc().Infusion(InfusionKind.ParenteralNutrition, PerformerKind.Caregiver).Care, PolicyBook.Default, Mar(8))),
            q => q.Id == "nutrition-stopped");
        Assert.Contains(
            SymptomScreen.Questions(ScreenContext.Of(Picc().Infusion(InfusionKind.Continuous, PerformerKind.Nurse, never: true).Care, PolicyBook.Default, Mar(8))),
            q => q.Id == "heart-infusion-stopped");
    }

    [Fact]
    public void The_fever_and_the_adult_age_are_policy()
    {
        var given = Picc().AgencyRule("fever.call", 37.8m, "°C", new(2027, 1, 1)).AgencyRule("screen.adult.age", 60, "years", new(2027, 1, 1));
        var context = ScreenContext.Of(given.Care, given.Policy, Mar(8));

        Assert.True(context.Child);
        Assert.Equal("Is the temperature 37.8 °C (100.0 °F) or higher?", SymptomScreen.Questions(context).Single(q => q.Id == "fever").Text);
        Assert.Equal("Is the temperature 38.0 °C (100.4 °F) or higher?", SymptomScreen.Questions(Adult).Single(q => q.Id == "fever").Text);
    }

    /// <summary>The table of the screen, row by row in the order asked; our own default, for the clinical lead to sign.</summary>
    [Fact]
    public void The_screen_is_complete_and_in_order() => Assert.Equal(
        [
            "breathing", "chest-pain", "blue", "fainting", "confusion", "seizure", "one-sided", "face-swelling", "wheeze", "hives", "bleeding",
            "line-broken", "line-out", "air", "heart-infusion-unwell",
            "fever", "chills", "pus", "redness", "tunnel-pain", "new-swelling", "line-longer", "line-moved", "leaking", "infusing-pain",
            "heart-infusion-stopped", "nutrition-stopped", "seems-unwell", "low-sugar-signs", "high-sugar-signs",
            "dressing-lifting", "dressing-wet", "dressing-soiled", "blood-under", "connector", "cannot-flush", "pump-alarm", "rash", "missed-dose",
        ],
        SymptomScreen.Questions(ScreenContext.Unknown).Select(question => question.Id));

    [Fact]
    public void No_set_of_answers_with_a_red_flag_or_a_skipped_one_may_schedule()
    {
        var contexts = Gen.Select(Gen.Bool, Gen.Bool, Gen.Bool, (heart, nutrition, child) => new ScreenContext(heart, nutrition, child));
        var picks = Gen.Enum<ScreenAnswer>().Array[40];
        Gen.Select(contexts, picks, Gen.Int[0, 3]).Sample((context, answers, mostlyNo) =>
        {
            var questions = SymptomScreen.Questions(context);
            var given = questions.Select((q, i) => (q, Answer: mostlyNo > 0 && i % 7 != mostlyNo ? No : answers[i])).ToList();

            var outcome = SymptomScreen.Evaluate(given.ToDictionary(pair => pair.q.Id, pair => pair.Answer), context);

            var clear = given.Where(pair => IsRedFlag(pair.q)).All(pair => pair.Answer == No);
            var flagged = given.Any(pair => IsRedFlag(pair.q) && pair.Answer is Yes or DoNotKnow);
            return outcome.MaySchedule == clear && flagged == outcome.Stopped is not null && (outcome.Stopped is null || outcome.Next is null);
        });
    }

    [Fact]
    public void Each_single_red_flag_alone_stops_the_screen()
    {
        foreach (var question in SymptomScreen.Questions(ScreenContext.Unknown).Where(IsRedFlag))
            foreach (var answer in new[] { Yes, DoNotKnow, NotAsked })
            {
                var answers = AllNo(ScreenContext.Unknown);
                answers[question.Id] = answer;
                var outcome = SymptomScreen.Evaluate(answers, ScreenContext.Unknown);
                Assert.False(outcome.MaySchedule, question.Id);
                Assert.Equal(answer != NotAsked, outcome.Stopped == question);
            }
    }

    [Theory]
    [InlineData("she feels hot and is shaking", "fever,chills")]
    [InlineData("Shivering since the flush", "chills")]
    [InlineData("some pus at the site", "pus")]
    [InlineData("arm is SWOLLEN", "face-swelling,new-swelling")]
    [InlineData("a bit short of breath", "breathing")]
    [InlineData("edge of the dressing is up", "")]
    [InlineData("", "")]
    [InlineData("photo of the shot clock", "")]
    public void Free_text_asks_and_never_answers(string text, string ids) =>
        Assert.Equal(ids, string.Join(',', WordsThatAsk.In(text).Select(question => question.Id)));
}
