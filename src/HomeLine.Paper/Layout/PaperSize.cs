namespace HomeLine.Paper.Layout;

/// <summary>The sheet of paper in the printer.</summary>
public enum PaperSize
{
    /// <summary>8.5 by 11 inches (ANSI/ASME Y14.1, size A).</summary>
    Letter,

    /// <summary>210 by 297 mm (ISO 216).</summary>
    A4,
}

/// <summary>Measures of the paper sizes.</summary>
public static class PaperSizeMeasures
{
    private const double PointsPerMillimetre = 72 / 25.4;

    /// <summary>Width in points, 72 to the inch.</summary>
    public static double Width(this PaperSize size) => size switch
    {
        PaperSize.Letter => 612,
        PaperSize.A4 => 210 * PointsPerMillimetre,
        _ => throw new ArgumentOutOfRangeException(nameof(size)),
    };

    /// <summary>Height in points, 72 to the inch.</summary>
    public static double Height(this PaperSize size) => size switch
    {
        PaperSize.Letter => 792,
        PaperSize.A4 => 297 * PointsPerMillimetre,
        _ => throw new ArgumentOutOfRangeException(nameof(size)),
    };
}
