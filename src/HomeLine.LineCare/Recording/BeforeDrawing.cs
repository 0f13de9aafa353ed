using System.Collections.Immutable;
using HomeLine.LineCare.Clocks;
using HomeLine.LineCare.Orders;
using HomeLine.LineCare.Policy;
using NodaTime;

namespace HomeLine.LineCare.Recording;

/// <summary>What is refused, asked or told before a draw is recorded. A level means nothing without the time of the dose before it, and one drawn
/// through the lumen that carried the drug reads high (common practice, no source).</summary>
public static class BeforeDrawing
{
    /// <summary>Every reply, refusals first.</summary>
    /// <param name="care">The patient as recorded.</param>
    /// <param name="draw">The draw.</param>
    /// <param name="policy">The policy book; <c>dose.tolerance</c> and <c>specimen.drawtodrop.max</c>, in minutes.</param>
    /// <param name="now">The instant of saving.</param>
    public static ImmutableArray<RecordingReply> Replies(PatientCare care, Draw draw, PolicyBook policy, Instant now)
    {
        ArgumentNullException.ThrowIfNull(care);
        ArgumentNullException.ThrowIfNull(draw);
        ArgumentNullException.ThrowIfNull(policy);
        var replies = new List<RecordingReply>();
        void Add(string code, ReplyWeight weight, string sentence) => replies.Add(new RecordingReply(code, weight, draw.Line, draw.Lumen, null, sentence));

        if (draw.DrawnAt is not { } drawn)
        {
            Add(RecordingCodes.DrawTimeMissing, ReplyWeight.Refuse, "When was it drawn?");
            return [.. replies];
        }

        var today = now.InZone(care.Zone).Date;
        if (drawn > now) Add(RecordingCodes.InTheFuture, ReplyWeight.Refuse, "The draw lies in the future: record it once it is done.");
        var order = care.Orders.FirstOrDefault(one => one.Id == draw.Order);
        if (order is { Kind: OrderKind.DrugLevel }) Level(care, draw, order, drawn, policy.ValueOf(RuleIds.DoseTolerance, today), Add);
        if (draw.DroppedAt is { } dropped)
        {
            var most = policy.ValueOf(RuleIds.DrawToDrop, today);
            if (dropped < drawn) Add(RecordingCodes.InTheFuture, ReplyWeight.Refuse, "It was handed in before it was drawn: correct one of the two times.");
            else if ((decimal)(dropped - drawn).TotalMinutes > most)
                Add(RecordingCodes.DropLate, ReplyWeight.Tell, $"Handed in {(dropped - drawn).TotalMinutes:0} minutes after the draw; policy lets {most:0} pass. Tell the laboratory.");
        }

        return [.. replies.OrderBy(reply => reply.Weight)];
    }

    private static void Level(
        PatientCare care, Draw draw, CareOrder order, Instant drawn, decimal tolerance, Action<string, ReplyWeight, string> add)
    {
        if (draw.LastDose is not { } last)
        {
            add(RecordingCodes.LevelWithoutLastDose, ReplyWeight.Refuse, "A level cannot be closed without the time of the last dose: ask when it was given.");
            return;
        }

        if (last > drawn) add(RecordingCodes.LevelWithoutLastDose, ReplyWeight.Refuse, "The last dose before the level lies after the draw: correct one of the two times.");
        else if (ScheduledBefore(order, drawn, care.Zone) is { } scheduled && (decimal)Math.Abs((last - scheduled).TotalMinutes) > tolerance)
            add(RecordingCodes.LevelOffDose, ReplyWeight.Ask,
                $"The last dose was {Says.Moment(last, care.Zone)}, ordered for {Says.Moment(scheduled, care.Zone)}: tell the pharmacist with the level. What did they say?");
        if (draw.Line is { } line && care.Infusions.Any(infusion => infusion.Line == line && infusion.Lumen == draw.Lumen))
            add(RecordingCodes.LevelFromDrugLumen, ReplyWeight.Ask,
                $"Lumen {draw.Lumen} gives the drug: a level drawn through it reads high. Was there no other way, and is the laboratory told?");
    }

    /// <summary>The latest ordered dose at or before the draw, at the patient's place.</summary>
    private static Instant? ScheduledBefore(CareOrder order, Instant drawn, DateTimeZone zone)
    {
        if (order.DoseTimes.IsDefaultOrEmpty) return null;
        var local = drawn.InZone(zone).LocalDateTime;
        return order.DoseTimes
            .SelectMany(time => (LocalDateTime[])[local.Date.At(time), local.Date.PlusDays(-1).At(time)])
            .Where(dose => dose <= local)
            .Select(dose => (Instant?)dose.InZoneLeniently(zone).ToInstant())
            .Max();
    }
}
