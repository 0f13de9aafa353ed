using NodaTime;

namespace HomeLine.LineCare.Ledger;

/// <summary>Why an item has no trustworthy date.</summary>
internal enum MissingDate
{
    /// <summary>It has one.</summary>
    None,

    /// <summary>Nothing was ever recorded.</summary>
    NeverRecorded,

    /// <summary>It was recorded without a date.</summary>
    Undated,

    /// <summary>The date was a guess.</summary>
    Guess,

    /// <summary>A hospital stay came after it and nobody has reconciled the item since.</summary>
    HospitalStay,
}

/// <summary>What a clock runs from, or why there is nothing to run from.</summary>
internal readonly record struct Anchor(LineEvent? By, MissingDate Missing)
{
    public static readonly Anchor None = new(null, MissingDate.NeverRecorded);

    public CareMoment Moment => By!.Performed!.Value;

    public bool IsDated => Missing == MissingDate.None && By is not null;

    public bool FromInsertion => By?.Kind == LineEventKind.Inserted;

    public static Anchor At(LineEvent entry) => new(
        entry,
        entry.Performed is null ? MissingDate.Undated
        : entry.Certainty == Certainty.Guess ? MissingDate.Guess
        : MissingDate.None);

    /// <summary>After a return from hospital a date from before the admission counts only if it was read off the dressing
    /// or the discharge paper since.</summary>
    public Anchor AfterHospital(Instant returnedAt) =>
        By is null || (By.RecordedAt >= returnedAt && By.Certainty is Certainty.WrittenOnDressing or Certainty.DischargePaper)
            ? this
            : this with { Missing = MissingDate.HospitalStay };
}
