using HomeLine.LineCare.Clocks;
using HomeLine.LineCare.Windows;
using NodaTime;

namespace HomeLine.LineCare.Policy;

/// <summary>One version of a rule as the clocks use it: its number as days or as elapsed time, and how reasons print it.</summary>
internal sealed class CompiledRule(PolicyRule rule)
{
    private string? _amount;
    private string? _setBy;

    public PolicyRule Rule => rule;

    public LocalDate EffectiveFrom { get; } = rule.EffectiveFrom;

    public PolicyLevel Level { get; } = rule.Level;

    public bool IsHours { get; } = rule.Unit == "hours";

    public ClockBasis Basis => IsHours ? ClockBasis.Hour : ClockBasis.Date;

    /// <summary>The value as whole days; meaningless for a rule in hours.</summary>
    public int Days { get; } = (int)rule.Value;

    /// <summary>The value as elapsed time, for a rule in hours.</summary>
    public Duration Elapsed { get; } = rule.Unit == "hours" ? HoursOf(rule.Value) : Duration.Zero;

    public string Amount => _amount ??= Says.Amount(rule.Value, rule.Unit);

    public string SetBy => _setBy ??= Says.SetBy(rule);

    public static Duration HoursOf(decimal hours) => Duration.FromMinutes((double)(hours * 60));

    /// <summary>The version in force on a day: the agency's own before the default, the later before the earlier.</summary>
    public static CompiledRule? InForce(CompiledRule[] versions, LocalDate date)
    {
        CompiledRule? best = null;
        foreach (var version in versions)
        {
            if (version.EffectiveFrom > date) break;
            if (best is null || version.Level >= best.Level) best = version;
        }

        return best;
    }
}

/// <summary>Every version of a clock's ceiling and floor, earliest first.</summary>
internal sealed class CompiledClock(CompiledRule[] ceilings, CompiledRule[] floors)
{
    private Repeat? _next;

    public CompiledRule[] Ceilings => ceilings;

    public CompiledRule? CeilingOn(LocalDate date) => CompiledRule.InForce(ceilings, date);

    public CompiledRule? FloorOn(LocalDate date) => CompiledRule.InForce(floors, date);

    /// <summary>Whether neither rule has ever changed, so that one answer serves every day.</summary>
    public bool NeverChanged => ceilings.Length == 1 && floors.Length <= 1;

    /// <summary>How far the occurrence after the next one lies when nothing but policy has a say.</summary>
    public Repeat NextBy(CompiledRule ceiling, CompiledRule? floor) =>
        NeverChanged ? _next ??= Between(ceiling, floor) : Between(ceiling, floor);

    private static Repeat Between(CompiledRule ceiling, CompiledRule? floor) =>
        Repeating.Between(ceiling.Rule.Value, ceiling.Rule.Unit, floor is null ? null : (floor.Rule.Value, floor.Rule.Unit));
}
