namespace HomeLine.Agency.Decisions;

/// <summary>What a licensed person may decide. Which of these a question offers is <see cref="DecisionRights"/>.</summary>
public enum DecisionChoice
{
    /// <summary>Settled with the reason given; nothing else changes.</summary>
    Settle,

    /// <summary>Accepted as it is until a day; then the question comes back.</summary>
    AcceptUntil,

    /// <summary>The prescriber confirmed the order; its interval counts.</summary>
    ConfirmOrder,

    /// <summary>The line may be used again; a length that was measured is accepted.</summary>
    ReleaseLine,

    /// <summary>The tip position is confirmed.</summary>
    ConfirmTip,

    /// <summary>The lumen was cleared.</summary>
    ClearLumen,

    /// <summary>The lock stays; looked at again on a day.</summary>
    KeepLocked,

    /// <summary>The line is locked for use.</summary>
    LockLine,

    /// <summary>Held visits go ahead.</summary>
    ReleaseVisits,

    /// <summary>Held visits are taken out of the plan.</summary>
    CancelVisits,

    /// <summary>The patient goes to hospital: planning pauses, the coming visits are taken out of the plan, the clocks run on.</summary>
    ToHospital,

    /// <summary>A nurse looked at care given by somebody not validated.</summary>
    VerifyCare,

    /// <summary>An exception that ended is renewed until a day.</summary>
    RenewException,

    /// <summary>Put on file for the patient: materials and early changes go by it from now on.</summary>
    PutOnFile,
}
