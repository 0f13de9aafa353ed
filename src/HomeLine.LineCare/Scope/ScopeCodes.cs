namespace HomeLine.LineCare.Scope;

/// <summary>The codes of why somebody may not do an item of care. Stable: stored and listed by others.</summary>
public static class ScopeCodes
{
    /// <summary>No licence in the state where the patient is at that hour.</summary>
    public const string LicenceMissing = "licence-missing";

    /// <summary>The licence there ends before the day of the care.</summary>
    public const string LicenceExpired = "licence-expired";

    /// <summary>The credential does not cover this care.</summary>
    public const string BeyondCredential = "beyond-credential";

    /// <summary>A skill the care needs is missing.</summary>
    public const string SkillMissing = "skill-missing";

    /// <summary>The competency for a skill has lapsed.</summary>
    public const string CompetencyLapsed = "competency-lapsed";

    /// <summary>The caregiver is not validated for this item on this line.</summary>
    public const string NotValidated = "caregiver-not-validated";

    /// <summary>No allergy history is recorded.</summary>
    public const string FirstDoseHistory = "first-dose-history";

    /// <summary>No reaction kit is in the home.</summary>
    public const string FirstDoseKit = "first-dose-kit";

    /// <summary>The reaction kit expires before the visit ends.</summary>
    public const string FirstDoseKitExpired = "first-dose-kit-expired";

    /// <summary>The visit is too short to stay through the infusion and after.</summary>
    public const string FirstDoseStay = "first-dose-stay";

    /// <summary>The drug is not in the home.</summary>
    public const string FirstDoseDrug = "first-dose-drug";
}
