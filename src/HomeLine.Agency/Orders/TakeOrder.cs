using System.Collections.Immutable;
using System.Globalization;
using HomeLine.Agency.Access;
using HomeLine.Agency.Roster;
using HomeLine.Agency.Storage;
using HomeLine.Agency.WeekPlanning;
using HomeLine.LineCare.Lines;
using HomeLine.LineCare.Orders;
using HomeLine.LineCare.Policy;
using HomeLine.LineCare.Recording;
using HomeLine.LineCare.Scope;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using NodaTime.Text;

namespace HomeLine.Agency.Orders;

/// <summary>Takes an order down, spoken or written, and its signature when it comes.</summary>
public sealed class TakeOrder(IDbContextFactory<AgencyDb> databases, AgencyClock clock)
{
    /// <summary>
    /// Makes an order active. Needs <see cref="AgencyAction.TakeOrder"/>. Refused without a limit or signs for as-needed visits, with an interval outside
    /// 1 to 365 days, and when a spoken order was not read back.
    /// </summary>
    public Task<Outcome<OrderTaken>> TakeAsync(Actor actor, OrderEntry entry, CancellationToken cancel) => AgencyWork.DoAsync<OrderTaken>(databases, clock, actor, AgencyAction.TakeOrder, async (db, agency) =>
    {
        if (agency.Roster.Patients.All(p => p.Id != entry.Draft.Order.Patient))
            return new Refusal("patient-unknown", "There is no such patient.", "Go back to the list and choose again.");
        if (entry.Draft.Verbal?.TakenAt > agency.Now)
            return new Refusal("taken-in-future", "The order would be taken in the future.", "Correct the time it was taken.");
        string id = NextId(entry.Draft.Order, agency);
        OrderDraft draft = entry.Draft with { Order = WithStay(entry.Draft.Order, agency.Files.Policy) with { Id = id, Text = Text(entry.Draft) }, Verbal = entry.Draft.Verbal is { } spoken ? spoken with { Order = id } : null };
        draft = draft with { VisitStartedAt = draft.VisitStartedAt ?? await VisitUnderWayAsync(db, agency, draft.Order.Patient, cancel) };
        ImmutableArray<RecordingReply> replies = BeforeOrdering.Replies(agency.Files[draft.Order.Patient], draft, agency.Files.Policy, agency.Now);
        if (CourierDays.Ask(draft.Order, agency.Roster.Map) is { } unfetched) replies = replies.Add(unfetched);
        if (Replies.Refusal(replies, entry.Answer) is { } refused) return refused;
        foreach (CareOrder old in BeforeOrdering.Replaced(agency.Files[draft.Order.Patient], draft.Order))
        {
            CareOrder stored = await db.Orders.SingleAsync(o => o.Id == old.Id, cancel);
            db.Entry(stored).Property(o => o.EndsOn).CurrentValue = draft.Order.StartsOn.PlusDays(-1);
            await AuditTrail.AppendAsync(db, actor, "end-order", old.Id, $"{id} takes its place", clock.RealNow(), cancel);
        }

        db.Orders.Add(draft.Order);
        if (draft.Verbal is { } verbal) db.VerbalOrders.Add(verbal);
        await AuditTrail.AppendAsync(db, actor, "take-order", $"{draft.Order.Patient} order {id}", Detail(draft, entry.Answer), clock.RealNow(), cancel);
        return new OrderTaken(draft.Order, [.. replies.Where(r => r.Weight != ReplyWeight.Refuse)]);
    }, cancel);

    /// <summary>
    /// What is known before a first dose is completed: history, kit, drug in the home. Needs <see cref="AgencyAction.TakeOrder"/>. What is still missing
    /// is told; the dose is not planned before nothing is.
    /// </summary>
    public Task<Outcome<OrderTaken>> CompleteFirstDoseAsync(Actor actor, string orderId, FirstDoseFacts facts, LocalDateTime? drugInHomeFrom, CancellationToken cancel) => AgencyWork.DoAsync<OrderTaken>(databases, clock, actor, AgencyAction.TakeOrder, async (db, agency) =>
    {
        CareOrder? order = await db.Orders.SingleOrDefaultAsync(o => o.Id == orderId, cancel);
        if (order?.FirstDose is null)
            return new Refusal("no-first-dose", "There is no such order of a first dose.", "Look at the patient again.");
        CareOrder completed = WithStay(order with { FirstDose = facts, NotBefore = drugInHomeFrom, WorkMinutes = null }, agency.Files.Policy);
        db.Entry(order).CurrentValues.SetValues(completed);
        await AuditTrail.AppendAsync(db, actor, "complete-first-dose", $"{order.Patient} order {orderId}", $"history {facts.AllergyHistoryTaken}, kit {facts.KitGoodThrough}, drug {drugInHomeFrom}", clock.RealNow(), cancel);
        return new OrderTaken(completed, BeforeOrdering.Missing(agency.Files[order.Patient], completed, agency.Files.Policy, agency.Now));
    }, cancel);

    /// <summary>The nurse who gives a first dose stays before, through and after it, unless the order itself says how long; she has the skill for it.</summary>
    private static CareOrder WithStay(CareOrder order, PolicyBook policy) => order.FirstDose is not { } facts
        ? order
        : order with
        {
            WorkMinutes = order.WorkMinutes ?? FirstDoseGate.StayMinutes(facts, order.StartsOn, policy),
            Skills = order.Skills.Contains(FirstDoseSkill) ? order.Skills : order.Skills.Add(FirstDoseSkill),
        };

    private const string FirstDoseSkill = "FD";

    /// <summary>The prescriber has signed a spoken order. Needs <see cref="AgencyAction.TakeOrder"/>.</summary>
    public Task<Outcome<VerbalOrder>> SignAsync(Actor actor, string orderId, LocalDate signedOn, CancellationToken cancel) => AgencyWork.DoAsync<VerbalOrder>(databases, clock, actor, AgencyAction.TakeOrder, async (db, agency) =>
    {
        VerbalOrder? spoken = await db.VerbalOrders.SingleOrDefaultAsync(v => v.Order == orderId, cancel);
        if (spoken is null || spoken.SignedOn is not null)
            return new Refusal("not-waiting-for-signature", "This order does not wait for a signature.", "Look at the list again.");
        if (signedOn > agency.Today || signedOn < spoken.TakenAt.InZone(agency.Roster.Profile.Zone).Date)
            return new Refusal("signed-out-of-range", "It was signed between the day it was taken and today.", "Correct the day.");
        db.Entry(spoken).Property(v => v.SignedOn).CurrentValue = signedOn;
        await AuditTrail.AppendAsync(db, actor, "sign-order", $"order {orderId}", LocalDatePattern.Iso.Format(signedOn), clock.RealNow(), cancel);
        return spoken with { SignedOn = signedOn };
    }, cancel);

    /// <summary>Start of the published visit that is under way at this patient's, if one is: an order taken in it is allowed, and marked so.</summary>
    private static async Task<Instant?> VisitUnderWayAsync(AgencyDb db, AgencyAtHand agency, PatientId patient, CancellationToken cancel)
    {
        LocalDateTime now = agency.Now.InZone(agency.Roster.Profile.Zone).LocalDateTime;
        StoredWeek? week = await WeekStore.PublishedAsync(db, agency.ThisWeek, cancel);
        WeekVisit? visit = week?.Week.Visits.FirstOrDefault(v => v.Patient == patient && v.Day.At(v.Start) <= now && v.Day.At(v.Start).PlusMinutes(v.Minutes) >= now);
        return visit?.Day.At(visit.Start).InZoneLeniently(agency.Roster.Profile.Zone).ToInstant();
    }

    private static string NextId(CareOrder order, AgencyAtHand agency)
    {
        for (int number = agency.Roster.Orders.Count(o => o.Patient == order.Patient) + 1; ; number++)
        {
            string id = string.Create(CultureInfo.InvariantCulture, $"{order.Patient}-o{number}");
            if (agency.Roster.Orders.All(o => o.Id != id)) return id;
        }
    }

    /// <summary>The signs that prompt an as-needed visit are part of the order as the nurse reads it.</summary>
    private static string Text(OrderDraft draft) => draft.Signs.Trim().Length == 0
        ? draft.Order.Text.Trim()
        : $"{draft.Order.Text.Trim()} As needed for: {draft.Signs.Trim()}".Trim();

    private static string Detail(OrderDraft draft, string answer) =>
        (draft.Verbal is { } verbal ? $"spoken, taken and read back by {verbal.TakenBy}" : "written") + (answer.Trim().Length > 0 ? $"; {answer.Trim()}" : "");
}
