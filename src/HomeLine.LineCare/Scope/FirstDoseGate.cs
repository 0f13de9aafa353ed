using System.Collections.Immutable;
using HomeLine.LineCare.Clocks;
using HomeLine.LineCare.Orders;
using HomeLine.LineCare.Policy;
using NodaTime;

namespace HomeLine.LineCare.Scope;

/// <summary>What is known before the first dose of a drug at home.</summary>
/// <param name="Starts">When the visit would start.</param>
/// <param name="Stay">How long it is planned to last.</param>
/// <param name="Infusing">How long the drug runs.</param>
/// <param name="AllergyHistoryTaken">The allergy history is recorded, none known among the answers.</param>
/// <param name="KitExpiresOn">Last good day of the reaction kit in the home, included; empty when there is no kit.</param>
/// <param name="DrugInHomeFrom">From when the drug is in the home; empty when it is not arranged.</param>
/// <param name="NurseReasons">Why the planned nurse may not, by the scope gate; empty when she may.</param>
public sealed record FirstDose(
    ZonedDateTime Starts,
    Duration Stay,
    Duration Infusing,
    bool AllergyHistoryTaken,
    LocalDate? KitExpiresOn,
    Instant? DrugInHomeFrom,
    ImmutableArray<ScopeReason> NurseReasons);

/// <summary>The first dose of a drug at home needs an allergy history, a reaction kit that is still good, a nurse able to treat a reaction who
/// stays through the infusion and after, and the drug itself (IDSA outpatient parenteral antimicrobial guideline 2018, through a digest;
/// the minutes after are common practice, no source).</summary>
public static class FirstDoseGate
{
    /// <summary>Every reason why an ordered first dose cannot be given in a visit, the nurse left aside; empty when nothing is missing or it is no first dose.</summary>
    /// <param name="order">The order.</param>
    /// <param name="starts">When the visit would start.</param>
    /// <param name="stayMinutes">How long it is planned to last, minutes.</param>
    /// <param name="policy">The policy book.</param>
    public static ImmutableArray<ScopeReason> WhyNot(CareOrder order, ZonedDateTime starts, int stayMinutes, PolicyBook policy)
    {
        ArgumentNullException.ThrowIfNull(order);
        if (order.FirstDose is not { } facts) return [];
        Instant? inHome = order.AwaitsDelivery ? null : order.NotBefore?.InZoneLeniently(starts.Zone).ToInstant();
        return WhyNot(
            new FirstDose(starts, Duration.FromMinutes(stayMinutes), Duration.FromMinutes(facts.InfusingMinutes), facts.AllergyHistoryTaken, facts.KitGoodThrough, inHome, []), policy);
    }

    /// <summary>Minutes a nurse stays for a first dose: before, the infusion, and after.</summary>
    /// <param name="facts">What is known of it.</param>
    /// <param name="on">The day it is given.</param>
    /// <param name="policy">The policy book.</param>
    public static int StayMinutes(FirstDoseFacts facts, LocalDate on, PolicyBook policy)
    {
        ArgumentNullException.ThrowIfNull(facts);
        ArgumentNullException.ThrowIfNull(policy);
        return facts.InfusingMinutes + (int)(policy.ValueOf(RuleIds.FirstDoseBefore, on) + policy.ValueOf(RuleIds.FirstDoseAfter, on));
    }

    /// <summary>Every reason why it cannot be given in this visit; empty when nothing is missing.</summary>
    /// <param name="dose">What is known.</param>
    /// <param name="policy">The policy book; <c>firstdose.before.min</c> and <c>firstdose.after.min</c>, in minutes.</param>
    public static ImmutableArray<ScopeReason> WhyNot(FirstDose dose, PolicyBook policy)
    {
        ArgumentNullException.ThrowIfNull(dose);
        ArgumentNullException.ThrowIfNull(policy);
        var reasons = ImmutableArray.CreateBuilder<ScopeReason>();
        var day = dose.Starts.Date;
        var end = dose.Starts + dose.Stay;
        if (!dose.AllergyHistoryTaken) reasons.Add(new(ScopeCodes.FirstDoseHistory, "No allergy history is recorded."));
        if (dose.KitExpiresOn is not { } good) reasons.Add(new(ScopeCodes.FirstDoseKit, "No reaction kit is in the home."));
        else if (good < end.Date) reasons.Add(new(ScopeCodes.FirstDoseKitExpired, $"The reaction kit is good through {Says.Short(good)} and the visit is on {Says.Short(end.Date)}."));
        reasons.AddRange(dose.NurseReasons);
        var needed = dose.Infusing + Duration.FromMinutes((double)(policy.ValueOf(RuleIds.FirstDoseBefore, day) + policy.ValueOf(RuleIds.FirstDoseAfter, day)));
        if (dose.Stay < needed) reasons.Add(new(ScopeCodes.FirstDoseStay, $"The visit is {dose.Stay.TotalMinutes:0} minutes and needs {needed.TotalMinutes:0}."));
        if (dose.DrugInHomeFrom is not { } from || from > dose.Starts.ToInstant()) reasons.Add(new(ScopeCodes.FirstDoseDrug, "The drug is not in the home when the visit starts."));
        return reasons.ToImmutable();
    }
}
