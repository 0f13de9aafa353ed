using HomeLine.LineCare.Policy;
using NodaTime;

namespace HomeLine.LineCare.Tests.Naive;

/// <summary>The policy book read from front to back for every question.</summary>
internal sealed class ReadingRules(PolicyBook book)
{
    /// <summary>The rule in force on a day: the agency's own before the shipped one, the later before the earlier.</summary>
    public PolicyRule? On(string id, LocalDate day)
    {
        PolicyRule? best = null;
        foreach (var rule in book.Rules)
        {
            if (rule.Id != id || rule.EffectiveFrom > day) continue;
            if (best is null || rule.Level > best.Level || (rule.Level == best.Level && rule.EffectiveFrom >= best.EffectiveFrom)) best = rule;
        }

        return best;
    }

    public decimal Value(string id, LocalDate day) => On(id, day)!.Value;

    /// <summary>The rule in force on a day, or the first one there ever was.</summary>
    public PolicyRule OnOrFirst(string id, LocalDate day) =>
        On(id, day) ?? book.Rules.Where(rule => rule.Id == id).OrderBy(rule => rule.EffectiveFrom).ThenBy(rule => rule.Level).First();
}
