using System.Collections.Immutable;
using HomeLine.Agency.Access;
using HomeLine.Agency.Roster;
using HomeLine.Agency.Storage;
using HomeLine.LineCare;
using HomeLine.LineCare.Calendar;
using HomeLine.LineCare.Lines;
using Microsoft.EntityFrameworkCore;

namespace HomeLine.Agency.Due;

/// <summary>One patient's lines on a time scale: what was done, what each entry reset, and the windows ahead.</summary>
/// <param name="Patient">The patient.</param>
/// <param name="Lines">The lines, those removed among them.</param>
/// <param name="Calendar">Past care and windows ahead.</param>
/// <param name="Answer">What is due now, with locks and decisions.</param>
public sealed record PatientTimeline(Patient Patient, ImmutableArray<Line> Lines, CareCalendar Calendar, CareAnswer Answer);

/// <summary>Answers with a patient's timeline.</summary>
public sealed class AskTimeline(IDbContextFactory<AgencyDb> databases, AgencyClock clock)
{
    /// <summary>Weeks shown ahead.</summary>
    public const int Weeks = 8;

    /// <summary>Needs <see cref="AgencyAction.SeePatient"/>. An unknown patient is refused with <c>patient-unknown</c>.</summary>
    public async Task<Outcome<PatientTimeline>> AskAsync(Actor actor, PatientId patient, CancellationToken cancel)
    {
        ArgumentNullException.ThrowIfNull(actor);
        if (actor.Refuse(AgencyAction.SeePatient) is { } refusal) return refusal;
        await using AgencyDb db = await databases.CreateDbContextAsync(cancel);
        Outcome<AgencyAtHand> read = await AgencyAtHand.ReadAsync(db, clock, cancel);
        if (!read.Succeeded) return read.Refusal!;
        AgencyAtHand agency = read.Value;
        Patient? found = agency.Roster.Patients.FirstOrDefault(p => p.Id == patient);
        if (found is null) return new Refusal("patient-unknown", "There is no such patient.", "Go back to the list and choose again.");
        PatientCare care = agency.Files[patient];
        return new PatientTimeline(
            found, care.Lines, LineCalendar.For(care, agency.Files.Policy, agency.Now, Weeks), agency.Files.WhatIsDue(patient, agency.Now));
    }
}
