using static HomeLine.Agency.Access.AgencyAction;
using static HomeLine.Agency.Access.AgencyRole;

namespace HomeLine.Agency.Access;

/// <summary>The written matrix of who may do what. A page that hides a button is a courtesy; this is the rule.</summary>
public static class AccessMatrix
{
    /// <summary>Whether the role may do it.</summary>
    public static bool Allows(AgencyRole role, AgencyAction action) => action switch
    {
        SeeDueList or SeePatient or SeeWeek or PrintCareSheet or PrintDaySheet => true,
        ReportProblem => role is ClinicalManager or Coordinator or Nurse,
        PlanWeek or PublishWeek or ApplyAnswer => role is ClinicalManager or Coordinator,
        // Her own visits only; it stays a draft until somebody who may publishes it.
        PlanOwnWeek => role is Nurse,
        SeeDecisions => role is ClinicalManager or Coordinator or Nurse,
        // Which questions a nurse may decide stands in DecisionRights.
        Decide => role is ClinicalManager or Nurse,
        TakeOrder or ValidateCaregiver => role is ClinicalManager or Nurse,
        KeepReferral or HoldPatient or CorrectPatient or KeepHomeSigns => role is ClinicalManager or Coordinator or Nurse,
        SeeMyDay or TellPractitioner => role is ClinicalManager or Coordinator or Nurse,
        // Whose day and whose record: a nurse her own; who may co-sign or amend whose record stands in the use cases.
        RecordVisit or CoSignVisit or AddLine => role is ClinicalManager or Nurse,
        SeeRideAlongs => role is ClinicalManager or Coordinator or Nurse,
        // A nurse only those on which she was the supervisor.
        RecordRideAlong => role is ClinicalManager or Nurse,
        EditPolicy => role is ClinicalManager,
        ImportRoster => role is Administrator or Coordinator,
        ManageAccounts => role is Administrator,
        SeeQuality => role is ClinicalManager or Coordinator,
        // A licensed person says what counts; nothing counts by itself.
        ReviewCase => role is ClinicalManager,
        SeeAuditTrail => role is Administrator or ClinicalManager,
        _ => throw new ArgumentOutOfRangeException(nameof(action), action, "Not in the matrix"),
    };

    /// <summary>Whether any of the actor's roles may do it.</summary>
    public static bool Allows(this Actor actor, AgencyAction action)
    {
        foreach (AgencyRole role in actor.Roles)
            if (Allows(role, action))
                return true;
        return false;
    }

    /// <summary>The refusal for an actor who may not, or nothing when he may.</summary>
    public static Refusal? Refuse(this Actor actor, AgencyAction action) =>
        actor.Allows(action)
            ? null
            : new Refusal("not-allowed", "Your role does not allow this.", "Ask somebody with the right role, or an administrator.");
}
