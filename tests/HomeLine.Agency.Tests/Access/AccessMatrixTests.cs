using HomeLine.Agency.Access;
using static HomeLine.Agency.Access.AgencyAction;
using static HomeLine.Agency.Access.AgencyRole;

namespace HomeLine.Agency.Tests.Access;

/// <summary>The whole matrix, written down a second time: our own default, to be signed by the agency.</summary>
public sealed class AccessMatrixTests
{
    private static readonly Dictionary<AgencyAction, AgencyRole[]> Written = new()
    {
        [SeeDueList] = [Administrator, ClinicalManager, Coordinator, Nurse],
        [SeePatient] = [Administrator, ClinicalManager, Coordinator, Nurse],
        [SeeWeek] = [Administrator, ClinicalManager, Coordinator, Nurse],
        [PlanWeek] = [ClinicalManager, Coordinator],
        [PlanOwnWeek] = [Nurse],
        [PublishWeek] = [ClinicalManager, Coordinator],
        [ReportProblem] = [ClinicalManager, Coordinator, Nurse],
        [ApplyAnswer] = [ClinicalManager, Coordinator],
        [SeeDecisions] = [ClinicalManager, Coordinator, Nurse],
        [Decide] = [ClinicalManager, Nurse],
        [EditPolicy] = [ClinicalManager],
        [TakeOrder] = [ClinicalManager, Nurse],
        [ValidateCaregiver] = [ClinicalManager, Nurse],
        [KeepReferral] = [ClinicalManager, Coordinator, Nurse],
        [HoldPatient] = [ClinicalManager, Coordinator, Nurse],
        [CorrectPatient] = [ClinicalManager, Coordinator, Nurse],
        [KeepHomeSigns] = [ClinicalManager, Coordinator, Nurse],
        [SeeMyDay] = [ClinicalManager, Coordinator, Nurse],
        [AddLine] = [ClinicalManager, Nurse],
        [RecordVisit] = [ClinicalManager, Nurse],
        [CoSignVisit] = [ClinicalManager, Nurse],
        [TellPractitioner] = [ClinicalManager, Coordinator, Nurse],
        [SeeRideAlongs] = [ClinicalManager, Coordinator, Nurse],
        [RecordRideAlong] = [ClinicalManager, Nurse],
        [PrintCareSheet] = [Administrator, ClinicalManager, Coordinator, Nurse],
        [PrintDaySheet] = [Administrator, ClinicalManager, Coordinator, Nurse],
        [ImportRoster] = [Administrator, Coordinator],
        [ManageAccounts] = [Administrator],
        [SeeQuality] = [ClinicalManager, Coordinator],
        [ReviewCase] = [ClinicalManager],
        [SeeAuditTrail] = [Administrator, ClinicalManager],
    };

    public static TheoryData<AgencyRole, AgencyAction> Everything() =>
        new(Enum.GetValues<AgencyRole>().SelectMany(role => Enum.GetValues<AgencyAction>(), (role, action) => (role, action)));

    [Theory]
    [MemberData(nameof(Everything))]
    public void Each_role_may_do_exactly_what_is_written(AgencyRole role, AgencyAction action)
    {
        bool may = Written[action].Contains(role);
        var actor = new Actor("u", "U", [role]);
        Assert.Equal(may, actor.Allows(action));
        Assert.Equal(may ? null : "not-allowed", actor.Refuse(action)?.Code);
    }

    [Fact]
    public void Nobody_without_a_role_may_do_anything() =>
        Assert.All(Enum.GetValues<AgencyAction>(), action => Assert.False(new Actor("u", "U", []).Allows(action)));

    [Fact]
    public void Two_roles_may_do_what_either_may()
    {
        var both = new Actor("u", "U", [Nurse, Administrator]);
        Assert.True(both.Allows(ReportProblem));
        Assert.True(both.Allows(ManageAccounts));
        Assert.False(both.Allows(PublishWeek));
    }
}
