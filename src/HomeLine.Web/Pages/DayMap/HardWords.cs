using HomeLine.Agency.DayMap;
using HomeLine.Web.Parts;

namespace HomeLine.Web.Pages.DayMap;

/// <summary>A trip that is slower than usual or waits for a road, in words.</summary>
public static class HardWords
{
    /// <summary>On the map.</summary>
    public static string OnTheMap(HardLeg leg) => leg switch
    {
        { WaitMinutes: > 0, SlowMinutes: > 0 } => $"waits {leg.WaitMinutes} min, slow +{leg.SlowMinutes}",
        { WaitMinutes: > 0 } => $"waits {leg.WaitMinutes} min",
        _ => $"slow +{leg.SlowMinutes} min",
    };

    /// <summary>In the list.</summary>
    public static string InTheList(HardLeg leg) => string.Join(' ', new[]
    {
        leg is { WaitMinutes: > 0, Opens: { } opens } ? $"Waits {PlainDates.Minutes(leg.WaitMinutes)} before, until the road opens at {opens.InWords()}." : "",
        leg.SlowMinutes > 0 ? $"{PlainDates.Minutes(leg.SlowMinutes)} of the drive because roads are slow at that hour." : "",
    }.Where(words => words.Length > 0));
}
