using System.Collections.Immutable;
using HomeLine.Agency.Roster;
using HomeLine.LineCare;
using HomeLine.LineCare.Ledger;
using HomeLine.LineCare.Lines;
using HomeLine.LineCare.Policy;
using HomeLine.LineCare.Travel;
using NodaTime;

namespace HomeLine.Agency.WeekPlanning;

/// <summary>The roster cut by patient, as the clocks read it. Built once per roster; each table is walked once.</summary>
public sealed class CareFiles
{
    private readonly ImmutableDictionary<PatientId, PatientCare> files;

    private CareFiles(ImmutableDictionary<PatientId, PatientCare> files, PolicyBook policy)
    {
        this.files = files;
        Policy = policy;
    }

    /// <summary>Shipped defaults with the agency's own rules above them.</summary>
    public PolicyBook Policy { get; }

    public PatientCare this[PatientId patient] => files[patient];

    public static CareFiles Of(AgencyRoster roster)
    {
        var lines = roster.Lines.ToLookup(l => l.Patient);
        var infusions = roster.Infusions.ToLookup(i => i.Patient);
        var events = roster.Events.ToLookup(e => e.Patient);
        var orders = roster.Orders.ToLookup(o => o.Patient);
        var exceptions = roster.Exceptions.ToLookup(x => x.Patient);
        var caregivers = roster.Caregivers.ToLookup(c => c.Patient);
        var holds = roster.Holds.ToLookup(h => h.Patient);
        var outside = roster.OutsideCare.ToLookup(o => o.Patient);
        var files = roster.Patients.ToImmutableDictionary(p => p.Id, p => new PatientCare
        {
            Patient = p.Id,
            Zone = TravellingZone.Of(p.Zone, holds[p.Id].Select(h => h.Stay).OfType<Stay>()),
            CareStartedOn = p.CareStartedOn,
            BornOn = p.BornOn,
            Risks = p.Risks,
            Lines = [.. lines[p.Id]],
            Infusions = [.. infusions[p.Id]],
            Events = [.. events[p.Id]],
            Orders = [.. orders[p.Id]],
            Exceptions = [.. exceptions[p.Id]],
            Caregivers = [.. caregivers[p.Id]],
            Holds = [.. holds[p.Id]],
            Outside = [.. outside[p.Id].SelectMany(o => Outside(o, lines[p.Id], roster.Profile.Zone))],
        });
        return new CareFiles(files, PolicyBook.Default.With(roster.Policy));
    }

    /// <summary>
    /// These files after the roster moved on. New ledger entries alone touch only the files of their patients, and what was read of the others stands;
    /// anything else is cut anew.
    /// </summary>
    /// <param name="before">The roster these files were cut from.</param>
    /// <param name="after">The roster now; its ledger begins with that of <paramref name="before"/>.</param>
    public CareFiles After(AgencyRoster before, AgencyRoster after)
    {
        if (!OnlyTheLedgerGrew(before, after)) return Of(after);
        var grown = files.ToBuilder();
        foreach (IGrouping<PatientId, LineEvent> entries in after.Events.Skip(before.Events.Length).GroupBy(e => e.Patient))
            grown[entries.Key] = entries.Aggregate(grown[entries.Key], (care, entry) => care.Recording(entry));
        return new CareFiles(grown.ToImmutable(), Policy);
    }

    private static bool OnlyTheLedgerGrew(AgencyRoster before, AgencyRoster after) =>
        before.Profile.ZoneId == after.Profile.ZoneId
        && before.Patients == after.Patients && before.Lines == after.Lines && before.Infusions == after.Infusions && before.Orders == after.Orders
        && before.Caregivers == after.Caregivers && before.Holds == after.Holds && before.Exceptions == after.Exceptions
        && before.OutsideCare == after.OutsideCare && before.Policy == after.Policy;

    /// <summary>Everything on the line is expected from elsewhere until the report is overdue.</summary>
    private static IEnumerable<LineCare.OutsideCare> Outside(Roster.OutsideCare expected, IEnumerable<Line> lines, DateTimeZone zone) => lines
        .Where(l => expected.Line is null || expected.Line == l.Id)
        .Select(l => new LineCare.OutsideCare(
            expected.Patient,
            l.Id,
            expected.ExpectedOn,
            expected.FallBackFrom.InZoneLeniently(zone).ToInstant(),
            expected.Where,
            [.. Enum.GetValues<CareItem>()]));

    public CareAnswer WhatIsDue(PatientId patient, Instant now) => LineCare.WhatIsDue.For(files[patient], Policy, now);
}
