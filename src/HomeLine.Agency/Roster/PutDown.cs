using System.Collections.Immutable;
using HomeLine.Agency.Storage;
using HomeLine.LineCare;
using HomeLine.LineCare.Orders;
using Microsoft.EntityFrameworkCore;
using NodaTime;

namespace HomeLine.Agency.Roster;

/// <summary>
/// What was put down in the program itself, by the audit trail: validations, stops, holds, returns, exceptions, orders that a newer one ended, and
/// corrected dates of birth and of the start of care, homes that ask for signs. A file that does not know of it
/// takes none of it back: a caregiver who was stopped stays stopped, a patient who came home stays home, an allergy put on
/// file stays on file.
/// </summary>
/// <param name="Caregivers">Patient and person, as the trail names them.</param>
/// <param name="Patients">Patients whose holds were begun or ended here.</param>
/// <param name="Exceptions">Patient and rule.</param>
/// <param name="EndedOrders">Orders that a newer one ended.</param>
/// <param name="Corrected">Patients whose dates were corrected here.</param>
public sealed record PutDown(
    ImmutableHashSet<string> Caregivers, ImmutableHashSet<string> Patients, ImmutableHashSet<string> Exceptions,
    ImmutableHashSet<string> EndedOrders, ImmutableHashSet<string> Corrected)
{
    public static PutDown Nothing { get; } = new([], [], [], [], []);

    /// <summary>Patient and risk put on file here.</summary>
    public ImmutableHashSet<string> Risks { get; init; } = [];

    /// <summary>Nurses whose leave was entered here.</summary>
    public ImmutableHashSet<string> OnLeave { get; init; } = [];

    /// <summary>Patients of whose home it was said here whether it asks for signs.</summary>
    public ImmutableHashSet<string> Signs { get; init; } = [];

    /// <summary>Orders of a first dose that were completed here.</summary>
    public ImmutableHashSet<string> CompletedDoses { get; init; } = [];

    internal static async Task<PutDown> ReadAsync(AgencyDb db, CancellationToken cancel)
    {
        string[] actions =
        [
            "validate-caregiver", "stop-caregiver", "hold-patient", "return-home", "except", "end-order", "correct-patient", "put-on-file",
            "keep-leave", "nurse-out", "complete-first-dose", "home-signs",
        ];
        var entries = await db.AuditEntries.AsNoTracking().Where(e => actions.Contains(e.Action)).Select(e => new { e.Action, e.Subject }).ToListAsync(cancel);
        return new PutDown(
            [.. entries.Where(e => e.Action is "validate-caregiver" or "stop-caregiver").Select(e => e.Subject)],
            [.. entries.Where(e => e.Action is "hold-patient" or "return-home").Select(e => e.Subject)],
            [.. entries.Where(e => e.Action == "except").Select(e => e.Subject)],
            [.. entries.Where(e => e.Action == "end-order").Select(e => e.Subject)],
            [.. entries.Where(e => e.Action == "correct-patient").Select(e => e.Subject)])
        {
            Risks = [.. entries.Where(e => e.Action == "put-on-file").Select(e => e.Subject)],
            OnLeave = [.. entries.Where(e => e.Action is "keep-leave" or "nurse-out").Select(e => LastWord(e.Subject))],
            Signs = [.. entries.Where(e => e.Action == "home-signs").Select(e => e.Subject)],
            CompletedDoses = [.. entries.Where(e => e.Action == "complete-first-dose").Select(e => LastWord(e.Subject))],
        };
    }

    private static string LastWord(string subject) => subject[(subject.LastIndexOf(' ') + 1)..];

    /// <summary>Leave entered here stays; what else the file says of the nurse counts.</summary>
    internal ImmutableArray<NurseFile> Keep(ImmutableArray<NurseFile> stored, ImmutableArray<NurseFile> incoming)
    {
        var known = stored.Where(n => OnLeave.Contains(n.Id)).DistinctBy(n => n.Id).ToDictionary(n => n.Id, StringComparer.Ordinal);
        return [.. incoming.Select(n => known.TryGetValue(n.Id, out NurseFile? ours) ? n with { Leaves = [.. ours.Leaves.Union(n.Leaves)] } : n)];
    }

    /// <summary>An order that a newer one ended here stays ended, and a first dose completed here stays so; what else the file says of it counts.</summary>
    internal ImmutableArray<CareOrder> Keep(ImmutableArray<CareOrder> stored, ImmutableArray<CareOrder> incoming)
    {
        var ended = stored.Where(o => EndedOrders.Contains(o.Id)).DistinctBy(o => o.Id).ToDictionary(o => o.Id, o => o.EndsOn, StringComparer.Ordinal);
        var completed = stored.Where(o => CompletedDoses.Contains(o.Id)).DistinctBy(o => o.Id).ToDictionary(o => o.Id, StringComparer.Ordinal);
        return
        [
            .. incoming
                .Select(o => ended.TryGetValue(o.Id, out LocalDate? last) && !(o.EndsOn < last) ? o with { EndsOn = last } : o)
                .Select(o => completed.TryGetValue(o.Id, out CareOrder? ours)
                    ? o with { FirstDose = ours.FirstDose, NotBefore = ours.NotBefore, WorkMinutes = ours.WorkMinutes, Skills = ours.Skills }
                    : o),
        ];
    }

    /// <summary>Dates corrected, signs asked for and risks put on file here stay; what else the file says of the patient counts.</summary>
    internal ImmutableArray<Patient> Keep(ImmutableArray<Patient> stored, ImmutableArray<Patient> incoming)
    {
        var known = stored.Where(p => Corrected.Contains(p.Id.Value)).DistinctBy(p => p.Id).ToDictionary(p => p.Id);
        var asking = stored.Where(p => Signs.Contains(p.Id.Value)).DistinctBy(p => p.Id).ToDictionary(p => p.Id);
        return
        [
            .. incoming
                .Select(p => known.TryGetValue(p.Id, out Patient? ours) ? p with { BornOn = ours.BornOn, CareStartedOn = ours.CareStartedOn } : p)
                .Select(p => asking.TryGetValue(p.Id, out Patient? ours) ? p with { AsksForSigns = ours.AsksForSigns } : p)
                .Select(WithRisks),
        ];
    }

    private Patient WithRisks(Patient patient) => Risks.IsEmpty
        ? patient
        : patient with { Risks = Enum.GetValues<RiskFactors>().Where(r => Risks.Contains($"{patient.Id} {r}")).Aggregate(patient.Risks, (all, r) => all | r) };

    internal ImmutableArray<CaregiverValidation> Keep(ImmutableArray<CaregiverValidation> stored, ImmutableArray<CaregiverValidation> incoming) =>
        Keep(stored, incoming, RosterKeys.Of, v => Caregivers.Contains($"{v.Patient} {v.Person}"));

    internal ImmutableArray<Hold> Keep(ImmutableArray<Hold> stored, ImmutableArray<Hold> incoming) =>
        Keep(stored, incoming, RosterKeys.Of, h => Patients.Contains(h.Patient.Value));

    internal ImmutableArray<CareException> Keep(ImmutableArray<CareException> stored, ImmutableArray<CareException> incoming) =>
        Keep(stored, incoming, RosterKeys.Of, x => Exceptions.Contains($"{x.Patient} {x.RuleId}"));

    private static ImmutableArray<T> Keep<T>(ImmutableArray<T> stored, ImmutableArray<T> incoming, Func<T, string> key, Func<T, bool> isOurs)
    {
        var known = stored.DistinctBy(key).ToDictionary(key, StringComparer.Ordinal);
        return [.. incoming.Select(row => isOurs(row) && known.TryGetValue(key(row), out T? ours) ? ours : row)];
    }
}
