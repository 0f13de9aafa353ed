using System.Collections.Immutable;
using HomeLine.Agency.WeekPlanning;
using NodaTime;

namespace HomeLine.Agency.OwnWeek;

/// <summary>A nurse's own week on her own page.</summary>
/// <param name="FirstDay">The week.</param>
/// <param name="Nurse">Her row: days, stops, roads.</param>
/// <param name="Unmet">What nobody does of the patients whose care she plans, with reasons.</param>
/// <param name="IsDraft">Whether this is a proposal; otherwise it is the published week.</param>
/// <param name="IsAlone">Whether she is the agency's only nurse.</param>
/// <param name="Version">The published version; 0 for none.</param>
/// <param name="ChangedBy">Who changed the draft last; empty when there is none.</param>
public sealed record MyWeek(LocalDate FirstDay, NurseRow Nurse, ImmutableArray<UnmetNeed> Unmet, bool IsDraft, bool IsAlone, int Version, string ChangedBy)
{
    /// <summary>Visits of the week, those as second person among them.</summary>
    public int Visits => Nurse.Days.Sum(d => d.Stops.Length);

    public int DrivingMinutes => Nurse.Days.Sum(d => d.DrivingMinutes);
}
