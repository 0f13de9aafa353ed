namespace HomeLine.LineCare.Orders;

/// <summary>How much of a patient's care comes from the same faces.</summary>
public static class Continuity
{
    /// <summary>
    /// The index of Bice and Boxerman: (sum of squared visits per nurse - visits) / (visits x (visits - 1)). 1 when one nurse made every visit,
    /// 0 when nobody came twice. The form is named in Ma et al., Med Care 2021; the formula is from memory.
    /// </summary>
    /// <param name="visitsPerNurse">Visits by each nurse, none below zero.</param>
    /// <returns>0 to 1; empty with fewer than two visits, where the index says nothing.</returns>
    public static double? Index(IEnumerable<int> visitsPerNurse)
    {
        ArgumentNullException.ThrowIfNull(visitsPerNurse);
        long visits = 0, squares = 0;
        foreach (var count in visitsPerNurse)
        {
            ArgumentOutOfRangeException.ThrowIfNegative(count, nameof(visitsPerNurse));
            visits += count;
            squares += (long)count * count;
        }

        return visits < 2 ? null : (squares - visits) / (double)(visits * (visits - 1));
    }
}
