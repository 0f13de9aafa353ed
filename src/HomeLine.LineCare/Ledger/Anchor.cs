using NodaTime;

namespace HomeLine.LineCare.Ledger;

/// <summary>Why an item has no trustworthy date.</summary>
internal enum MissingDate : byte
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

/// <summary>What a clock runs from, or why there is nothing to run from. The moment is kept beside the entry: clocks need it every time,
/// the entry itself only when somebody reads the reason.</summary>
internal readonly record struct Anchor
{
    private readonly Instant _at;
    private readonly LocalDate _date;
    private readonly bool _hasTime;

    private Anchor(LineEvent entry)
    {
        By = entry;
        FromInsertion = entry.Kind == LineEventKind.Inserted;
        Missing = entry.Performed is null ? MissingDate.Undated : entry.Certainty == Certainty.Guess ? MissingDate.Guess : MissingDate.None;
        if (entry.Performed is not { } performed) return;
        _date = performed.Date;
        _hasTime = performed.At is not null;
        _at = performed.At ?? default;
    }

    public static Anchor None => new() { Missing = MissingDate.NeverRecorded };

    public LineEvent? By { get; }

    public MissingDate Missing { get; private init; }

    public bool FromInsertion { get; }

    public CareMoment Moment => new(_date, _hasTime ? _at : null);

    public bool IsDated => Missing == MissingDate.None && By is not null;

    public static Anchor At(LineEvent entry) => new(entry);

    /// <summary>After a return from hospital a date from before the admission counts only if it was read off the dressing
    /// or the discharge paper since.</summary>
    public Anchor AfterHospital(Instant returnedAt) =>
        By is null || (By.RecordedAt >= returnedAt && By.Certainty is Certainty.WrittenOnDressing or Certainty.DischargePaper)
            ? this
            : this with { Missing = MissingDate.HospitalStay };
}
