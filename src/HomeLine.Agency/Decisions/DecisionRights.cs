using System.Collections.Immutable;
using HomeLine.Agency.Access;
using HomeLine.LineCare;
using static HomeLine.Agency.Decisions.DecisionChoice;

namespace HomeLine.Agency.Decisions;

/// <summary>How pressing a question is.</summary>
public enum DecisionGroup
{
    /// <summary>Somebody may be harmed while it waits, or a line or visit stands still.</summary>
    Now,

    /// <summary>Care goes on by the stricter rule meanwhile.</summary>
    Next,
}

/// <summary>What may be decided about one kind of question, and by whom.</summary>
/// <param name="Title">The question in a few words.</param>
/// <param name="Group">How pressing.</param>
/// <param name="ByNurse">Whether a nurse may decide as well; a clinical manager always may.</param>
/// <param name="Choices">What may be decided.</param>
public sealed record DecisionRight(string Title, DecisionGroup Group, bool ByNurse, ImmutableArray<DecisionChoice> Choices)
{
    /// <summary>Whether this person may decide.</summary>
    public bool Allows(Actor actor) =>
        actor.Roles.Contains(AgencyRole.ClinicalManager) || (ByNurse && actor.Roles.Contains(AgencyRole.Nurse));

    /// <summary>Who may decide, in words.</summary>
    public string Who => ByNurse ? "A clinical manager or a nurse" : "A clinical manager";
}

/// <summary>The written table of who may decide what. Our own defaults, for the agency's clinical lead to sign.</summary>
public static class DecisionRights
{
    /// <summary>What may be decided about a question of this code.</summary>
    public static DecisionRight Of(string code) => code switch
    {
        AppDecisionCodes.ScreenStopped => new("A symptom screen stopped a call", DecisionGroup.Now, false, [ToHospital, ReleaseVisits, CancelVisits]),
        DecisionCodes.UseLocked => new("A line is locked for use", DecisionGroup.Now, false, [KeepLocked, ToHospital, ReleaseLine]),
        AppDecisionCodes.VisitHeld => new("A visit waits at the door", DecisionGroup.Now, false, [ReleaseVisits, CancelVisits, ToHospital]),
        DecisionCodes.RemovedShorter => new("A removed catheter is too short", DecisionGroup.Now, false, [Settle]),
        DecisionCodes.LengthGrew => new("A line is longer outside", DecisionGroup.Now, false, [KeepLocked, AcceptUntil, LockLine, ReleaseLine]),
        DecisionCodes.TipUnconfirmed => new("A tip position is not confirmed", DecisionGroup.Now, false, [KeepLocked, ConfirmTip]),
        DecisionCodes.Chlorhexidine => new("Chlorhexidine on a patient who must not have it", DecisionGroup.Now, false, [Settle]),
        DecisionCodes.NoDressing => new("A site that is not healed has no dressing", DecisionGroup.Now, false, [AcceptUntil, Settle]),
        DecisionCodes.DoseNotRecorded => new("A dose is not recorded", DecisionGroup.Now, false, [Settle]),
        AppDecisionCodes.RefusedTwice => new("Care was refused more than once", DecisionGroup.Now, false, [Settle, AcceptUntil]),
        DecisionCodes.LumenOccluded => new("A lumen is occluded", DecisionGroup.Next, false, [KeepLocked, ClearLumen]),
        DecisionCodes.LengthShrank => new("A line is shorter outside", DecisionGroup.Next, false, [Settle, LockLine]),
        DecisionCodes.GirthRose => new("An arm is wider", DecisionGroup.Now, false, [Settle, LockLine]),
        DecisionCodes.MidlineDwell => new("A midline has been in long", DecisionGroup.Next, false, [AcceptUntil, Settle]),
        DecisionCodes.LevelWithoutDoseTimes => new("A level has no dose times", DecisionGroup.Next, true, [Settle]),
        DecisionCodes.LooserOrder => new("An order is looser than policy", DecisionGroup.Next, false, [ConfirmOrder, Settle]),
        DecisionCodes.OrderIntervalOutOfRange => new("An order's interval cannot be right", DecisionGroup.Next, false, [Settle]),
        DecisionCodes.ContradictedDate => new("Two dates contradict each other", DecisionGroup.Next, true, [Settle]),
        DecisionCodes.CaregiverNotValidated => new("Nobody is validated for a caregiver's task", DecisionGroup.Next, false, [AcceptUntil, Settle]),
        DecisionCodes.ValidationLapsed => new("A caregiver's validation has lapsed", DecisionGroup.Next, false, [AcceptUntil, Settle]),
        DecisionCodes.UnverifiedCare => new("Care by somebody not validated", DecisionGroup.Next, true, [VerifyCare]),
        DecisionCodes.BirthDateMissing => new("A birth date is missing", DecisionGroup.Next, true, [AcceptUntil]),
        DecisionCodes.OutsideCareNotReported => new("Care from outside is not reported", DecisionGroup.Next, true, [Settle]),
        AppDecisionCodes.ExceptionEnded => new("An exception has ended", DecisionGroup.Next, false, [RenewException, Settle]),
        AppDecisionCodes.AntisepticReactionFound => new("A reaction to the antiseptic", DecisionGroup.Now, false, [PutOnFile, Settle]),
        AppDecisionCodes.AdhesiveInjuryFound => new("A skin injury from adhesive", DecisionGroup.Next, false, [PutOnFile, Settle]),
        AppDecisionCodes.ProtectedWish => new("A wish about a protected trait of staff", DecisionGroup.Next, false, [Settle]),
        AppDecisionCodes.OrderRequested => new("An order is needed for a safety visit", DecisionGroup.Next, true, [Settle]),
        _ => throw new ArgumentOutOfRangeException(nameof(code), code, "No right is written down for this question"),
    };

    /// <summary>
    /// Whether the record alone takes the question off the list. Otherwise only the facts do: a lock whose release was voided comes back by itself.
    /// </summary>
    public static bool IsSettledByRecord(string code, DecisionChoice choice) =>
        choice is Settle or AcceptUntil or KeepLocked or LockLine or PutOnFile || code == AppDecisionCodes.ExceptionEnded;

    /// <summary>Whether the choice lasts until a day that must be given, or is set to the longest allowed.</summary>
    public static bool NeedsEnd(DecisionChoice choice) => choice is AcceptUntil or KeepLocked or RenewException;
}
