using System.Globalization;
using NodaTime;

namespace HomeLine.LineCare.Policy;

/// <summary>What no policy book may hold, whoever wrote it.</summary>
public static class PolicyCheck
{
    private const int LongestIntervalInDays = 365;

    /// <summary>Every reason to refuse a book, one sentence each; empty when it can be used.</summary>
    /// <param name="book">The book.</param>
    public static IEnumerable<string> Problems(PolicyBook book)
    {
        ArgumentNullException.ThrowIfNull(book);
        var seen = new HashSet<(string, PolicyLevel, LocalDate)>();
        foreach (var rule in book.Rules)
        {
            if (!seen.Add((rule.Id, rule.Level, rule.EffectiveFrom)))
                yield return $"{rule.Id} is set twice from {Day(rule.EffectiveFrom)}.";
            if (rule.Value < 0) yield return $"{rule.Id} is below zero.";
            if (rule.Level > PolicyLevel.Agency) yield return $"{rule.Id}: orders and exceptions belong to the patient, not to the policy.";
            if (InDays(rule) > LongestIntervalInDays) yield return $"{rule.Id} is over a year.";
            if (CrossedPair(book, rule) is { } crossed) yield return crossed;
            if (CrossingFloor(book, rule) is { } crossing) yield return crossing;
            if (BeyondItsLimit(book, rule) is { } beyond) yield return beyond;
        }
    }

    /// <summary>A floor above its ceiling leaves no window at all, or a connector that is late before it may be changed.</summary>
    private static string? CrossedPair(PolicyBook book, PolicyRule rule)
    {
        if (!rule.Id.EndsWith(".max", StringComparison.Ordinal) || InDays(rule) is not { } ceiling) return null;
        var floor = book.InForce(string.Concat(rule.Id.AsSpan(0, rule.Id.Length - 3), "min"), rule.EffectiveFrom);
        return floor is not null && InDays(floor) is { } low && low > ceiling
            ? $"{floor.Id} ({floor.Value} {floor.Unit}) is above {rule.Id} ({rule.Value} {rule.Unit}) from {Day(rule.EffectiveFrom)}."
            : null;
    }

    /// <summary>A floor raised later than its ceiling was set is checked on the day it takes effect; one from the same day is the ceiling's problem.</summary>
    private static string? CrossingFloor(PolicyBook book, PolicyRule rule)
    {
        if (!rule.Id.EndsWith(".min", StringComparison.Ordinal) || InDays(rule) is not { } floor) return null;
        if (book.InForce(rule.Id, rule.EffectiveFrom) != rule) return null;
        var ceiling = book.InForce(string.Concat(rule.Id.AsSpan(0, rule.Id.Length - 3), "max"), rule.EffectiveFrom);
        return ceiling is not null && ceiling.EffectiveFrom < rule.EffectiveFrom && InDays(ceiling) is { } high && floor > high
            ? $"{rule.Id} ({rule.Value} {rule.Unit}) is above {ceiling.Id} ({ceiling.Value} {ceiling.Unit}) from {Day(rule.EffectiveFrom)}."
            : null;
    }

    /// <summary>Some ceilings have an upper limit of their own, for example the longest interval that was studied.</summary>
    private static string? BeyondItsLimit(PolicyBook book, PolicyRule rule)
    {
        if (!rule.Id.EndsWith(".max", StringComparison.Ordinal) || InDays(rule) is not { } ceiling) return null;
        var limit = book.InForce(string.Concat(rule.Id.AsSpan(0, rule.Id.Length - 3), "limit.upper"), rule.EffectiveFrom);
        return limit is not null && InDays(limit) is { } most && ceiling > most
            ? $"{rule.Id} ({rule.Value} {rule.Unit}) is above {limit.Id} ({limit.Value} {limit.Unit})."
            : null;
    }

    private static decimal? InDays(PolicyRule rule) => rule.Unit switch
    {
        "days" => rule.Value,
        "hours" => rule.Value / 24,
        _ => null,
    };

    private static string Day(LocalDate date) => date.ToString("uuuu-MM-dd", CultureInfo.InvariantCulture);
}
