using System.Collections.Immutable;
using HomeLine.Agency.Access;
using HomeLine.Agency.Storage;
using HomeLine.LineCare;
using HomeLine.LineCare.Lines;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using NodaTime.Text;

namespace HomeLine.Agency.Caregivers;

/// <summary>A validation as entered: one person, one device, one task or several shown in one lesson.</summary>
/// <param name="Patient">Whose caregiver.</param>
/// <param name="Person">Who was shown and did it back.</param>
/// <param name="Items">The tasks.</param>
/// <param name="Line">On which line; empty for every line of one kind.</param>
/// <param name="Through">Last day; empty for the life that policy gives.</param>
/// <param name="Device">Which kind of line it was shown on; needed without <paramref name="Line"/> when the patient has lines of several kinds.</param>
public sealed record ValidationEntry(
    PatientId Patient, string Person, ImmutableArray<CareItem> Items, LineId? Line, LocalDate? Through, LineKind? Device = null);

/// <summary>
/// Keeps who is validated for what: by task, line and person, with an end. What was shown on a PICC says nothing about a port: each line it counts for
/// is written down, and a line that comes later counts from its own lesson.
/// </summary>
public sealed class ValidateCaregiver(IDbContextFactory<AgencyDb> databases, AgencyClock clock)
{
    /// <summary>Tasks a caregiver can be validated for.</summary>
    public static ImmutableArray<CareItem> Tasks { get; } =
    [
        CareItem.Dressing, CareItem.Securement, CareItem.OutsideLength, CareItem.Connector, CareItem.Set, CareItem.LumenFlush, CareItem.PortFlush, CareItem.PortNeedle, CareItem.SiteCheck,
    ];

    /// <summary>Validates or renews. Needs <see cref="AgencyAction.ValidateCaregiver"/>.</summary>
    public Task<Outcome<ImmutableArray<CaregiverValidation>>> ValidateAsync(Actor actor, ValidationEntry entry, CancellationToken cancel) => AgencyWork.DoAsync<ImmutableArray<CaregiverValidation>>(databases, clock, actor, AgencyAction.ValidateCaregiver, async (db, agency) =>
    {
        LocalDate longest = agency.Today.PlusDays((int)agency.Files.Policy.ValueOf("validation.caregiver.life", agency.Today));
        LocalDate through = entry.Through ?? longest;
        if (Fault(entry, through, longest, agency) is { } fault) return fault;
        var kept = ImmutableArray.CreateBuilder<CaregiverValidation>();
        foreach (CareItem item in entry.Items.Distinct())
        {
            foreach (LineId line in ShownOn(entry, agency))
                kept.Add(await KeepAsync(db, new CaregiverValidation(entry.Patient, entry.Person.Trim(), item, through, line), cancel));
        }

        await AuditTrail.AppendAsync(db, actor, "validate-caregiver", $"{entry.Patient} {entry.Person.Trim()}", $"{string.Join(", ", entry.Items)} through {LocalDatePattern.Iso.Format(through)}", clock.RealNow(), cancel);
        return kept.ToImmutable();
    }, cancel);

    /// <summary>Stops a caregiver from a task at once, on every line: from today it is the nurse's. Needs <see cref="AgencyAction.ValidateCaregiver"/> and a reason.</summary>
    public Task<Outcome<CaregiverValidation>> StopAsync(Actor actor, CaregiverValidation validation, string reason, CancellationToken cancel) => AgencyWork.DoAsync<CaregiverValidation>(databases, clock, actor, AgencyAction.ValidateCaregiver, async (db, agency) =>
    {
        if (string.IsNullOrWhiteSpace(reason))
            return new Refusal("validation-reason-missing", "It is not said why the caregiver is stopped.", "Say why in a few words.");
        var inForce = await db.Caregivers
            .Where(c => c.Patient == validation.Patient && c.Person == validation.Person && c.Item == validation.Item && c.ValidThrough >= agency.Today)
            .ToListAsync(cancel);
        if (inForce.All(c => c.Line != validation.Line))
            return new Refusal("validation-unknown", "There is no such validation in force.", "Look at the patient again.");
        LocalDate yesterday = agency.Today.PlusDays(-1);
        foreach (CaregiverValidation stored in inForce) db.Entry(stored).Property(v => v.ValidThrough).CurrentValue = yesterday;
        await AuditTrail.AppendAsync(db, actor, "stop-caregiver", $"{validation.Patient} {validation.Person}", $"{validation.Item}: {reason.Trim()}", clock.RealNow(), cancel);
        return validation with { ValidThrough = yesterday };
    }, cancel);

    private static Refusal? Fault(ValidationEntry entry, LocalDate through, LocalDate longest, Roster.AgencyAtHand agency)
    {
        if (agency.Roster.Patients.All(p => p.Id != entry.Patient))
            return new Refusal("patient-unknown", "There is no such patient.", "Go back to the list and choose again.");
        if (entry.Line is { } line && agency.Roster.Lines.All(l => l.Id != line || l.Patient != entry.Patient))
            return new Refusal("line-unknown", "This patient has no such line.", "Ask which line is meant.");
        if (ShownOn(entry, agency).IsEmpty)
            return new Refusal("device-missing", "The patient has lines of several kinds, and what was shown on one does not count on another.", "Choose the line, or the kind of line, it was shown on.");
        if (string.IsNullOrWhiteSpace(entry.Person))
            return new Refusal("caregiver-missing", "It is not said who was validated.", "Write who it is, for example: spouse.");
        if (entry.Items.IsDefaultOrEmpty || entry.Items.Except(Tasks).Any())
            return new Refusal("task-missing", "No task a caregiver can do is chosen.", "Choose the tasks that were shown and done back.");
        return through < agency.Today || through > longest
            ? new Refusal("validation-out-of-range", $"A validation ends between today and {longest:uuuu-MM-dd}, the longest policy allows.", "Choose another last day.")
            : null;
    }

    /// <summary>The lines a lesson counts for; none when it is not said on which kind of line it was.</summary>
    private static ImmutableArray<LineId> ShownOn(ValidationEntry entry, Roster.AgencyAtHand agency)
    {
        if (entry.Line is { } one) return [one];
        ImmutableArray<Line> lines = agency.Files[entry.Patient].InPlace(agency.Now);
        LineKind[] kinds = [.. lines.Select(l => l.Kind).Distinct()];
        LineKind? device = entry.Device ?? (kinds.Length == 1 ? kinds[0] : null);
        return [.. lines.Where(l => l.Kind == device).Select(l => l.Id)];
    }

    /// <summary>Adds the validation, or renews the one there is.</summary>
    internal static async Task<CaregiverValidation> KeepAsync(AgencyDb db, CaregiverValidation validation, CancellationToken cancel)
    {
        if (await FindAsync(db, validation, cancel) is { } old) db.Entry(old).Property(v => v.ValidThrough).CurrentValue = validation.ValidThrough;
        else db.Caregivers.Add(validation);
        return validation;
    }

    private static Task<CaregiverValidation?> FindAsync(AgencyDb db, CaregiverValidation v, CancellationToken cancel) =>
        db.Caregivers.FirstOrDefaultAsync(c => c.Patient == v.Patient && c.Person == v.Person && c.Item == v.Item && c.Line == v.Line, cancel);
}
