namespace HomeLine.Agency.Decisions;

/// <summary>Questions raised by the agency's own records, beside those of the clocks. Stable; listed in docs/reasons.md.</summary>
public static class AppDecisionCodes
{
    /// <summary>The symptom screen stopped a call.</summary>
    public const string ScreenStopped = "screen-stopped";

    /// <summary>A visit waits at the door.</summary>
    public const string VisitHeld = "visit-held";

    /// <summary>The same care was refused twice or more without being done in between.</summary>
    public const string RefusedTwice = "refused-twice";

    /// <summary>An exception to policy has ended.</summary>
    public const string ExceptionEnded = "exception-ended";

    /// <summary>A safety visit went ahead without an as-needed visit left in the orders: an order is asked for.</summary>
    public const string OrderRequested = "order-requested";

    /// <summary>A patient's wish about who comes rests on a protected trait of staff.</summary>
    public const string ProtectedWish = "wish-protected-trait";

    /// <summary>A skin injury under the adhesive was written down at a visit.</summary>
    public const string AdhesiveInjuryFound = "adhesive-injury-found";

    /// <summary>A reaction where the antiseptic touched was written down at a visit.</summary>
    public const string AntisepticReactionFound = "antiseptic-reaction-found";
}
