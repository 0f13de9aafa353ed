using NodaTime;

namespace HomeLine.LineCare.Ledger;

/// <summary>
/// A date read off the dressing speaks about the dressing that is on. A weaker source (discharge paper, a caregiver's call) that claims a later
/// change, yet before the moment the date was read, cannot be true: the date on the dressing stands. When the weaker word came
/// after the stronger one, a licensed person is asked.
/// </summary>
internal static class Statement
{
    /// <summary>Whether <paramref name="later"/> (performed after <paramref name="current"/>) becomes the anchor, and which entry has to be asked about.</summary>
    public static (bool Kept, LineEvent? Asks) Weigh(Anchor current, LineEvent later, DateTimeZone zone)
    {
        if (current.By is not { Certainty: Certainty.WrittenOnDressing } read || !current.IsDated) return (true, null);
        if (later.Certainty is not (Certainty.DischargePaper or Certainty.CaregiverByPhone)) return (true, null);
        if (later.Performed is not { } claimed || claimed.Date == current.Moment.Date) return (true, null);
        var beforeItWasRead = claimed.At is { } at
            ? at <= read.RecordedAt
            : claimed.Date < read.RecordedAt.InZone(zone).Date;
        if (!beforeItWasRead) return (true, null);
        return (false, later.RecordedAt > read.RecordedAt ? later : null);
    }
}
