namespace HomeLine.LineCare.Policy;

/// <summary>Who set a rule, from the most general to the most specific.</summary>
public enum PolicyLevel
{
    /// <summary>The default shipped with the program, from a published guideline or marked as our own choice.</summary>
    Default,

    /// <summary>The agency's policy in force.</summary>
    Agency,

    /// <summary>An exception for one patient, with owner and end date.</summary>
    PatientException,

    /// <summary>A prescriber's order.</summary>
    Order,
}
