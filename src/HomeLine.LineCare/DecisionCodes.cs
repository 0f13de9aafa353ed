namespace HomeLine.LineCare;

/// <summary>The codes of the decisions this room asks a licensed person for. Stable: stored and listed by others.</summary>
public static class DecisionCodes
{
    /// <summary>An order is looser than policy and not confirmed.</summary>
    public const string LooserOrder = "order-looser-than-policy";

    /// <summary>The tip position is not confirmed: the line is locked until it is.</summary>
    public const string TipUnconfirmed = "tip-unconfirmed";

    /// <summary>The line was locked for use, for example by a symptom screen that stopped.</summary>
    public const string UseLocked = "use-locked";

    /// <summary>A lumen is occluded: locked until it is cleared or kept out of use.</summary>
    public const string LumenOccluded = "lumen-occluded";

    /// <summary>A statement about a dressing contradicts a date read off it.</summary>
    public const string ContradictedDate = "date-contradicted";

    /// <summary>The line is longer outside than at insertion.</summary>
    public const string LengthGrew = "outside-length-grew";

    /// <summary>The line is shorter outside than at insertion.</summary>
    public const string LengthShrank = "outside-length-shrank";

    /// <summary>The arm is wider than at the first measurement.</summary>
    public const string GirthRose = "arm-girth-rose";

    /// <summary>A midline has been in as long as policy lets pass without asking.</summary>
    public const string MidlineDwell = "midline-dwell";

    /// <summary>A drug level is ordered and no dose times are known.</summary>
    public const string LevelWithoutDoseTimes = "level-without-dose-times";

    /// <summary>The removed catheter is shorter than what was inserted.</summary>
    public const string RemovedShorter = "removed-shorter-than-inserted";

    /// <summary>A line that is not healed has no dressing.</summary>
    public const string NoDressing = "no-dressing-on-unhealed-site";

    /// <summary>No caregiver is validated for a task that was theirs.</summary>
    public const string CaregiverNotValidated = "caregiver-not-validated";

    /// <summary>A caregiver's validation has lapsed.</summary>
    public const string ValidationLapsed = "caregiver-validation-lapsed";

    /// <summary>Care was given by somebody not validated for it.</summary>
    public const string UnverifiedCare = "unverified-care";

    /// <summary>The birth date is missing, so that age rules are off.</summary>
    public const string BirthDateMissing = "birth-date-missing";

    /// <summary>An ordered dose was not recorded.</summary>
    public const string DoseNotRecorded = "dose-not-recorded";

    /// <summary>Expected care from outside was not reported in time.</summary>
    public const string OutsideCareNotReported = "outside-care-not-reported";

    /// <summary>Material with chlorhexidine lies on a patient who must not have it.</summary>
    public const string Chlorhexidine = "chlorhexidine-material";

    /// <summary>An order's interval is outside 1 to 365 days.</summary>
    public const string OrderIntervalOutOfRange = "order-interval-out-of-range";
}
