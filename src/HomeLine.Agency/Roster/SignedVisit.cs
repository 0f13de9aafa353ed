using System.Collections.Immutable;
using HomeLine.LineCare.Ledger;
using HomeLine.LineCare.Lines;
using NodaTime;

namespace HomeLine.Agency.Roster;

/// <summary>What planning has to know of a signed visit: that it was made, and which ledger entries stand for it.</summary>
/// <param name="Record">The record.</param>
/// <param name="Patient">Whose.</param>
/// <param name="Day">Day of the visit at the patient's place.</param>
/// <param name="Visit">The published visit; empty for one that was not planned.</param>
/// <param name="Amends">The record it takes the place of; empty for a first one.</param>
/// <param name="Events">Its ledger entries.</param>
public sealed record SignedVisit(string Record, PatientId Patient, LocalDate Day, string? Visit, string? Amends, ImmutableArray<EventId> Events)
{
    /// <summary>Those no other one took the place of.</summary>
    public static ImmutableArray<SignedVisit> Standing(ImmutableArray<SignedVisit> all)
    {
        var amended = all.Select(v => v.Amends).OfType<string>().ToHashSet(StringComparer.Ordinal);
        return amended.Count == 0 ? all : [.. all.Where(v => !amended.Contains(v.Record))];
    }
}
