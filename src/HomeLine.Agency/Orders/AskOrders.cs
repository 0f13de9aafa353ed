using System.Collections.Immutable;
using HomeLine.Agency.Access;
using HomeLine.Agency.Caregivers;
using HomeLine.Agency.Roster;
using HomeLine.Agency.Storage;
using HomeLine.LineCare;
using HomeLine.LineCare.Orders;
using Microsoft.EntityFrameworkCore;
using NodaTime;

namespace HomeLine.Agency.Orders;

/// <summary>What runs out or waits: first visits, orders, signatures, exceptions, validations.</summary>
/// <param name="FirstVisits">First visits that are owed, the soonest first.</param>
/// <param name="Ending">Orders that end soon and are not renewed.</param>
/// <param name="ToSign">Spoken orders without signature, the oldest first.</param>
/// <param name="Exceptions">Exceptions to policy in force, the soonest to end first.</param>
/// <param name="Lapsing">Validations that have lapsed or soon will.</param>
/// <param name="Nurses">Licences and sign-offs of nurses that have ended or soon will.</param>
/// <param name="Today">Today at the branch.</param>
public sealed record OrdersOverview(
    ImmutableArray<FirstVisitRow> FirstVisits,
    ImmutableArray<EndingRow> Ending,
    ImmutableArray<UnsignedRow> ToSign,
    ImmutableArray<ExceptionRow> Exceptions,
    ImmutableArray<LapsingRow> Lapsing,
    ImmutableArray<EndingRight> Nurses,
    LocalDate Today);

/// <summary>An exception with the patient.</summary>
public sealed record ExceptionRow(CareException Exception, string PatientName, string PolicyValue);

/// <summary>Answers what runs out or waits for something.</summary>
public sealed class AskOrders(IDbContextFactory<AgencyDb> databases, AgencyClock clock)
{
    /// <summary>Needs <see cref="AgencyAction.SeePatient"/>.</summary>
    public async Task<Outcome<OrdersOverview>> AskAsync(Actor actor, CancellationToken cancel)
    {
        if (actor.Refuse(AgencyAction.SeePatient) is { } refusal) return refusal;
        await using AgencyDb db = await databases.CreateDbContextAsync(cancel);
        Outcome<AgencyAtHand> read = await AgencyAtHand.ReadAsync(db, clock, cancel);
        if (!read.Succeeded) return read.Refusal!;
        AgencyAtHand agency = read.Value;
        List<Referral> referrals = await db.Referrals.AsNoTracking().Where(r => r.ClosedAt == null).ToListAsync(cancel);
        List<VerbalOrder> spoken = await db.VerbalOrders.AsNoTracking().Where(v => v.SignedOn == null).ToListAsync(cancel);
        return Of(agency, referrals, spoken);
    }

    /// <summary>The first visits that are owed, for the Due page. Needs <see cref="AgencyAction.SeeDueList"/>.</summary>
    public async Task<Outcome<ImmutableArray<FirstVisitRow>>> FirstVisitsAsync(Actor actor, CancellationToken cancel)
    {
        if (actor.Refuse(AgencyAction.SeeDueList) is { } refusal) return refusal;
        await using AgencyDb db = await databases.CreateDbContextAsync(cancel);
        Outcome<AgencyAtHand> read = await AgencyAtHand.ReadAsync(db, clock, cancel);
        if (!read.Succeeded) return read.Refusal!;
        return FirstVisits.Of(read.Value, await db.Referrals.AsNoTracking().Where(r => r.ClosedAt == null).ToListAsync(cancel));
    }

    /// <summary>Pure.</summary>
    internal static OrdersOverview Of(AgencyAtHand agency, IEnumerable<Referral> referrals, IEnumerable<VerbalOrder> spoken)
    {
        var names = agency.Roster.Patients.ToDictionary(p => p.Id, p => p.Name);
        var orders = agency.Roster.Orders.ToDictionary(o => o.Id, StringComparer.Ordinal);
        var policy = agency.Files.Policy;
        return new OrdersOverview(
            Orders.FirstVisits.Of(agency, referrals),
            [.. EndingOrders.List(agency.Roster.Orders, agency.Today, policy).Select(e => new EndingRow(e, names[e.Order.Patient]))],
            [
                .. UnsignedOrder.Waiting(spoken, policy, agency.Roster.Profile.Zone, agency.Today)
                    .Where(u => orders.ContainsKey(u.Order.Order))
                    .Select(u => new UnsignedRow(u, orders[u.Order.Order], names[orders[u.Order.Order].Patient])),
            ],
            [
                .. agency.Roster.Exceptions.Where(x => x.Through >= agency.Today).OrderBy(x => x.Through)
                    .Select(x => new ExceptionRow(x, names[x.Patient], policy.InForce(x.RuleId, agency.Today) is { } rule ? PolicyLibrary.PolicyDifference.Amount(rule) : "")),
            ],
            LapsingRow.Of(agency),
            EndingRight.Of(agency),
            agency.Today);
    }
}
