using HomeLine.LineCare.Windows;

namespace HomeLine.LineCare.Clocks;

/// <summary>How far the occurrence after the next one lies, from the rules in force today or the limit that won.</summary>
internal static class Repeating
{
    public static Repeat? From(Reckoning reckoning, string ceiling, string? floor, Limit? won)
    {
        var rule = reckoning.Policy.InForce(ceiling, reckoning.Today);
        if (rule is null) return null;
        var (value, unit) = won is null ? (rule.Value, rule.Unit) : (won.Value, won.Unit);
        var max = (int)value;
        if (floor is null) return new Repeat(0, max, BasisOf(unit));
        var (low, lowUnit) = reckoning.Limits.Floor(floor);
        var min = (lowUnit, unit) switch
        {
            ("hours", "days") => (int)Math.Ceiling(low / 24) + 1,
            ("days", "hours") => (int)(low * 24),
            _ => (int)low,
        };
        return new Repeat(Math.Min(min, max), max, BasisOf(unit));
    }

    private static ClockBasis BasisOf(string unit) => unit == "hours" ? ClockBasis.Hour : ClockBasis.Date;
}
