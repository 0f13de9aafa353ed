using HomeLine.Planning.Plans;

namespace HomeLine.Planning.Explaining;

/// <summary>Why a visit is on its day and with its nurse: compared with the best plan in which only this visit is elsewhere.</summary>
/// <param name="Visit">The visit's identifier.</param>
/// <param name="Day">Why this day.</param>
/// <param name="Nurse">Why this nurse.</param>
/// <param name="OtherDay">Score of the plan with the visit on the best other day; empty when there is none.</param>
/// <param name="OtherNurse">Score of the plan with another nurse on the same day; empty when there is none.</param>
public sealed record VisitReason(string Visit, PlanningReason Day, PlanningReason Nurse, PlanScore? OtherDay, PlanScore? OtherNurse);
