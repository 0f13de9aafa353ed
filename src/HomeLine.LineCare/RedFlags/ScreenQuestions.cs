using System.Collections.Immutable;
using System.Globalization;
using static HomeLine.LineCare.RedFlags.ScreenClass;

namespace HomeLine.LineCare.RedFlags;

/// <summary>A question with the patients it is for and the first-aid line that a yes brings.</summary>
internal sealed record Asked(ScreenQuestion Question, Func<ScreenContext, bool> AppliesTo, string FirstAid = "")
{
    public const string FeverPlace = "{fever}";

    /// <summary>The question as it is read to this patient's people.</summary>
    public ScreenQuestion For(ScreenContext context) => Question.Text.Contains(FeverPlace, StringComparison.Ordinal)
        ? Question with { Text = Question.Text.Replace(FeverPlace, Fever(context.FeverAtCelsius), StringComparison.Ordinal) }
        : Question;

    private static string Fever(decimal celsius) =>
        string.Create(CultureInfo.InvariantCulture, $"{celsius:0.0} °C ({(celsius * 9 / 5) + 32:0.0} °F)");
}

/// <summary>
/// The questions in the order asked, one thing each. A default for the clinical lead to sign, not a triage protocol. Our own wording;
/// the fever threshold is policy, the first-aid lines are the usual ones of published teaching on air entry and catheter breaks.
/// </summary>
internal static class ScreenQuestions
{
    private const string StopInfusion = "If an infusion is running and you were taught how, stop it and close the clamp.";

    public static readonly ImmutableArray<Asked> InOrder =
    [
        Ask("breathing", Emergency, "Is there any trouble breathing?"),
        Ask("chest-pain", Emergency, "Is there pain or pressure in the chest?"),
        Ask("blue", Emergency, "Do the lips or the fingertips look blue or grey?"),
        Ask("fainting", Emergency, "Has the patient fainted, or is about to?"),
        Ask("confusion", Emergency, "Is the patient newly confused or hard to wake?"),
        Ask("seizure", Emergency, "Has there been a seizure?"),
        Ask("one-sided", Emergency, "Is one side of the face or body suddenly weak?"),
        Ask("face-swelling", Emergency, "Is the face or the tongue swelling?", StopInfusion),
        Ask("wheeze", Emergency, "Is there wheezing that is new?", StopInfusion),
        Ask("hives", Emergency, "Have hives come up during or after an infusion?", StopInfusion),
        Ask("bleeding", Emergency, "Is there bleeding that does not stop when you press on it?", "Press firmly on the site with something clean. Keep pressing."),
        Ask("line-broken", Emergency, "Is the line cut or broken?", "Clamp or fold the line between the break and the body."),
        Ask("line-out", Emergency, "Has the line come out of the chest or the neck?", "Press on the site and cover it. Do not push the line back in. Lie down."),
        Ask("air", Emergency, "Did you see air go into the patient through the line?", "Clamp the line close to the body. Lie on the left side."),
        Ask("heart-infusion-unwell", Emergency, "Has the heart infusion stopped, and does the patient feel unwell?",
            "Follow the back-up steps for the heart infusion that you were taught.", context => context.InfusionMustNotStop),

        Ask("fever", UrgentClinician, $"Is the temperature {Asked.FeverPlace} or higher?"),
        Ask("chills", UrgentClinician, "Have there been chills or shaking, at any time or after a flush or infusion?"),
        Ask("pus", UrgentClinician, "Is there pus at the site?"),
        Ask("redness", UrgentClinician, "Is redness around the site spreading?"),
        Ask("tunnel-pain", UrgentClinician, "Is there pain along the line under the skin, or over the port?"),
        Ask("new-swelling", UrgentClinician, "Is the arm or the neck newly swollen?"),
        Ask("line-longer", UrgentClinician, "Does the line look longer outside than before?"),
        Ask("line-moved", UrgentClinician, "Has the line come part of the way out?", "Do not push the line back in."),
        Ask("leaking", UrgentClinician, "Is the line or the site leaking?"),
        Ask("infusing-pain", UrgentClinician, "Is there pain or burning while something runs in?", StopInfusion),
        Ask("heart-infusion-stopped", UrgentClinician, "Has the heart infusion stopped, even for a short time?",
            "Follow the back-up steps for the heart infusion that you were taught.", context => context.InfusionMustNotStop),
        Ask("nutrition-stopped", UrgentClinician, "Did the nutrition stop before it was finished?", appliesTo: context => context.ParenteralNutrition),
        Ask("seems-unwell", UrgentClinician, "Does the patient seem unwell to you?", appliesTo: context => context.ParenteralNutrition || context.Child),
        Ask("low-sugar-signs", UrgentClinician, "Is there sudden sweating or trembling?"),
        Ask("high-sugar-signs", UrgentClinician, "Is there great thirst, with much more urine than usual?"),

        Ask("dressing-lifting", SameDay, "Is the dressing lifting or off?"),
        Ask("dressing-wet", SameDay, "Is the dressing wet?"),
        Ask("dressing-soiled", SameDay, "Is the dressing soiled?"),
        Ask("blood-under", SameDay, "Is there blood under the dressing?"),
        Ask("connector", SameDay, "Is a connector off or cracked?"),
        Ask("cannot-flush", SameDay, "Does the line not flush, without any pain?"),
        Ask("pump-alarm", SameDay, "Does a pump alarm keep coming back?"),
        Ask("rash", SameDay, "Is there a rash under the dressing?"),
        Ask("missed-dose", SameDay, "Was a dose missed?"),
    ];

    private static Asked Ask(
        string id, ScreenClass @class, string text, string firstAid = "", Func<ScreenContext, bool>? appliesTo = null) =>
        new(new ScreenQuestion(id, @class, text), appliesTo ?? (static _ => true), firstAid);
}
