using HomeLine.LineCare.Clocks;

namespace HomeLine.LineCare.Recording;

/// <summary>A length as somebody gave it, in centimetres; inches are converted and have to be confirmed.</summary>
/// <param name="Centimetres">In centimetres, rounded to a tenth when converted.</param>
/// <param name="Confirm">What has to be confirmed before it is saved; empty when it was given in centimetres.</param>
public sealed record MeasuredLength(decimal Centimetres, RecordingReply? Confirm)
{
    /// <summary>Centimetres in an inch, by definition (international yard and pound agreement, 1959).</summary>
    public const decimal CentimetresInAnInch = 2.54m;

    /// <summary>A length in centimetres.</summary>
    /// <param name="value">Centimetres.</param>
    public static MeasuredLength FromCentimetres(decimal value) => new(value, null);

    /// <summary>A length in inches, to be confirmed: lines are measured in centimetres, and a mistaken unit looks like a line that moved.</summary>
    /// <param name="value">Inches.</param>
    public static MeasuredLength FromInches(decimal value)
    {
        var converted = Math.Round(value * CentimetresInAnInch, 1, MidpointRounding.AwayFromZero);
        return new MeasuredLength(converted, new RecordingReply(
            RecordingCodes.LengthInInches, ReplyWeight.Ask, null, null, null,
            $"{Says.Amount(value, "in")} are {Says.Amount(converted, "cm")}: is that what was measured?"));
    }
}
