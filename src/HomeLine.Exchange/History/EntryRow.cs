using System.Collections.Immutable;
using System.Text.RegularExpressions;
using HomeLine.LineCare.Ledger;
using NodaTime;

namespace HomeLine.Exchange.History;

/// <summary>A row that begins with a date: an entry of the ledger.</summary>
internal static partial class EntryRow
{
    private static readonly LineEventKind[] OfThePatient =
    [
        LineEventKind.AdmittedToHospital, LineEventKind.ReturnedHome, LineEventKind.Recertified, LineEventKind.PhoneCall,
        LineEventKind.LabsDrawn, LineEventKind.Missed, LineEventKind.NotDone, LineEventKind.Refused, LineEventKind.ServiceGiven,
    ];

    public static void Read(HistoryRow row, HistoryDraft draft)
    {
        Match lead = Lead().Match(row.Clauses[0]);
        if (!lead.Success)
            throw new RowUnreadableException("After the date, and the time if known, say what happened: for example “dressing film”.");
        CareMoment? performed = Performed(lead, draft.Zone);
        if (lead.Groups["what"].Value.Equals("visit", StringComparison.OrdinalIgnoreCase))
        {
            draft.Visits.Add((performed ?? throw new RowUnreadableException("A visit needs its day.")).Date);
            return;
        }

        LineEvent entry = Happened(lead.Groups["what"].Value, new LineEvent
        {
            Id = new EventId($"row {row.Number}"),
            Patient = HistoryDraft.Patient,
            Kind = LineEventKind.PhoneCall,
            Performed = performed,
            RecordedAt = performed is { } known ? known.At ?? draft.Zone.AtStartOfDay(known.Date).ToInstant() : Instant.MinValue,
        });
        string? line = null;
        foreach (string clause in row.Clauses.Skip(1))
            if (OnLine().Match(clause) is { Success: true } named) line = named.Groups[1].Value;
            else entry = EntryDetail.Add(entry, clause, draft.Zone);
        bool ofTheLine = line is not null || draft.Lines.Count == 1 || !OfThePatient.Contains(entry.Kind);
        if (ofTheLine && entry.Kind is not (LineEventKind.AdmittedToHospital or LineEventKind.ReturnedHome or LineEventKind.Recertified))
            entry = entry with { Line = draft.LineNamed(line) };
        draft.Events.Add(entry);
    }

    private static CareMoment? Performed(Match lead, DateTimeZone zone)
    {
        if (!lead.Groups["day"].Success) return null;
        LocalDate day = HistoryRow.Date(lead.Groups["day"].Value);
        return lead.Groups["time"].Success
            ? CareMoment.Exactly(HistoryRow.Moment(day, HistoryRow.Time(lead.Groups["time"].Value), zone), zone)
            : CareMoment.SometimeOn(day);
    }

    private static LineEvent Happened(string what, LineEvent blank)
    {
        if (Dressing().Match(what) is { Success: true } dressing)
            return blank with { Kind = LineEventKind.DressingChanged, Dressing = Words.Find(Words.Dressings, dressing.Groups[1].Value, "dressing") };
        if (Seal().Match(what) is { Success: true } seal)
            return blank with { Kind = LineEventKind.SealReported, Seal = Findings(seal.Groups[1].Value) };
        string head = Words.Entries.Keys.Where(word => Begins(what, word)).MaxBy(word => word.Length)
            ?? throw new RowUnreadableException($"“{what}” is no entry. Known: dressing …, seal …, visit, {string.Join(", ", Words.Entries.Keys.Order(StringComparer.Ordinal))}.");
        return WithLumens(blank with { Kind = Words.Entries[head] }, what[head.Length..].Trim());
    }

    private static LineEvent WithLumens(LineEvent entry, string rest)
    {
        if (rest.Length == 0) return entry;
        if (entry.Kind is LineEventKind.Measured or LineEventKind.Removed) return EntryDetail.Add(entry, rest, DateTimeZone.Utc);
        if (entry.Kind is LineEventKind.Inserted or LineEventKind.PortAccessed) return entry with { Dressing = Words.Find(Words.Dressings, rest, "dressing") };
        ImmutableArray<string> lumens = EntryDetail.Lumens(rest);
        return entry.Kind is LineEventKind.ConnectorChanged ? entry with { ConnectorsChanged = lumens } : entry with { LumensUsed = lumens };
    }

    private static SealFinding Findings(string words) => words
        .Split([" and ", " + "], StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries)
        .Aggregate(SealFinding.None, (all, word) => all | Words.Find(Words.Findings, word, "finding"));

    private static bool Begins(string what, string word) =>
        what.StartsWith(word, StringComparison.OrdinalIgnoreCase) && (what.Length == word.Length || what[word.Length] == ' ');

    [GeneratedRegex(@"^(?:(?<day>\d{4}-\d{2}-\d{2})(?:\s+(?<time>\d{1,2}:\d{2}))?|unknown date)\s+(?<what>.+)$", RegexOptions.CultureInvariant)]
    private static partial Regex Lead();

    [GeneratedRegex(@"^dressing\s+(.+)$", RegexOptions.CultureInvariant | RegexOptions.IgnoreCase)]
    private static partial Regex Dressing();

    [GeneratedRegex(@"^seal\s+(.+)$", RegexOptions.CultureInvariant | RegexOptions.IgnoreCase)]
    private static partial Regex Seal();

    [GeneratedRegex(@"^on\s+(\S+)$", RegexOptions.CultureInvariant | RegexOptions.IgnoreCase)]
    private static partial Regex OnLine();
}
