namespace HomeLine.LineCare.Policy;

/// <summary>The pair of rules a clock runs on: the ceiling that ends a window and the floor before which it is not useful; some have no floor.
/// Numbered, so that a policy book can keep what it has worked out for each.</summary>
internal sealed class ClockRule
{
    private static int _count;

    private ClockRule(string ceiling, string? floor) => (Ceiling, Floor, Number) = (ceiling, floor, _count++);

    public static ClockRule Film { get; } = Pair(RuleIds.Film);

    public static ClockRule AntisepticFilm { get; } = Pair(RuleIds.AntisepticFilm);

    public static ClockRule Gauze { get; } = Pair(RuleIds.Gauze);

    public static ClockRule GauzeUnderFilm { get; } = Pair(RuleIds.GauzeUnderFilm);

    public static ClockRule FirstFilm { get; } = new(RuleIds.FirstFilm, RuleIds.FirstOpens);

    public static ClockRule FirstGauze { get; } = new(RuleIds.FirstGauze, RuleIds.FirstOpens);

    public static ClockRule GauzeOnPort { get; } = Pair(RuleIds.GauzeOnPort);

    public static ClockRule ConnectorIntermittent { get; } = Pair(RuleIds.ConnectorIntermittent);

    public static ClockRule ConnectorContinuous { get; } = Pair(RuleIds.ConnectorContinuous);

    public static ClockRule ConnectorNutrition { get; } = Pair(RuleIds.ConnectorNutrition);

    public static ClockRule SetContinuous { get; } = Pair(RuleIds.SetContinuous);

    public static ClockRule SetIntermittent { get; } = new(RuleIds.SetIntermittent, null);

    public static ClockRule SetNutrition { get; } = new(RuleIds.SetNutrition, null);

    public static ClockRule SetLipid { get; } = new(RuleIds.SetLipid, null);

    public static ClockRule SetBlood { get; } = new(RuleIds.SetBlood, null);

    public static ClockRule PortNeedle { get; } = Pair(RuleIds.PortNeedle);

    public static ClockRule PortFlush { get; } = Pair(RuleIds.PortFlush);

    public static ClockRule LumenFlush { get; } = Pair(RuleIds.LumenFlush);

    public static ClockRule SiteCheck { get; } = Pair(RuleIds.SiteCheck);

    /// <summary>How many there are.</summary>
    public static int Count => _count;

    public string Ceiling { get; }

    public string? Floor { get; }

    public int Number { get; }

    private static ClockRule Pair(string pair) => new(RuleIds.Max(pair), RuleIds.Min(pair));
}
