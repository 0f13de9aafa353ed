using System.Collections.Immutable;
using System.Globalization;
using HomeLine.Agency.Roster;
using HomeLine.Agency.WeekPlanning;
using HomeLine.LineCare.Policy;
using HomeLine.Planning.Plans;
using NodaTime;

namespace HomeLine.Agency.Supervision;

/// <summary>A nurse under supervision: by when somebody goes along, and why then.</summary>
/// <param name="Nurse">The nurse.</param>
/// <param name="Name">Name as shown.</param>
/// <param name="IsTrainee">She is marked as a trainee; otherwise a practical nurse.</param>
/// <param name="DueBy">The last day on time.</param>
/// <param name="Last">The last supervision; empty for never.</param>
/// <param name="Planned">The next visit ahead on which a supervisor goes along; empty for none.</param>
/// <param name="Reason">Why it is due then.</param>
public sealed record RideAlongDue(
    string Nurse, string Name, bool IsTrainee, LocalDate DueBy, RideAlong? Last, WeekVisit? Planned, PlanningReason Reason)
{
    public const string Again = "ride-again", First = "ride-first";

    public bool IsLate(LocalDate today) => DueBy < today;

    /// <summary>All nurses under supervision, the earliest due first.</summary>
    /// <param name="nurses">The agency's nurses.</param>
    /// <param name="made">Supervisions that took place.</param>
    /// <param name="visits">Visits ahead, where a second person may be planned.</param>
    /// <param name="firstDays">The first published day of each nurse who has one.</param>
    /// <param name="policy">Policy in force.</param>
    /// <param name="today">Today at the branch.</param>
    public static ImmutableArray<RideAlongDue> Of(
        IEnumerable<NurseFile> nurses, IReadOnlyCollection<RideAlong> made, IReadOnlyCollection<WeekVisit> visits,
        IReadOnlyDictionary<string, LocalDate> firstDays, PolicyBook policy, LocalDate today)
    {
        NurseFile[] all = [.. nurses];
        var supervisors = all.Where(Supervised.BySupervisor).Select(n => n.Id).ToHashSet();
        return [.. all.Where(Supervised.Needs).Select(Row).OrderBy(r => r.DueBy).ThenBy(r => r.Nurse, StringComparer.Ordinal)];

        RideAlongDue Row(NurseFile nurse)
        {
            RideAlong? last = made.Where(m => m.Nurse == nurse.Id).OrderBy(m => m.Day).LastOrDefault();
            int days = Supervised.MostDays(nurse, policy, today);
            LocalDate due = last?.Day.PlusDays(days) ?? firstDays.GetValueOrDefault(nurse.Id, today);
            string who = Supervised.IsTrainee(nurse) ? "a trainee" : "a practical nurse";
            PlanningReason reason = last is null
                ? new PlanningReason(First, $"{nurse.Name} is {who} and nobody has gone along yet: due from her first published day.", "Send a registered nurse along on one of her visits.")
                : new PlanningReason(
                    Again,
                    $"{nurse.Name} is {who}: somebody goes along at least every {days.ToString(CultureInfo.InvariantCulture)} days ({Supervised.RuleOf(nurse)}).",
                    "Send a registered nurse along by then.");
            WeekVisit? planned = visits.Where(v => v.Nurse == nurse.Id && v.Held is null && v.Day >= today && v.Second is { } second && supervisors.Contains(second))
                .OrderBy(v => v.Day).ThenBy(v => v.Start).FirstOrDefault();
            return new RideAlongDue(nurse.Id, nurse.Name, Supervised.IsTrainee(nurse), due, last, planned, reason);
        }
    }
}
