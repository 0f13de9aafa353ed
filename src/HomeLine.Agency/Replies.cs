using System.Collections.Immutable;
using HomeLine.LineCare.Recording;

namespace HomeLine.Agency;

/// <summary>Turns what the record objects to into a refusal: outright, or until somebody has answered.</summary>
internal static class Replies
{
    /// <summary>The first reply that stands in the way; nothing when only consequences are told, or the questions were answered.</summary>
    public static Refusal? Refusal(ImmutableArray<RecordingReply> replies, string answered)
    {
        if (replies.FirstOrDefault(r => r.Weight == ReplyWeight.Refuse) is { } refused)
            return new Refusal(refused.Code, refused.Sentence, "What was typed is kept: correct it and try again.");
        return string.IsNullOrWhiteSpace(answered) && replies.FirstOrDefault(r => r.Weight == ReplyWeight.Ask) is { } asked
            ? new Refusal(asked.Code, asked.Sentence, "Answer in a few words, then keep it.")
            : null;
    }
}
