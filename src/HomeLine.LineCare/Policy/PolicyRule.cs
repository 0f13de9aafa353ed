using NodaTime;

namespace HomeLine.LineCare.Policy;

/// <summary>How a rule's value is known.</summary>
public enum RuleStanding
{
    /// <summary>Published and read.</summary>
    Published,

    /// <summary>Published, known through a text that restates it.</summary>
    PublishedSecondHand,

    /// <summary>A fact of the trade without a source.</summary>
    CommonPractice,

    /// <summary>Remembered, to be verified.</summary>
    FromMemory,

    /// <summary>Our own choice, for the agency's clinical lead to sign.</summary>
    OwnDefault,
}

/// <summary>One policy value: a fact with its unit, the day it takes effect, who set it and where it comes from.</summary>
/// <param name="Id">Stable dotted id, for example <c>dressing.film.max</c>.</param>
/// <param name="Value">The value in <paramref name="Unit"/>.</param>
/// <param name="Unit">The unit as the source prints it: days, hours, minutes, cm, points …; never converted silently.</param>
/// <param name="EffectiveFrom">First day it is in force.</param>
/// <param name="Level">Who set it.</param>
/// <param name="Standing">How it is known.</param>
/// <param name="Source">Publisher, title, year, section; or who approved it.</param>
/// <param name="Note">What it means, in a few plain words; may be empty.</param>
public sealed record PolicyRule(
    string Id,
    decimal Value,
    string Unit,
    LocalDate EffectiveFrom,
    PolicyLevel Level,
    RuleStanding Standing,
    string Source,
    string Note = "");
