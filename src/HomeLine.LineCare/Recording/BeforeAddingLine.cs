using System.Collections.Immutable;
using HomeLine.LineCare.Clocks;
using HomeLine.LineCare.Ledger;
using HomeLine.LineCare.Lines;
using HomeLine.LineCare.Policy;
using NodaTime;

namespace HomeLine.LineCare.Recording;

/// <summary>What would be refused, asked or told if a line were added to a patient, or its standing facts changed.</summary>
public static class BeforeAddingLine
{
    /// <summary>Every reply, refusals first; empty when nothing stands against it.</summary>
    /// <param name="care">The patient as recorded.</param>
    /// <param name="line">The line as it would stand.</param>
    /// <param name="policy">The policy book.</param>
    /// <param name="now">The instant of saving.</param>
    public static ImmutableArray<RecordingReply> Replies(PatientCare care, Line line, PolicyBook policy, Instant now)
    {
        ArgumentNullException.ThrowIfNull(care);
        ArgumentNullException.ThrowIfNull(line);
        ArgumentNullException.ThrowIfNull(policy);
        var today = now.InZone(care.Zone).Date;
        var replies = new List<RecordingReply>();
        void Add(string code, ReplyWeight weight, string sentence) => replies.Add(new RecordingReply(code, weight, line.Id, null, null, sentence));

        if (line.InsertedOn > today) Add(LineCodes.InsertedInFuture, ReplyWeight.Refuse, $"{Says.Short(line.InsertedOn.Value)} lies in the future: add the line once it is in.");
        if (line.Lumens.IsDefaultOrEmpty || line.Lumens.Select(lumen => lumen.Label).Distinct(StringComparer.Ordinal).Count() < line.Lumens.Length
            || line.Lumens.Any(lumen => string.IsNullOrWhiteSpace(lumen.Label)))
            Add(LineCodes.LumensUnclear, ReplyWeight.Refuse, "A line has at least one lumen, each with its own letter.");
        var most = policy.ValueOf(RuleIds.OutsideLengthMost, today);
        if (line.OutsideLengthCm is < 0 || line.OutsideLengthCm > most)
            Add(RecordingCodes.LengthOutOfRange, ReplyWeight.Refuse, $"A length of {Says.Amount(line.OutsideLengthCm!.Value, "cm")} outside cannot be: 0 to {Says.Amount(most, "cm")}.");
        if (line.InsertedLengthCm is <= 0 || line.InsertedLengthCm > policy.ValueOf(RuleIds.RemovedLengthMost, today))
            Add(RecordingCodes.LengthOutOfRange, ReplyWeight.Refuse, $"An inserted length of {Says.Amount(line.InsertedLengthCm!.Value, "cm")} cannot be.");
        AskAboutHealing(line, policy, today, Add);
        if (!line.TipConfirmed && line.Kind.IsCentral() && line.Kind != LineKind.DialysisCatheter)
            Add(DecisionCodes.TipUnconfirmed, ReplyWeight.Tell, "The tip position is not confirmed: the line is not for use until it is.");
        if (line.Kind == LineKind.DialysisCatheter)
            Add(LineCodes.NotOurs, ReplyWeight.Tell, "A dialysis catheter is recorded so that nobody overlooks it; it is not for our use.");
        foreach (var other in Overlapping(care, line, now))
            Add(LineCodes.Overlaps, ReplyWeight.Ask, $"{other.Id} is the same kind on the same side and still in: an exchange, or the same line entered twice?");
        return [.. replies.OrderBy(reply => reply.Weight)];
    }

    private static void AskAboutHealing(Line line, PolicyBook policy, LocalDate today, Action<string, ReplyWeight, string> add)
    {
        if (!line.ExitSiteHealed) return;
        var days = (int)policy.ValueOf(RuleIds.HealedAfter, today);
        if (line.Kind != LineKind.Tunneled)
            add(LineCodes.HealedEarly, ReplyWeight.Refuse, "Only a tunneled line heals so that it may go without a dressing.");
        else if (line.InsertedOn is { } placed && today < placed.PlusDays(days))
            add(LineCodes.HealedEarly, ReplyWeight.Ask, $"Placed {Says.Short(placed)}: healing usually takes about {days} days. Has a nurse documented it as healed?");
    }

    /// <summary>Lines of the same kind on the same side that no entry has ended; lines without a side are compared by kind alone.</summary>
    private static IEnumerable<Line> Overlapping(PatientCare care, Line line, Instant now)
    {
        var ledger = OrderedLedger.Read(care.Events, care.Zone, now);
        return care.Lines.Where(other => other.Id != line.Id && other.Kind == line.Kind
            && (SideOf(other) is not { } one || SideOf(line) is not { } two || one == two)
            && !ledger.Any(entry => entry.Line == other.Id && entry.Kind is LineEventKind.Removed or LineEventKind.Exchanged));
    }

    private static string? SideOf(Line line) =>
        line.Site.Contains("left", StringComparison.OrdinalIgnoreCase) ? "left"
        : line.Site.Contains("right", StringComparison.OrdinalIgnoreCase) ? "right"
        : null;
}
