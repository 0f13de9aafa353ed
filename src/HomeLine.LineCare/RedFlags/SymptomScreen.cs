using System.Collections.Immutable;

namespace HomeLine.LineCare.RedFlags;

/// <summary>
/// The symptom screen that comes before any scheduling of a problem. A yes or a do-not-know to an emergency or urgent question stops it
/// at once: nothing further is asked and nothing is scheduled. It never decides what is wrong with anybody.
/// </summary>
public static class SymptomScreen
{
    /// <summary>The questions for a patient, in the order asked.</summary>
    /// <param name="context">What is known about the patient.</param>
    public static ImmutableArray<ScreenQuestion> Questions(ScreenContext context)
    {
        ArgumentNullException.ThrowIfNull(context);
        return [.. ScreenQuestions.InOrder.Where(asked => asked.AppliesTo(context)).Select(asked => asked.For(context))];
    }

    /// <summary>Where the screen stands with these answers. An answer to an emergency question counts even when an earlier question was skipped.</summary>
    /// <param name="answers">Answers by question id; what is missing was not asked.</param>
    /// <param name="context">What is known about the patient.</param>
    /// <exception cref="ArgumentException">An id that no question has: a misspelt id must not lose a yes.</exception>
    public static ScreenOutcome Evaluate(IReadOnlyDictionary<string, ScreenAnswer> answers, ScreenContext context)
    {
        ArgumentNullException.ThrowIfNull(answers);
        ArgumentNullException.ThrowIfNull(context);
        RefuseUnknownIds(answers);
        foreach (var @class in (ReadOnlySpan<ScreenClass>)[ScreenClass.Emergency, ScreenClass.UrgentClinician])
            foreach (var asked in ScreenQuestions.InOrder)
                if (asked.Question.Class == @class && Answer(answers, asked) is ScreenAnswer.Yes or ScreenAnswer.DoNotKnow)
                    return new ScreenOutcome(@class, asked.For(context), null, false, ScreenWording.For(@class, asked, context));
        return GoOn(answers, context);
    }

    private static ScreenOutcome GoOn(IReadOnlyDictionary<string, ScreenAnswer> answers, ScreenContext context)
    {
        Asked? next = null;
        var mayAll = true;
        var sameDay = ImmutableArray.CreateBuilder<string>();
        foreach (var asked in ScreenQuestions.InOrder)
        {
            if (!asked.AppliesTo(context)) continue;
            switch (Answer(answers, asked))
            {
                case ScreenAnswer.NotAsked:
                    next ??= asked;
                    if (asked.Question.Class != ScreenClass.SameDay) mayAll = false;
                    break;
                case ScreenAnswer.Yes or ScreenAnswer.DoNotKnow: sameDay.Add(asked.Question.Id); break;
            }
        }

        var @class = sameDay.Count > 0 ? ScreenClass.SameDay : ScreenClass.Routine;
        return new ScreenOutcome(@class, null, next?.For(context), mayAll, mayAll ? Wording(@class, sameDay, context) : []);
    }

    private static ImmutableArray<string> Wording(ScreenClass @class, ImmutableArray<string>.Builder sameDay, ScreenContext context)
    {
        var lines = ImmutableArray.CreateBuilder<string>();
        lines.AddRange(ScreenWording.For(@class, null, context));
        foreach (var id in sameDay)
            foreach (var line in ScreenWording.InterimFor(id))
                if (!lines.Contains(line)) lines.Add(line);
        return lines.ToImmutable();
    }

    private static ScreenAnswer Answer(IReadOnlyDictionary<string, ScreenAnswer> answers, Asked asked) =>
        answers.GetValueOrDefault(asked.Question.Id, ScreenAnswer.NotAsked);

    private static void RefuseUnknownIds(IReadOnlyDictionary<string, ScreenAnswer> answers)
    {
        foreach (var id in answers.Keys)
            if (!ScreenQuestions.InOrder.Any(asked => asked.Question.Id == id))
                throw new ArgumentException($"No question of the screen is called '{id}'.", nameof(answers));
    }
}
