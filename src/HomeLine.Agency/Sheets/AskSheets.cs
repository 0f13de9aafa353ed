using System.Security.Cryptography;
using System.Text;
using HomeLine.Agency.Access;
using HomeLine.Agency.Roster;
using HomeLine.Agency.Storage;
using HomeLine.Agency.WeekPlanning;
using HomeLine.LineCare.Lines;
using Microsoft.EntityFrameworkCore;
using NodaTime;

namespace HomeLine.Agency.Sheets;

/// <summary>The contents of the printed sheets.</summary>
public sealed class AskSheets(IDbContextFactory<AgencyDb> databases, AgencyClock clock)
{
    /// <summary>The care sheet of a patient; counts as a new sheet that replaces the last. Needs <see cref="AgencyAction.PrintCareSheet"/>.</summary>
    public async Task<Outcome<CareSheetContent>> CareSheetAsync(Actor actor, PatientId patient, CancellationToken cancel)
    {
        if (actor.Refuse(AgencyAction.PrintCareSheet) is { } refusal) return refusal;
        await using AgencyDb db = await databases.CreateDbContextAsync(cancel);
        await using var turn = await db.BeginWorkAsync(cancel);
        Outcome<AgencyAtHand> read = await AgencyAtHand.ReadInTurnAsync(db, clock, cancel);
        if (!read.Succeeded) return read.Refusal!;
        AgencyAtHand agency = read.Value;
        Patient? found = agency.Roster.Patients.FirstOrDefault(p => p.Id == patient);
        if (found is null) return new Refusal("patient-unknown", "There is no such patient.", "Go back to the list and choose again.");
        StoredWeek? week = await WeekStore.PublishedAsync(db, agency.ThisWeek, cancel);
        PrintedCareSheet? last = await db.PrintedCareSheets.AsNoTracking()
            .Where(s => s.Patient == patient).OrderByDescending(s => s.Number).FirstOrDefaultAsync(cancel);
        CareSheetContent content = CareSheetWriter.Of(found, agency, week?.Week, last);
        db.PrintedCareSheets.Add(new PrintedCareSheet(patient, content.Number, agency.Now, actor.Name, HashOf(content)));
        await AuditTrail.AppendAsync(db, actor, "print-care-sheet", patient.Value, $"sheet {content.Number}", clock.RealNow(), cancel);
        await db.SaveChangesAsync(cancel);
        await turn.CommitAsync(cancel);
        return content;
    }

    /// <summary>A nurse's day from the published week. Needs <see cref="AgencyAction.PrintDaySheet"/>.</summary>
    public async Task<Outcome<DaySheetContent>> DaySheetAsync(Actor actor, string nurseId, LocalDate day, CancellationToken cancel)
    {
        if (actor.Refuse(AgencyAction.PrintDaySheet) is { } refusal) return refusal;
        await using AgencyDb db = await databases.CreateDbContextAsync(cancel);
        Outcome<AgencyAtHand> read = await AgencyAtHand.ReadAsync(db, clock, cancel);
        if (!read.Succeeded) return read.Refusal!;
        AgencyAtHand agency = read.Value;
        NurseFile? nurse = agency.Roster.Nurses.FirstOrDefault(n => n.Id == nurseId);
        if (nurse is null) return new Refusal("nurse-unknown", "There is no such nurse.", "Go back to the week and choose again.");
        StoredWeek? week = await WeekStore.PublishedAsync(db, AgencyAtHand.WeekOf(day), cancel);
        if (week is null) return new Refusal("no-week", "No plan is published for this week.", "A coordinator plans the week and publishes it.");
        return DaySheetWriter.Of(nurse, day, agency, week.Week);
    }

    /// <summary>What the sheet says, without its number and time: equal hashes mean the family's sheet is still true.</summary>
    private static string HashOf(CareSheetContent content)
    {
        string text = string.Join('\n', content.MainMessage, string.Join('\n', content.Tasks), string.Join('\n', content.Locks), string.Join('\n', content.NotToUse));
        return Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(text)));
    }
}
