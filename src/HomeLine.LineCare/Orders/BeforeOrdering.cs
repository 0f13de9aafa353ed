using System.Collections.Immutable;
using HomeLine.LineCare.Clocks;
using HomeLine.LineCare.Policy;
using HomeLine.LineCare.Recording;
using HomeLine.LineCare.Scope;
using NodaTime;

namespace HomeLine.LineCare.Orders;

/// <summary>An order as typed, with what is said beside it.</summary>
/// <param name="Order">The order.</param>
/// <param name="AsNeeded">Visits may be made as needed.</param>
/// <param name="Signs">The signs that would prompt an as-needed visit, in the prescriber's words.</param>
/// <param name="Verbal">How it was taken, when by word of mouth.</param>
/// <param name="VisitStartedAt">Start of the visit in which it was taken; empty outside a visit.</param>
public sealed record OrderDraft(CareOrder Order, bool AsNeeded = false, string Signs = "", VerbalOrder? Verbal = null, Instant? VisitStartedAt = null);

/// <summary>What would be refused, asked or told if an order were made active.</summary>
public static class BeforeOrdering
{
    private const int LongestIntervalInDays = 365;

    /// <summary>Every reply, refusals first; empty when nothing stands against it.</summary>
    /// <param name="care">The patient as recorded.</param>
    /// <param name="draft">The order as typed.</param>
    /// <param name="policy">The policy book.</param>
    /// <param name="now">The instant of saving.</param>
    public static ImmutableArray<RecordingReply> Replies(PatientCare care, OrderDraft draft, PolicyBook policy, Instant now)
    {
        ArgumentNullException.ThrowIfNull(care);
        ArgumentNullException.ThrowIfNull(draft);
        ArgumentNullException.ThrowIfNull(policy);
        var order = draft.Order;
        var replies = new List<RecordingReply>();
        void Add(string code, ReplyWeight weight, string sentence) => replies.Add(new RecordingReply(code, weight, order.Line, null, null, sentence));

        if (order.EndsOn < order.StartsOn) Add(OrderCodes.EndsBeforeStart, ReplyWeight.Refuse, "The last day is before the first.");
        if (order.EveryDays is < 1 or > LongestIntervalInDays)
            Add(DecisionCodes.OrderIntervalOutOfRange, ReplyWeight.Refuse, $"Every {order.EveryDays} days cannot be: an interval is 1 to {LongestIntervalInDays} days.");
        if (draft.AsNeeded && order.AsNeededVisits is not > 0)
            Add(OrderCodes.AsNeededWithoutLimit, ReplyWeight.Refuse, "As-needed visits need a limit on their number (42 CFR 409.43(b)).");
        if ((draft.AsNeeded || order.AsNeededVisits > 0) && string.IsNullOrWhiteSpace(draft.Signs))
            Add(OrderCodes.AsNeededWithoutSigns, ReplyWeight.Refuse, "As-needed visits need the signs that would prompt one (42 CFR 409.43(b)).");
        if (order is { Kind: OrderKind.DrugLevel, DoseTimes.IsEmpty: true })
            Add(DecisionCodes.LevelWithoutDoseTimes, ReplyWeight.Ask, "A level is drawn before a dose: at what times are the doses? It is not planned before that is known.");
        foreach (var old in Replaced(care, order))
            Add(OrderCodes.FrequencyReplaced, ReplyWeight.Tell, $"Order {old.Id}, {old.VisitsPerWeek} a week, ends {Says.Short(order.StartsOn.PlusDays(-1))}: this one takes its place."
                + (old.AsNeededVisits > 0 && order.AsNeededVisits is not > 0 ? " Its as-needed visits end with it, and the new one has none." : ""));
        replies.AddRange(Missing(care, order, policy, now));
        AskAboutFrequency(care, order, now, Add);
        AskAboutLooser(care, order, policy, now, Add);
        AskAboutVerbal(draft, Add);
        return [.. replies.OrderBy(reply => reply.Weight)];
    }

    /// <summary>What a first dose still waits for, each told: it is not planned before nothing is missing.</summary>
    /// <param name="care">The patient as recorded.</param>
    /// <param name="order">The order; any other than a first dose waits for nothing.</param>
    /// <param name="policy">The policy book.</param>
    /// <param name="now">The instant of saving.</param>
    public static ImmutableArray<RecordingReply> Missing(PatientCare care, CareOrder order, PolicyBook policy, Instant now)
    {
        ArgumentNullException.ThrowIfNull(care);
        ArgumentNullException.ThrowIfNull(order);
        if (order.FirstDose is not { } facts) return [];
        var day = order.Dates.IsDefaultOrEmpty ? LocalDate.Max(order.StartsOn, now.InZone(care.Zone).Date) : order.Dates.Min();
        var starts = (order.NotBefore is { } drug && drug.Date >= day && !order.AwaitsDelivery ? drug : day.At(order.StartFrom ?? LocalTime.Midnight)).InZoneLeniently(care.Zone);
        return [.. FirstDoseGate.WhyNot(order, starts, order.WorkMinutes ?? FirstDoseGate.StayMinutes(facts, day, policy), policy)
            .Select(reason => new RecordingReply(reason.Code, ReplyWeight.Tell, order.Line, null, null, $"{reason.Sentence} The first dose is not planned before that is settled."))];
    }

    /// <summary>The visit frequencies that a new one ends the day before it starts: a patient has one at a time.</summary>
    /// <param name="care">The patient as recorded.</param>
    /// <param name="order">The new order; any other kind replaces nothing.</param>
    public static IEnumerable<CareOrder> Replaced(PatientCare care, CareOrder order)
    {
        ArgumentNullException.ThrowIfNull(care);
        ArgumentNullException.ThrowIfNull(order);
        return order is not { Kind: OrderKind.VisitFrequency, VisitsPerWeek: not null }
            ? []
            : care.Orders.Where(old => old.Id != order.Id && old is { Kind: OrderKind.VisitFrequency, VisitsPerWeek: not null }
                && old.StartsOn < order.StartsOn && !(old.EndsOn < order.StartsOn));
    }

    /// <summary>An interval of two days is three or four visits a calendar week: three a week would break it.</summary>
    private static void AskAboutFrequency(PatientCare care, CareOrder order, Instant now, Action<string, ReplyWeight, string> add)
    {
        var today = now.InZone(care.Zone).Date;
        var replaced = Replaced(care, order).ToList();
        var all = care.Orders.Where(other => other.Id != order.Id && other.IsActiveOn(today) && !replaced.Contains(other)).Append(order).ToList();
        var interval = all.Where(o => o is { Kind: OrderKind.Interval, EveryDays: >= 1 }).OrderBy(o => o.EveryDays).FirstOrDefault();
        var frequency = all.FirstOrDefault(o => o is { Kind: OrderKind.VisitFrequency, VisitsPerWeek: not null });
        if (interval is null || frequency is null || (order != interval && order != frequency)) return;
        var most = (7 + interval.EveryDays!.Value - 1) / interval.EveryDays.Value;
        if (frequency.VisitsPerWeek < most)
            add(OrderCodes.FrequencyShort, ReplyWeight.Ask,
                $"Every {interval.EveryDays} days is up to {most} visits in a calendar week and {frequency.VisitsPerWeek} are ordered: which one stands?");
    }

    private static void AskAboutLooser(PatientCare care, CareOrder order, PolicyBook policy, Instant now, Action<string, ReplyWeight, string> add)
    {
        if (order is not { Kind: OrderKind.Interval, Confirmed: false, EveryDays: >= 1 and <= LongestIntervalInDays }) return;
        var others = care.Orders.RemoveAll(other => other.Id == order.Id);
        foreach (var decision in WhatIsDue.For(care with { Orders = others.Add(order) }, policy, now).Decisions)
            if (decision.Code == DecisionCodes.LooserOrder && decision.Sentence.Contains($"Order {order.Id} ", StringComparison.Ordinal))
            {
                add(DecisionCodes.LooserOrder, ReplyWeight.Tell, decision.Sentence);
                return;
            }
    }

    private static void AskAboutVerbal(OrderDraft draft, Action<string, ReplyWeight, string> add)
    {
        if (draft.Verbal is not { } verbal) return;
        if (!verbal.ReadBack || string.IsNullOrWhiteSpace(verbal.TakenBy))
            add(OrderCodes.NotReadBack, ReplyWeight.Refuse, "A spoken order is written down, read back and confirmed, with the name of the licensed person who took it.");
        if (draft.VisitStartedAt is { } started && verbal.TakenAt >= started)
            add(OrderCodes.AfterVisitStart, ReplyWeight.Tell, "Taken after the visit had begun: allowed, and marked so in the record.");
    }
}
