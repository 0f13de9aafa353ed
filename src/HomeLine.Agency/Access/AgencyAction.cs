namespace HomeLine.Agency.Access;

/// <summary>What a person can ask the agency to do. Each is checked in the use case, never only on the page.</summary>
public enum AgencyAction
{
    SeeDueList,
    SeePatient,
    SeeWeek,
    PlanWeek,
    PlanOwnWeek,
    PublishWeek,
    ReportProblem,
    ApplyAnswer,
    SeeDecisions,
    Decide,
    EditPolicy,
    TakeOrder,
    KeepReferral,
    HoldPatient,
    CorrectPatient,
    ValidateCaregiver,
    AddLine,
    SeeMyDay,
    RecordVisit,
    CoSignVisit,
    TellPractitioner,
    SeeRideAlongs,
    RecordRideAlong,
    PrintCareSheet,
    PrintDaySheet,
    ImportRoster,
    ManageAccounts,
    SeeAuditTrail,
}
