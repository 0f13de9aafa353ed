using System.Collections.Immutable;
using HomeLine.LineCare.Ledger;
using HomeLine.LineCare.Lines;
using HomeLine.LineCare.Recording;

namespace HomeLine.Agency.Visits;

/// <summary>Blood on drawing back.</summary>
public enum BloodReturn
{
    /// <summary>Nobody drew back.</summary>
    NotChecked,
    Brisk,
    Sluggish,
    None,
}

/// <summary>One line as the nurse found it.</summary>
public sealed record LineEntry
{
    public required LineId Line { get; init; }

    /// <summary>The nurse looked at the site and said what was there, nothing among it.</summary>
    public bool Looked { get; init; }
    public SiteFinding Found { get; init; }
    public string FoundText { get; init; } = "";

    /// <summary>How the seal was found on arrival; none when intact.</summary>
    public SealFinding AsFound { get; init; }

    /// <summary>An edge was taped down without a change.</summary>
    public bool Reinforced { get; init; }

    /// <summary>The port needle was taken out and none put in.</summary>
    public bool NeedleOut { get; init; }

    /// <summary>Length outside the body, in the unit it was measured in.</summary>
    public decimal? OutsideLength { get; init; }
    public bool InInches { get; init; }
    public decimal? ArmGirthCm { get; init; }

    /// <summary>Length of the catheter that was taken out, centimetres.</summary>
    public decimal? RemovedLengthCm { get; init; }
    public ImmutableArray<LumenEntry> Lumens { get; init; } = [];

    /// <summary>The length outside in centimetres, converted when it was given in inches.</summary>
    public decimal? OutsideLengthCm() => OutsideLength is not { } length ? null : Measured(length).Centimetres;

    internal MeasuredLength Measured(decimal length) => InInches ? MeasuredLength.FromInches(length) : MeasuredLength.FromCentimetres(length);
}

/// <summary>One lumen as the nurse left it.</summary>
public sealed record LumenEntry(string Label, bool Flushed, BloodReturn Return = BloodReturn.NotChecked, bool WontFlush = false);
