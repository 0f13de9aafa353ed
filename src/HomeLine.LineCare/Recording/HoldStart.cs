using HomeLine.LineCare.Clocks;
using NodaTime;

namespace HomeLine.LineCare.Recording;

/// <summary>The first day of a hold. Without one it starts today, said so.</summary>
/// <param name="From">First day, included.</param>
/// <param name="Flag">What has to be found out; empty when the day was given.</param>
public sealed record HoldStart(LocalDate From, RecordingReply? Flag)
{
    /// <summary>The day given, or today with a flag.</summary>
    /// <param name="given">The first day as somebody gave it; empty when unknown.</param>
    /// <param name="today">Today at the patient's place.</param>
    public static HoldStart Of(LocalDate? given, LocalDate today) => given is { } day
        ? new HoldStart(day, null)
        : new HoldStart(today, new RecordingReply(
            RecordingCodes.HoldWithoutStart, ReplyWeight.Ask, null, null, null,
            $"The hold has no first day: it starts today, {Says.Short(today)}. Since when has the patient been away?"));
}
