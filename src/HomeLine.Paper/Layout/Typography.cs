using System.Collections.Immutable;

namespace HomeLine.Paper.Layout;

/// <summary>Sizes in points and the room around text, for one edition of a sheet.</summary>
public sealed record Typography
{
    public required double Body { get; init; }
    public required double Heading1 { get; init; }
    public required double Heading2 { get; init; }

    /// <summary>The main message.</summary>
    public required double Lead { get; init; }

    /// <summary>Telephone numbers that must be found in a hurry.</summary>
    public required double Number { get; init; }

    /// <summary>Page furniture and less important lines.</summary>
    public required double Small { get; init; }

    /// <summary>Baseline to baseline, as a multiple of the size.</summary>
    public required double LineSpacing { get; init; }

    /// <summary>White edge on all four sides, in points.</summary>
    public required double Margin { get; init; }

    /// <summary>Room between two blocks, in points.</summary>
    public required double BlockGap { get; init; }

    /// <summary>Blocks meant to stand side by side are stacked instead.</summary>
    public bool SingleColumn { get; init; }

    /// <summary>Caregiver sheet: at least 14 points for everything a caregiver must read (our own default).</summary>
    public static Typography Normal { get; } = new()
    {
        Body = 14,
        Heading1 = 20,
        Heading2 = 15,
        Lead = 16,
        Number = 20,
        Small = 12,
        LineSpacing = 1.17,
        Margin = 36,
        BlockGap = 6,
    };

    /// <summary>The same letters with less room between the lines, so that a somewhat longer sheet still fits its page.</summary>
    public static ImmutableArray<Typography> NormalCloser { get; } =
    [
        Normal with { LineSpacing = 1.14, Margin = 34, BlockGap = 5 },
        Normal with { LineSpacing = 1.12, Margin = 32, BlockGap = 5 },
        Normal with { LineSpacing = 1.1, Margin = 32, BlockGap = 4 },
    ];

    /// <summary>
    /// Large print: 18 points or more, headings 22 and 20, one column, 1-inch margins, spacing at least 1.15
    /// (American Council of the Blind, Best Practices and Guidelines for Large Print Documents, 2022).
    /// </summary>
    public static Typography LargePrint { get; } = new()
    {
        Body = 18,
        Heading1 = 22,
        Heading2 = 20,
        Lead = 20,
        Number = 24,
        Small = 18,
        LineSpacing = 1.25,
        Margin = 72,
        BlockGap = 12,
        SingleColumn = true,
    };

    /// <summary>Working papers of staff, read at a desk or in a car (our own default).</summary>
    public static Typography Working { get; } = new()
    {
        Body = 11,
        Heading1 = 16,
        Heading2 = 12.5,
        Lead = 12,
        Number = 12.5,
        Small = 10,
        LineSpacing = 1.2,
        Margin = 36,
        BlockGap = 5,
    };
}
