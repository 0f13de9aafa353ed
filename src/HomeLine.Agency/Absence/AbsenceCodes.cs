namespace HomeLine.Agency.Absence;

/// <summary>The codes of what is said about an absence. Stable: stored and listed by others.</summary>
public static class AbsenceCodes
{
    /// <summary>Care of the nurse's falls due while the patient is away.</summary>
    public const string DueWhileAway = "due-while-away";

    /// <summary>A stay at a known place has no last day.</summary>
    public const string StayWithoutEnd = "stay-without-end";
}
