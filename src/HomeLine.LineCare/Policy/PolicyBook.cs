using System.Collections.Frozen;
using System.Collections.Immutable;
using NodaTime;

namespace HomeLine.LineCare.Policy;

/// <summary>All policy values with their versions: the shipped defaults and the agency's own.</summary>
public sealed partial record PolicyBook
{
    private const int DaysKept = 4;

    private readonly ImmutableArray<PolicyRule> _rules;
    private readonly FrozenDictionary<string, PolicyRule[]> _byId = FrozenDictionary<string, PolicyRule[]>.Empty;
    private readonly CompiledClock?[] _clocks = [];
    private readonly DailyNumbers?[] _days = [];

    /// <summary>Every version of every rule.</summary>
    public required ImmutableArray<PolicyRule> Rules
    {
        get => _rules;
        init
        {
            _rules = value;
            _byId = value
                .GroupBy(rule => rule.Id, StringComparer.Ordinal)
                .ToFrozenDictionary(
                    versions => versions.Key,
                    versions => versions.OrderBy(v => v.EffectiveFrom).ThenBy(v => v.Level).ToArray(),
                    StringComparer.Ordinal);
            _clocks = new CompiledClock?[ClockRule.Count];
            _days = new DailyNumbers?[DaysKept];
        }
    }

    /// <summary>The version in force on <paramref name="date"/>: the agency's own before the default, the later before the earlier.
    /// Empty when no version had taken effect by then.</summary>
    /// <param name="ruleId">The dotted id.</param>
    /// <param name="date">Civil day at the patient's place.</param>
    public PolicyRule? InForce(string ruleId, LocalDate date)
    {
        PolicyRule? best = null;
        foreach (var version in VersionsOf(ruleId))
        {
            if (version.EffectiveFrom > date) break;
            if (best is null || version.Level >= best.Level) best = version;
        }

        return best;
    }

    /// <summary>The value in force on a day. Asking for an id that does not exist is a mistake of the caller and throws.</summary>
    /// <param name="ruleId">The dotted id.</param>
    /// <param name="date">Civil day at the patient's place.</param>
    /// <exception cref="KeyNotFoundException">No version of the rule is in force.</exception>
    public decimal ValueOf(string ruleId, LocalDate date) =>
        InForce(ruleId, date)?.Value ?? throw new KeyNotFoundException($"No policy value '{ruleId}' is in force on {date}.");

    /// <summary>This book with more versions added; what was there stays, so the past can be explained.</summary>
    /// <param name="versions">New versions, usually of <see cref="PolicyLevel.Agency"/>.</param>
    public PolicyBook With(params IEnumerable<PolicyRule> versions) => this with { Rules = [.. Rules, .. versions] };

    /// <summary>Every version of one rule, earliest first; empty for an unknown id.</summary>
    internal PolicyRule[] VersionsOf(string ruleId) => _byId.TryGetValue(ruleId, out var versions) ? versions : [];

    /// <summary>The rules of one clock, worked out once per book. Two threads may work it out at once; both find the same.</summary>
    internal CompiledClock Clock(ClockRule rule) => _clocks[rule.Number] ??= new CompiledClock(Compiled(rule.Ceiling), Compiled(rule.Floor));

    /// <summary>The numbers of a day. A few days are kept: patients in several zones ask for today and tomorrow in turn.</summary>
    internal DailyNumbers On(LocalDate date)
    {
        ref var kept = ref _days[date.Day % DaysKept];
        return kept is { } numbers && numbers.On == date ? numbers : kept = new DailyNumbers(this, date);
    }

    private CompiledRule[] Compiled(string? ruleId) =>
        ruleId is null ? [] : Array.ConvertAll(VersionsOf(ruleId), static rule => new CompiledRule(rule));
}
