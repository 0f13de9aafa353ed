using System.Collections.Immutable;
using System.Globalization;
using HomeLine.Agency.Access;
using HomeLine.Agency.Roster;
using HomeLine.Agency.Storage;
using HomeLine.LineCare;
using HomeLine.LineCare.Ledger;
using HomeLine.LineCare.Lines;
using Microsoft.EntityFrameworkCore;
using NodaTime;

namespace HomeLine.Agency.Absence;

/// <summary>Holds and returns: planning pauses, the clocks run on, and on return every item gets a date or none.</summary>
public sealed class KeepAbsence(IDbContextFactory<AgencyDb> databases, AgencyClock clock)
{
    /// <summary>The items that are asked about on return.</summary>
    public static ImmutableArray<CareItem> Reconciled { get; } = [CareItem.Dressing, CareItem.PortNeedle, CareItem.Connector, CareItem.PortFlush, CareItem.LumenFlush];

    /// <summary>
    /// Puts a patient on hold and takes the visits out of the published weeks. Needs <see cref="AgencyAction.HoldPatient"/>. Without a first day it starts today and says so.
    /// </summary>
    public Task<Outcome<KeptHold>> HoldAsync(Actor actor, HoldEntry entry, CancellationToken cancel) => AgencyWork.DoAsync<KeptHold>(databases, clock, actor, AgencyAction.HoldPatient,
        async (db, agency) =>
        {
            int before = await db.ToTell.CountAsync(cancel);
            return await new HoldDesk(db, actor, agency, clock.RealNow()).HoldAsync(entry, string.Create(CultureInfo.InvariantCulture, $"H{before + 1}"), cancel);
        }, cancel);

    /// <summary>
    /// The patient is home: planning goes on, and every item looked at gets the day that was given, or none. Needs <see cref="AgencyAction.HoldPatient"/>.
    /// </summary>
    public Task<Outcome<LineEvent>> ReturnAsync(Actor actor, ReturnEntry entry, CancellationToken cancel) => AgencyWork.DoAsync<LineEvent>(databases, clock, actor, AgencyAction.HoldPatient, async (db, agency) =>
    {
        Patient? patient = agency.Roster.Patients.FirstOrDefault(p => p.Id == entry.Patient);
        if (patient is null) return new Refusal("patient-unknown", "There is no such patient.", "Go back to the list and choose again.");
        if (agency.Files.WhatIsDue(patient.Id, agency.Now).OnHold is not { } hold)
            return new Refusal("not-on-hold", "The patient is not on hold.", "Look at the patient again.");
        LocalDate home = entry.HomeAt.InZone(patient.Zone).Date;
        if (entry.HomeAt > agency.Now || home < hold.From)
            return new Refusal("home-out-of-range", $"The return lies between {Day(hold.From)} and now.", "Correct the time.");
        if (entry.Items.FirstOrDefault(i => i.On > home) is { } later)
            return new Refusal("reconciled-in-future", $"{later.Item} on {later.Line} would be done after the return.", "Correct the day; what was done since the return is recorded as a visit.");
        LineEvent returned = await EndAsync(db, agency, patient, actor, entry, cancel);
        await AuditTrail.AppendAsync(db, actor, "return-home", patient.Id.Value, $"{entry.Items.Count(i => i.On is not null)} of {entry.Items.Length} items with a date", clock.RealNow(), cancel);
        return returned;
    }, cancel);

    private static async Task<LineEvent> EndAsync(AgencyDb db, AgencyAtHand agency, Patient patient, Actor actor, ReturnEntry entry, CancellationToken cancel)
    {
        LocalDate home = entry.HomeAt.InZone(patient.Zone).Date;
        foreach (Hold open in await db.Holds.Where(h => h.Patient == patient.Id).ToListAsync(cancel))
        {
            // The day of the return is a day at home; a hold that began that very day keeps it as its only day.
            if (open.From <= home && !(open.Through < home))
                db.Entry(open).Property(h => h.Through).CurrentValue = LocalDate.Max(open.From, home.PlusDays(-1));
        }

        ImmutableArray<ReconciledItem> without = [.. entry.Items.Where(i => i.On is null)];
        LineEvent returned = Entry(agency, patient, actor, LineEventKind.ReturnedHome,
            without.IsEmpty ? "" : $"No date known: {string.Join(", ", without.Select(Name))}.") with
        { Performed = CareMoment.Exactly(entry.HomeAt, patient.Zone) };
        db.LineEvents.Add(returned);
        int number = 0;
        foreach (ReconciledItem item in entry.Items.Where(i => i.On is not null))
            db.LineEvents.Add(Reconcile(item, Entry(agency, patient, actor, KindOf(item.Item), "Reconciled on return"), ++number));
        return returned;
    }

    private static LineEvent Reconcile(ReconciledItem item, LineEvent entry, int number) => entry with
    {
        Id = new EventId($"{entry.Id}-{number}"),
        Line = item.Line,
        Performed = CareMoment.SometimeOn(item.On!.Value),
        Performer = PerformerKind.Outside,
        PerformerName = "hospital",
        Certainty = item.Certainty,
        Dressing = item.Item == CareItem.Dressing ? item.Dressing : null,
        ConnectorsChanged = item.Item == CareItem.Connector && item.Lumen is { } connector ? [connector] : [],
        LumensUsed = item.Item == CareItem.LumenFlush && item.Lumen is { } lumen ? [lumen] : [],
    };

    private static LineEventKind KindOf(CareItem item) => item switch
    {
        CareItem.Dressing => LineEventKind.DressingChanged,
        CareItem.PortNeedle => LineEventKind.PortAccessed,
        CareItem.Connector => LineEventKind.ConnectorChanged,
        CareItem.PortFlush or CareItem.LumenFlush => LineEventKind.Flushed,
        _ => throw new ArgumentOutOfRangeException(nameof(item), item, "Not asked about on return"),
    };

    private static LineEvent Entry(AgencyAtHand agency, Patient patient, Actor actor, LineEventKind kind, string note) => new()
    {
        Id = new EventId(string.Create(CultureInfo.InvariantCulture, $"{patient.Id}-A{agency.Roster.Events.Count(e => e.Patient == patient.Id) + 1}")),
        Patient = patient.Id,
        Kind = kind,
        RecordedAt = agency.Now,
        Performer = PerformerKind.Outside,
        RecordedBy = actor.Name,
        Certainty = Certainty.CaregiverByPhone,
        Note = note,
    };

    private static string Name(ReconciledItem item) => item.Lumen is { } lumen ? $"{item.Item} {item.Line} {lumen}" : $"{item.Item} {item.Line}";

    private static string Day(LocalDate day) => day.ToString("ddd d MMM", CultureInfo.InvariantCulture);
}
