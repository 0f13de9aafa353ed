namespace HomeLine.LineCare.Lines;

/// <summary>Who does, or did, an item of care.</summary>
public enum PerformerKind
{
    /// <summary>A nurse of the agency.</summary>
    Nurse,

    /// <summary>The patient or a family caregiver.</summary>
    Caregiver,

    /// <summary>A clinic, hospital or other agency.</summary>
    Outside,
}
