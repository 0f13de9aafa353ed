using System.Collections.Immutable;
using HomeLine.Agency.Roster;
using HomeLine.LineCare;
using HomeLine.LineCare.Ledger;
using HomeLine.LineCare.Lines;
using HomeLine.LineCare.Orders;
using HomeLine.LineCare.Windows;
using NodaTime;

namespace HomeLine.Agency.Orders;

/// <summary>A first visit that is owed: after a referral, or after a return from hospital.</summary>
/// <param name="Key">The referral's identifier; empty for a return.</param>
/// <param name="Patient">The patient, when known here.</param>
/// <param name="Name">Who.</param>
/// <param name="What">What is owed.</param>
/// <param name="Due">From when and by when.</param>
/// <param name="IsLate">Whether it is late now.</param>
public sealed record FirstVisitRow(string Key, PatientId? Patient, string Name, string What, FirstVisit Due, bool IsLate);

/// <summary>The clocks of first visits: within 48 hours of referral or return home, or on the ordered day (42 CFR 484.55). Pure.</summary>
public static class FirstVisits
{
    public static ImmutableArray<FirstVisitRow> Of(AgencyAtHand agency, IEnumerable<Referral> referrals) =>
    [
        .. referrals.Where(r => r.ClosedAt is null).Select(r => Row(r.Id, null, r.Name, "First visit after referral", Due(r, agency), agency.Now))
            .Concat(agency.Roster.Patients.Select(p => Return(p, agency)).OfType<FirstVisitRow>())
            .OrderBy(r => r.Due.By).ThenBy(r => r.Name, StringComparer.Ordinal),
    ];

    private static FirstVisit Due(Referral referral, AgencyAtHand agency) => FirstVisit.Due(
        referral.ReferredAt, referral.EnteredAt, referral.HomeAt, referral.OrderedOn, agency.Files.Policy, agency.Roster.Profile.Zone);

    /// <summary>The assessment a return home asks for, as the clocks work it out; empty once it was made.</summary>
    private static FirstVisitRow? Return(Patient patient, AgencyAtHand agency)
    {
        PatientCare care = agency.Files[patient.Id];
        if (!care.Events.Any(e => e.Kind == LineEventKind.ReturnedHome)) return null;
        DueWindow? owed = agency.Files.WhatIsDue(patient.Id, agency.Now).Windows
            .FirstOrDefault(w => w.Item == CareItem.Recertification && w.Because.RuleId == "resumption.max");
        if (owed is null) return null;
        bool assumed = care.Events.FirstOrDefault(e => e.Id == owed.Because.Anchor)?.Performed?.At is null;
        return Row("", patient.Id, patient.Name, "Assessment after coming home", new FirstVisit(owed.LateFrom, owed.Opens, assumed), agency.Now);
    }

    private static FirstVisitRow Row(string key, PatientId? patient, string name, string what, FirstVisit due, Instant now) =>
        new(key, patient, name, what, due, now >= due.By);
}
