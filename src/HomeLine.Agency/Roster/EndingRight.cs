using System.Collections.Immutable;
using NodaTime;

namespace HomeLine.Agency.Roster;

/// <summary>A nurse's licence or sign-off that has ended or soon will.</summary>
/// <param name="Nurse">Whose.</param>
/// <param name="What">Which, in words.</param>
/// <param name="ValidThrough">Last day it counts, included.</param>
/// <param name="HasEnded">It is over: she is not offered for what needs it.</param>
public sealed record EndingRight(NurseFile Nurse, string What, LocalDate ValidThrough, bool HasEnded)
{
    /// <summary>Those that end within the days policy names, and those that are over; the soonest first. Pure.</summary>
    public static ImmutableArray<EndingRight> Of(AgencyAtHand agency)
    {
        LocalDate soon = agency.Today.PlusDays((int)agency.Files.Policy.ValueOf("nurse.notice", agency.Today));
        return
        [
            .. agency.Roster.Nurses.SelectMany(Of)
                .Where(right => right.Through <= soon)
                .Select(right => new EndingRight(right.Nurse, right.What, right.Through, right.Through < agency.Today))
                .OrderBy(right => right.ValidThrough).ThenBy(right => right.Nurse.Id, StringComparer.Ordinal).ThenBy(right => right.What, StringComparer.Ordinal),
        ];
    }

    private static IEnumerable<(NurseFile Nurse, string What, LocalDate Through)> Of(NurseFile nurse) =>
    [
        .. nurse.Licences.Where(l => l.ValidThrough is not null).Select(l => (nurse, $"licence in {l.State}", l.ValidThrough!.Value)),
        .. nurse.SignOffs.Select(s => (nurse, $"sign-off for {s.Skill}", s.ValidThrough)),
    ];
}
