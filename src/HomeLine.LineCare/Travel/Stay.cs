using System.Collections.Immutable;
using HomeLine.LineCare.Clocks;
using HomeLine.LineCare.Recording;
using NodaTime;

namespace HomeLine.LineCare.Travel;

/// <summary>Days a patient stays somewhere else.</summary>
/// <param name="From">First day there, included.</param>
/// <param name="Through">Last day there, included.</param>
/// <param name="Zone">Zone of the place.</param>
/// <param name="State">State of the place: a nurse needs its licence.</param>
public sealed record Stay(LocalDate From, LocalDate Through, DateTimeZone Zone, string State)
{
    /// <summary>The code of a stay that ends before it begins, or overlaps another.</summary>
    public const string Unclear = "stay-unclear";

    /// <summary>The code of a stay where no nurse of the agency is licensed.</summary>
    public const string Unlicensed = "stay-unlicensed";

    /// <summary>The state where the patient is on a day.</summary>
    /// <param name="home">State of the home.</param>
    /// <param name="stays">Stays elsewhere.</param>
    /// <param name="on">The day.</param>
    public static string StateOn(string home, ImmutableArray<Stay> stays, LocalDate on) =>
        stays.FirstOrDefault(stay => stay.From <= on && on <= stay.Through)?.State ?? home;

    /// <summary>What would be refused or told if this stay were recorded.</summary>
    /// <param name="others">Stays already recorded.</param>
    /// <param name="licensedStates">States in which a nurse of the agency is licensed through the stay.</param>
    public ImmutableArray<RecordingReply> Replies(ImmutableArray<Stay> others, IReadOnlyCollection<string> licensedStates)
    {
        ArgumentNullException.ThrowIfNull(licensedStates);
        var replies = ImmutableArray.CreateBuilder<RecordingReply>();
        if (Through < From) replies.Add(Reply(Unclear, ReplyWeight.Refuse, "The last day is before the first."));
        else if (others.FirstOrDefault(other => other != this && other.From <= Through && From <= other.Through) is { } other)
            replies.Add(Reply(Unclear, ReplyWeight.Refuse, $"From {Says.Short(other.From)} to {Says.Short(other.Through)} the patient is somewhere else already."));
        if (!licensedStates.Contains(State))
            replies.Add(Reply(Unlicensed, ReplyWeight.Tell,
                $"No nurse is licensed in {State}: care that falls due there is done before leaving, by a validated caregiver, or by an agency there."));
        return replies.ToImmutable();
    }

    private static RecordingReply Reply(string code, ReplyWeight weight, string sentence) => new(code, weight, null, null, null, sentence);
}
