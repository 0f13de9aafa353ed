using HomeLine.Agency.Decisions;

namespace HomeLine.Web.Pages.Decisions;

/// <summary>What may be decided, in words, with what follows from it.</summary>
public static class DecisionWords
{
    public static string InWords(this DecisionChoice choice) => choice switch
    {
        DecisionChoice.Settle => "Settled as the reason says",
        DecisionChoice.AcceptUntil => "Accept as it is until a day",
        DecisionChoice.ConfirmOrder => "The prescriber confirmed the order",
        DecisionChoice.ReleaseLine => "The line may be used",
        DecisionChoice.ConfirmTip => "The tip position is confirmed",
        DecisionChoice.ClearLumen => "The lumen was cleared",
        DecisionChoice.KeepLocked => "Keep it locked and look again on a day",
        DecisionChoice.LockLine => "Lock the line for use",
        DecisionChoice.ReleaseVisits => "The visit goes ahead",
        DecisionChoice.CancelVisits => "No visit",
        DecisionChoice.ToHospital => "The patient goes to hospital",
        DecisionChoice.VerifyCare => "A nurse looked: the care is verified",
        DecisionChoice.PutOnFile => "Put it on file for this patient",
        DecisionChoice.RenewException => "Renew the exception until a day",
        _ => throw new ArgumentOutOfRangeException(nameof(choice), choice, "Unknown choice"),
    };

    /// <summary>What the program does with it, said before it is done.</summary>
    public static string Follows(this DecisionChoice choice) => choice switch
    {
        DecisionChoice.Settle => "Leaves the list. Nothing else changes.",
        DecisionChoice.AcceptUntil => "Leaves the list and comes back after that day.",
        DecisionChoice.ConfirmOrder => "The order’s interval counts from now on.",
        DecisionChoice.ReleaseLine => "The line may be used: every lock of use on it ends, and the length last measured is accepted. The family is told.",
        DecisionChoice.ConfirmTip => "Goes into the ledger; the line may be used.",
        DecisionChoice.ClearLumen => "Goes into the ledger; the lumen may be used.",
        DecisionChoice.KeepLocked => "The lock stays on every page and sheet. The question comes back after that day.",
        DecisionChoice.LockLine => "The line is locked on every page and sheet until a licensed person releases it.",
        DecisionChoice.ReleaseVisits => "Held visits are published as released. Nurse and family are told. A lock on the line stays.",
        DecisionChoice.CancelVisits => "Held visits are taken out of the published week. Nurse and family are told.",
        DecisionChoice.ToHospital => "Planning stops, coming visits are taken out, the clocks run on. A lock on the line stays.",
        DecisionChoice.VerifyCare => "A site check goes into the ledger.",
        DecisionChoice.PutOnFile => "Kits, sheets, questions and due dates go by it from now on, until a licensed person takes it off the roster.",
        DecisionChoice.RenewException => "The exception applies again through that day.",
        _ => throw new ArgumentOutOfRangeException(nameof(choice), choice, "Unknown choice"),
    };

    public static string InWords(this DecisionGroup group) => group switch
    {
        DecisionGroup.Now => "Cannot wait",
        DecisionGroup.Next => "The stricter rule holds meanwhile",
        _ => throw new ArgumentOutOfRangeException(nameof(group), group, "Unknown group"),
    };
}
