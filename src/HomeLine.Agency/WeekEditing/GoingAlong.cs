using HomeLine.Agency.Roster;
using HomeLine.Agency.Supervision;
using HomeLine.Planning.Plans;

namespace HomeLine.Agency.WeekEditing;

/// <summary>Whether a supervisor may go along on a visit, beyond what the planner's rules say of times, roads and refusals.</summary>
internal static class GoingAlong
{
    /// <summary>Empty when she may, and for any other change.</summary>
    public static Refusal? Fault(WorkingWeek week, HandEdit edit)
    {
        if (edit is not HandEdit.GoAlong(var id, var who) || week.Hand.Visits.FirstOrDefault(v => v.Id == id) is not { } visit) return null;
        NurseFile nurse = week.Agency.Roster.Nurses.First(n => n.Id == visit.Nurse);
        if (week.Agency.Roster.Nurses.FirstOrDefault(n => n.Id == who) is not { } supervisor)
            return new Refusal("nurse-unknown", "There is no such nurse.", "Choose a nurse on the list.");
        if (!Supervised.Needs(nurse)) return RecordRideAlong.Faults.NotNeeded(nurse);
        if (!Supervised.BySupervisor(supervisor)) return RecordRideAlong.Faults.NoSupervisor(supervisor);
        if (visit.Second is not null) return new Refusal("ride-two-already", "Two people go to this visit already.", "Choose a visit to which she goes alone.");
        return IsLicensed(week, visit, who)
            ? null
            : new Refusal("ride-licence", $"{supervisor.Name} has no licence where this visit is.", "Choose a supervisor licensed there.");
    }

    private static bool IsLicensed(WorkingWeek week, PlannedVisit visit, string who)
    {
        string state = week.Hand.Problem.Patients.First(p => p.Id == visit.Patient).State;
        int day = visit.Start / 1440;
        return week.Hand.Problem.Nurses.First(n => n.Id == who).Licences.Any(l => l.State == state && l.LastDay >= day);
    }
}
