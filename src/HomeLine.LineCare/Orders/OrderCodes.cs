namespace HomeLine.LineCare.Orders;

/// <summary>The codes of what stands against an order, an exception or a first dose. Stable: stored and listed by others.</summary>
public static class OrderCodes
{
    /// <summary>The last day is before the first.</summary>
    public const string EndsBeforeStart = "order-ends-before-start";

    /// <summary>As-needed visits without a limit.</summary>
    public const string AsNeededWithoutLimit = "as-needed-without-limit";

    /// <summary>As-needed visits without the signs that would prompt one.</summary>
    public const string AsNeededWithoutSigns = "as-needed-without-signs";

    /// <summary>A new visit frequency takes the place of the one before.</summary>
    public const string FrequencyReplaced = "frequency-replaced";

    /// <summary>The visits ordered do not cover an interval that was ordered.</summary>
    public const string FrequencyShort = "frequency-short-of-interval";

    /// <summary>A spoken order that was not read back.</summary>
    public const string NotReadBack = "verbal-order-not-read-back";

    /// <summary>A spoken order taken after the visit had begun.</summary>
    public const string AfterVisitStart = "verbal-order-after-visit-start";

    /// <summary>A spoken order whose signature is overdue.</summary>
    public const string SignatureMissing = "verbal-order-unsigned";

    /// <summary>Nothing may be planned past the order's end.</summary>
    public const string PastTheEnd = "past-order-end";

    /// <summary>No active order covers it.</summary>
    public const string NoOrder = "no-active-order";

    /// <summary>The visits the order allows in this week are used.</summary>
    public const string FrequencyUsed = "frequency-used";

    /// <summary>The as-needed visits are used up: a safety visit goes ahead, an order request goes with it.</summary>
    public const string AsNeededUsedUp = "as-needed-used-up";
}
