using System.Collections.Immutable;
using HomeLine.Agency.Access;
using HomeLine.Agency.Reports;
using HomeLine.Agency.Roster;
using HomeLine.Agency.Storage;
using Microsoft.EntityFrameworkCore;

namespace HomeLine.Agency.Today;

/// <summary>The agency's way to send a note, when one is configured. A note never says anything about a patient.</summary>
public interface INoteMail
{
    /// <summary>Whether a mail host is configured.</summary>
    bool IsOn { get; }

    /// <summary>Sends a note. False when the host did not take it.</summary>
    Task<bool> SendAsync(string address, string subject, string text, CancellationToken cancel);
}

/// <summary>
/// Tells nurses by mail that their day has changed, beside the call that has to be made anyway: the tick is only ever set by a person. No name, no address,
/// no care stands in a note. None is sent to a nurse who is on the road by the published times. Off unless a mail host is configured; the demonstration sends nothing.
/// </summary>
public sealed class SendNotes(IDbContextFactory<AgencyDb> databases, AgencyClock clock, INoteMail mail)
{
    public const string Subject = "Your day has changed";
    public const string Text = "Your day has changed. Open HomeLine when you are parked. This note says nothing about anybody, and needs no answer.";
    private const string Sent = "note sent by mail";
    private const string NotSent = "note could not be sent";
    private static readonly Actor Program = new("notes", "Notes by mail", []);

    /// <summary>Sends one note to every nurse with something new on the call list.</summary>
    /// <returns>How many notes went out.</returns>
    public async Task<int> SendAsync(CancellationToken cancel)
    {
        if (!mail.IsOn) return 0;
        await using AgencyDb db = await databases.CreateDbContextAsync(cancel);
        AgencyProfile? profile = await db.Profile.AsNoTracking().SingleOrDefaultAsync(cancel);
        if (profile is null or { IsDemo: true }) return 0;
        ILookup<string, ToTell> waiting = (await db.ToTell.AsNoTracking().Where(t => t.DoneAt == null).ToListAsync(cancel))
            .Where(t => t.Person.Nurse is not null && !t.Tries.Any(one => one.What is Sent or NotSent))
            .Where(t => t.Person.NotBefore is not { } arrives || arrives <= clock.Now(profile)).ToLookup(t => t.Person.Nurse!);
        int notes = 0;
        foreach (IGrouping<string, ToTell> nurse in waiting)
        {
            string? address = await db.Users.AsNoTracking().Where(a => a.NurseId == nurse.Key && a.DisabledAt == null).Select(a => a.Email).FirstOrDefaultAsync(cancel);
            if (address is null) continue;
            bool taken = await mail.SendAsync(address, Subject, Text, cancel);
            await WriteDownAsync([.. nurse.Select(t => t.Id)], taken ? Sent : NotSent, profile, cancel);
            if (taken) notes++;
        }

        return notes;
    }

    private async Task WriteDownAsync(ImmutableArray<string> entries, string what, AgencyProfile profile, CancellationToken cancel)
    {
        await using AgencyDb db = await databases.CreateDbContextAsync(cancel);
        await using var turn = await db.BeginWorkAsync(cancel);
        foreach (ToTell entry in await db.ToTell.Where(t => entries.Contains(t.Id)).ToListAsync(cancel))
            db.Entry(entry).Property(t => t.Tries).CurrentValue = entry.Tries.Add(new ToldTry(clock.Now(profile), Program.Name, what));
        await AuditTrail.AppendAsync(db, Program, "note", string.Join(", ", entries), what, clock.RealNow(), cancel);
        await db.SaveChangesAsync(cancel);
        await turn.CommitAsync(cancel);
    }
}
