namespace HomeLine.LineCare.Recording;

/// <summary>The codes of what is refused, asked or told before a line is added. Stable: stored and listed by others.</summary>
public static class LineCodes
{
    /// <summary>The date of insertion lies in the future.</summary>
    public const string InsertedInFuture = "inserted-in-future";

    /// <summary>No lumen, or two with the same letter.</summary>
    public const string LumensUnclear = "lumens-unclear";

    /// <summary>The same kind on the same side as a line that is still in.</summary>
    public const string Overlaps = "line-overlaps";

    /// <summary>A dialysis catheter is not for the agency's use.</summary>
    public const string NotOurs = "not-for-our-use";

    /// <summary>A site called healed that can hardly be, or cannot at all.</summary>
    public const string HealedEarly = "healed-early";
}
