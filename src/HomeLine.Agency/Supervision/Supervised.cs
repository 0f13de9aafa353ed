using HomeLine.Agency.Roster;
using HomeLine.LineCare.Policy;
using NodaTime;

namespace HomeLine.Agency.Supervision;

/// <summary>Who works under supervision, who may supervise, and how often policy asks for it. State practice acts differ; the days are policy.</summary>
public static class Supervised
{
    /// <summary>The word among a nurse's traits that marks a trainee.</summary>
    public const string Trainee = "trainee";

    private const string PracticalNurse = "LPN", RegisteredNurse = "RN";

    /// <summary>A practical nurse, or anybody marked as a trainee.</summary>
    public static bool Needs(NurseFile nurse) => nurse.Credential == PracticalNurse || IsTrainee(nurse);

    /// <summary>A registered nurse who is no trainee herself.</summary>
    public static bool BySupervisor(NurseFile nurse) => nurse.Credential == RegisteredNurse && !IsTrainee(nurse);

    public static bool IsTrainee(NurseFile nurse) => nurse.Traits.Contains(Trainee);

    /// <summary>The rule that counts for a nurse under supervision: a trainee's, if she is one.</summary>
    public static string RuleOf(NurseFile nurse) => IsTrainee(nurse) ? "supervision.trainee.max" : "supervision.practicalnurse.max";

    /// <summary>Most days from one supervision to the next.</summary>
    public static int MostDays(NurseFile nurse, PolicyBook policy, LocalDate on) => (int)policy.ValueOf(RuleOf(nurse), on);
}
