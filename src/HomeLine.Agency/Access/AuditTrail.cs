using System.Buffers.Binary;
using System.Security.Cryptography;
using System.Text;
using HomeLine.Agency.Storage;
using Microsoft.EntityFrameworkCore;
using NodaTime;

namespace HomeLine.Agency.Access;

/// <summary>
/// The append-only record of who did what. Every entry's hash covers the entry before it, so that a changed or missing
/// row breaks the chain. It shows that the trail was altered; the newest hash, written down elsewhere, shows a cut-off end.
/// </summary>
public static class AuditTrail
{
    /// <summary>Adds an entry to the work under way; it is kept or lost together with that work.</summary>
    /// <exception cref="InvalidOperationException">No transaction is open: the entry could outlive work that failed.</exception>
    public static async Task<AuditEntry> AppendAsync(
        AgencyDb db, Actor actor, string action, string subject, string detail, Instant at, CancellationToken cancel)
    {
        if (db.Database.CurrentTransaction is null)
            throw new InvalidOperationException("An audit entry belongs to a transaction.");
        AuditEntry? last = await db.AuditEntries.AsNoTracking().OrderByDescending(e => e.Sequence).FirstOrDefaultAsync(cancel);
        var entry = new AuditEntry(
            (last?.Sequence ?? 0) + 1, ToTicks(at), actor.UserId, actor.Name, action, subject, detail, last?.Hash ?? "", "");
        entry = entry with { Hash = HashOf(entry) };
        db.AuditEntries.Add(entry);
        await db.SaveChangesAsync(cancel);
        return entry;
    }

    /// <summary>Walks the whole chain and names the first entry that does not fit.</summary>
    public static async Task<AuditCheck> VerifyAsync(AgencyDb db, CancellationToken cancel)
    {
        long expected = 1;
        string previous = "";
        await foreach (AuditEntry entry in db.AuditEntries.AsNoTracking().OrderBy(e => e.Sequence).AsAsyncEnumerable().WithCancellation(cancel))
        {
            if (entry.Sequence != expected)
                return new AuditCheck(expected - 1, previous, expected, $"Entry {expected} is missing.");
            if (entry.PreviousHash != previous)
                return new AuditCheck(expected - 1, previous, expected, $"Entry {expected} does not follow the entry before it.");
            if (entry.Hash != HashOf(entry))
                return new AuditCheck(expected - 1, previous, expected, $"Entry {expected} was changed after it was written.");
            previous = entry.Hash;
            expected++;
        }
        return new AuditCheck(expected - 1, previous, null, "");
    }

    private static string HashOf(AuditEntry entry)
    {
        using var hash = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);
        Span<byte> number = stackalloc byte[8];
        BinaryPrimitives.WriteInt64BigEndian(number, entry.Sequence);
        hash.AppendData(number);
        BinaryPrimitives.WriteInt64BigEndian(number, entry.At.ToUnixTimeTicks());
        hash.AppendData(number);
        foreach (string text in (string[])[entry.ActorId, entry.ActorName, entry.Action, entry.Subject, entry.Detail, entry.PreviousHash])
        {
            // The length goes first, so that no text can borrow letters from its neighbour.
            byte[] bytes = Encoding.UTF8.GetBytes(text);
            BinaryPrimitives.WriteInt64BigEndian(number, bytes.Length);
            hash.AppendData(number);
            hash.AppendData(bytes);
        }
        return Convert.ToHexStringLower(hash.GetHashAndReset());
    }

    /// <summary>The precision the database keeps.</summary>
    private static Instant ToTicks(Instant at) => Instant.FromUnixTimeTicks(at.ToUnixTimeTicks());
}

/// <summary>What a walk along the audit chain found.</summary>
/// <param name="Entries">Entries that fit, from the first.</param>
/// <param name="LastHash">Hash of the last entry that fits; keep it elsewhere to notice a cut-off end.</param>
/// <param name="BrokenAt">Number of the first entry that does not fit; empty when all do.</param>
/// <param name="Sentence">What is wrong; empty when nothing is.</param>
public sealed record AuditCheck(long Entries, string LastHash, long? BrokenAt, string Sentence)
{
    public bool IsWhole => BrokenAt is null;
}
