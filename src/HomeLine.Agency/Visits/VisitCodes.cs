namespace HomeLine.Agency.Visits;

/// <summary>The codes of what is refused, asked or told before a visit is signed, beside those of the record of care. Stable; listed in docs/reasons.md.</summary>
public static class VisitCodes
{
    /// <summary>The arrival is not given.</summary>
    public const string ArrivalMissing = "arrival-missing";

    /// <summary>The visit lies in the future.</summary>
    public const string InTheFuture = "visit-in-future";

    /// <summary>A planned item was neither done nor not done.</summary>
    public const string ItemUnsaid = "item-unsaid";

    /// <summary>An item was not done and nobody says why.</summary>
    public const string WhyMissing = "not-done-without-reason";

    /// <summary>The symptom questions were not asked.</summary>
    public const string SignsUnasked = "signs-unasked";

    /// <summary>A line that was cared for was not looked at.</summary>
    public const string SiteUnsaid = "site-unsaid";

    /// <summary>The patient has another line that nobody looked at.</summary>
    public const string OtherLineUnseen = "other-line-unseen";

    /// <summary>Blood was to be drawn and the draw is not described.</summary>
    public const string DrawMissing = "draw-missing";

    /// <summary>An unplanned visit without a reason.</summary>
    public const string UnplannedWithoutReason = "unplanned-without-reason";

    /// <summary>Somebody is validated who did not do it alone.</summary>
    public const string TeachingNotIndependent = "teaching-not-independent";

    /// <summary>A caregiver or learner is not named.</summary>
    public const string PersonMissing = "teaching-person-missing";

    /// <summary>The device's clock differs from the program's.</summary>
    public const string DeviceClock = "device-clock-differs";

    /// <summary>Somebody recorded the same care already.</summary>
    public const string RecordedTwice = "care-recorded-twice";

    /// <summary>It was written down long after it was done.</summary>
    public const string LateEntry = "late-entry";

    /// <summary>No blood came back.</summary>
    public const string NoBloodReturn = "no-blood-return";

    /// <summary>An incident needs words.</summary>
    public const string IncidentWithoutWords = "incident-without-words";

    /// <summary>Words in the note may mean a red flag.</summary>
    public const string WordsThatAsk = "words-that-ask";
}
