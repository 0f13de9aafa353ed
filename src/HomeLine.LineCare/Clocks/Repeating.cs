using HomeLine.LineCare.Policy;
using HomeLine.LineCare.Windows;

namespace HomeLine.LineCare.Clocks;

/// <summary>How far the occurrence after the next one lies, from the rules in force today or the limit that won.</summary>
internal static class Repeating
{
    /// <summary>By the rules in force today.</summary>
    public static Repeat? From(Reckoning reckoning, ClockRule rule) =>
        reckoning.Policy.Clock(rule).CeilingOn(reckoning.Today) is { } ceiling
            ? From(reckoning, rule, ceiling.Rule.Value, ceiling.Rule.Unit)
            : null;

    /// <summary>By the limit that won, and the floor in force today.</summary>
    public static Repeat? From(Reckoning reckoning, ClockRule rule, in Limit won)
    {
        var clock = reckoning.Policy.Clock(rule);
        if (clock.CeilingOn(reckoning.Today) is null) return null;
        return won.ByPolicyAlone && reckoning.Care.Exceptions.IsEmpty
            ? clock.NextBy(won.Rule, clock.FloorOn(reckoning.Today))
            : From(reckoning, rule, won.Value, won.Unit);
    }

    private static Repeat From(Reckoning reckoning, ClockRule rule, decimal value, string unit) =>
        Between(value, unit, rule.Floor is null ? null : reckoning.Limits.Floor(rule));

    /// <summary>A gap from floor and ceiling, in the ceiling's unit. Without a floor the least gap is zero.</summary>
    public static Repeat Between(decimal ceiling, string unit, (decimal Value, string Unit)? floor)
    {
        var basis = unit == "hours" ? ClockBasis.Hour : ClockBasis.Date;
        var max = (int)ceiling;
        if (floor is not { } low) return new Repeat(0, max, basis);
        var min = (low.Unit, unit) switch
        {
            ("hours", "days") => (int)Math.Ceiling(low.Value / 24) + 1,
            ("days", "hours") => (int)(low.Value * 24),
            _ => (int)low.Value,
        };
        return new Repeat(Math.Min(min, max), max, basis);
    }
}
