using System.Collections.Immutable;
using System.Text.RegularExpressions;
using HomeLine.LineCare;
using HomeLine.LineCare.Lines;
using HomeLine.LineCare.Policy;
using NodaTime;

namespace HomeLine.Exchange.History;

/// <summary>A row that begins with a word: the patient, the lines, what runs, who is validated, and policy.</summary>
internal static partial class SettingRow
{
    public static void Read(HistoryRow row, HistoryDraft draft)
    {
        string first = row.Clauses[0];
        string word = first.Split(' ', 2)[0].ToLowerInvariant();
        string rest = first[word.Length..].Trim();
        Action read = word switch
        {
            "now" => () => draft.NowLocal = Local(rest),
            "zone" => () => draft.Zone = DateTimeZoneProviders.Tzdb.GetZoneOrNull(rest)
                ?? throw new RowUnreadableException($"“{rest}” is no zone. Write its public name, for example America/Chicago."),
            "born" => () => draft.BornOn = HistoryRow.Date(rest),
            "care" => () => draft.CareStartedOn = HistoryRow.Date(After(rest, "started")),
            "risk" => () => draft.Risks |= row.Clauses.Skip(1).Prepend(rest).Aggregate(RiskFactors.None, (all, one) => all | Words.Find(Words.Risks, one, "risk")),
            "line" => () => draft.Lines.Add(ReadLine(rest, row, draft)),
            "infusion" => () => draft.Infusions.Add(ReadInfusion(rest, row, draft)),
            "validated" => () => draft.Caregivers.Add(ReadValidation(rest)),
            "hold" => () => draft.Holds.Add(ReadHold(rest, row)),
            "order" => () => draft.Orders.Add(OrderRow.Read(rest, row, draft)),
            "policy" => () => draft.Rules.Add(ReadRule(rest, draft)),
            "exception" => () => draft.Exceptions.Add(ReadException(rest, row, draft)),
            "outside" => () => draft.Outside.Add(ReadOutside(rest, row, draft)),
            _ => throw new RowUnreadableException(
                "A row begins with a date, or with now, zone, born, care started, risk, line, infusion, validated, hold, order, policy, exception or outside."),
        };
        read();
    }

    private static LocalDateTime Local(string text) => text.Split(' ', StringSplitOptions.RemoveEmptyEntries) switch
    {
        [var day] => HistoryRow.Date(day).AtMidnight(),
        [var day, var time] => HistoryRow.Date(day) + HistoryRow.Time(time),
        _ => throw new RowUnreadableException("Write a date and a time: now 2027-03-08 06:00."),
    };

    private static string After(string text, string word) => text.StartsWith(word + " ", StringComparison.OrdinalIgnoreCase)
        ? text[word.Length..].Trim()
        : throw new RowUnreadableException($"Write “care {word} 2027-01-11”.");

    private static Line ReadLine(string rest, HistoryRow row, HistoryDraft draft)
    {
        Match named = Named().Match(rest);
        string kind = named.Success ? named.Groups[2].Value : rest;
        var line = new Line
        {
            Id = new LineId(named.Success ? named.Groups[1].Value : $"L{draft.Lines.Count + 1}"),
            Patient = HistoryDraft.Patient,
            Kind = Words.Find(Words.Lines, kind, "line"),
            Lumens = [new Lumen("A")],
            Securement = kind.Trim().Equals("port", StringComparison.OrdinalIgnoreCase) ? SecurementKind.None : SecurementKind.Adhesive,
        };
        if (draft.Lines.Exists(other => other.Id == line.Id)) throw new RowUnreadableException($"There is already a line {line.Id}.");
        return row.Clauses.Skip(1).Aggregate(line, WithFact);
    }

    private static Line WithFact(Line line, string clause)
    {
        if (LumensOf().Match(clause) is { Success: true } lumens)
            return line with { Lumens = [.. EntryDetail.Lumens(lumens.Groups[1].Value).Select(letter => new Lumen(letter))] };
        if (Words.Securements.TryGetValue(clause, out SecurementKind securement)) return line with { Securement = securement };
        if (LengthOf().Match(clause) is { Success: true } length)
            return length.Groups[1].Value.Equals("outside", StringComparison.OrdinalIgnoreCase)
                ? line with { OutsideLengthCm = HistoryRow.Amount(length.Groups[2].Value) }
                : line with { InsertedLengthCm = HistoryRow.Amount(length.Groups[2].Value) };
        return clause.ToLowerInvariant() switch
        {
            "tip not confirmed" => line with { TipConfirmed = false },
            "healed" => line with { ExitSiteHealed = true },
            _ => throw new RowUnreadableException(
                $"“{clause}” is not understood. Known for a line: lumens A B, {string.Join(", ", Words.Securements.Keys.Order(StringComparer.Ordinal))}, outside 2 cm, inserted 40 cm, tip not confirmed, healed."),
        };
    }

    private static Infusion ReadInfusion(string rest, HistoryRow row, HistoryDraft draft)
    {
        Match running = Running().Match(rest);
        if (!running.Success) throw new RowUnreadableException("Write what runs and where: infusion nutrition on A, set by caregiver.");
        string? line = row.Clauses.Skip(1).Select(clause => OnLine().Match(clause)).FirstOrDefault(found => found.Success)?.Groups[1].Value;
        Match by = row.Clauses.Skip(1).Select(clause => SetBy().Match(clause)).FirstOrDefault(found => found.Success) ?? Match.Empty;
        return new Infusion(
            HistoryDraft.Patient,
            draft.LineNamed(line),
            running.Groups[2].Value.ToUpperInvariant(),
            Words.Find(Words.Infusions, running.Groups[1].Value, "infusion"),
            "therapy",
            by.Success ? Words.Find(Words.Performers, by.Groups[1].Value, "performer") : PerformerKind.Nurse,
            row.Clauses.Contains("never interrupt", StringComparer.OrdinalIgnoreCase));
    }

    private static CaregiverValidation ReadValidation(string rest)
    {
        Match found = Validated().Match(rest);
        if (!found.Success) throw new RowUnreadableException("Write who, for what, and how long: validated spouse for dressing until 2027-06-30.");
        return new CaregiverValidation(
            HistoryDraft.Patient, found.Groups[1].Value, Words.Find(Words.Items, found.Groups[2].Value, "item"), HistoryRow.Date(found.Groups[3].Value));
    }

    private static Hold ReadHold(string rest, HistoryRow row)
    {
        Match found = Between().Match(rest);
        if (!found.Success) throw new RowUnreadableException("Write from when: hold from 2027-03-06, hospital. An end is “to 2027-03-10”.");
        return new Hold(
            HistoryDraft.Patient,
            HistoryRow.Date(found.Groups[1].Value),
            found.Groups[2].Success ? HistoryRow.Date(found.Groups[2].Value) : null,
            row.Clauses.ElementAtOrDefault(1) ?? "hold");
    }

    private static PolicyRule ReadRule(string rest, HistoryDraft draft)
    {
        Match found = Rule().Match(rest);
        if (!found.Success) throw new RowUnreadableException("Write rule, value and first day: policy dressing.film.max 5 from 2027-03-04.");
        LocalDate from = HistoryRow.Date(found.Groups[3].Value);
        return new PolicyRule(
            found.Groups[1].Value,
            HistoryRow.Amount(found.Groups[2].Value),
            Known(found.Groups[1].Value, draft.Policy).Unit,
            from,
            PolicyLevel.Agency,
            RuleStanding.OwnDefault,
            "A policy row of this history");
    }

    private static CareException ReadException(string rest, HistoryRow row, HistoryDraft draft)
    {
        Match found = ExceptionTo().Match(rest);
        if (!found.Success) throw new RowUnreadableException("Write rule, value and last day: exception dressing.film.max 5 until 2027-04-01, clinical lead.");
        Known(found.Groups[1].Value, draft.Policy);
        return new CareException(
            HistoryDraft.Patient,
            found.Groups[1].Value,
            HistoryRow.Amount(found.Groups[2].Value),
            row.Clauses.ElementAtOrDefault(1) ?? "clinical lead",
            HistoryRow.Date(found.Groups[3].Value),
            row.Clauses.ElementAtOrDefault(2) ?? "as written in this history");
    }

    private static OutsideCare ReadOutside(string rest, HistoryRow row, HistoryDraft draft)
    {
        Match found = Expected().Match(rest);
        Match report = row.Clauses.Select(clause => ReportBy().Match(clause)).FirstOrDefault(one => one.Success) ?? Match.Empty;
        if (!found.Success || !report.Success)
            throw new RowUnreadableException("Write the day, the place, the items, and the report: outside 2027-03-10 clinic, dressing, connector, report by 2027-03-11 18:00.");
        ImmutableArray<CareItem> items = [.. row.Clauses.Skip(1).Where(clause => !ReportBy().IsMatch(clause) && !OnLine().IsMatch(clause)).Select(clause => Words.Find(Words.Items, clause, "item"))];
        string? line = row.Clauses.Select(clause => OnLine().Match(clause)).FirstOrDefault(one => one.Success)?.Groups[1].Value;
        return new OutsideCare(
            HistoryDraft.Patient,
            draft.LineNamed(line),
            HistoryRow.Date(found.Groups[1].Value),
            HistoryRow.Moment(HistoryRow.Date(report.Groups[1].Value), HistoryRow.Time(report.Groups[2].Value), draft.Zone),
            found.Groups[2].Value,
            items);
    }

    private static PolicyRule Known(string id, PolicyBook policy) => policy.Rules.FirstOrDefault(rule => rule.Id == id)
        ?? throw new RowUnreadableException($"There is no rule “{id}”. The policy page lists them all.");

    [GeneratedRegex(@"^(\S+?):\s*(.+)$", RegexOptions.CultureInvariant)]
    private static partial Regex Named();

    [GeneratedRegex(@"^lumens?\s+(.+)$", RegexOptions.CultureInvariant | RegexOptions.IgnoreCase)]
    private static partial Regex LumensOf();

    [GeneratedRegex(@"^(outside|inserted)\s+(\d+(?:\.\d+)?)\s*cm$", RegexOptions.CultureInvariant | RegexOptions.IgnoreCase)]
    private static partial Regex LengthOf();

    [GeneratedRegex(@"^(.+?)\s+on\s+([A-Za-z])$", RegexOptions.CultureInvariant | RegexOptions.IgnoreCase)]
    private static partial Regex Running();

    [GeneratedRegex(@"^on\s+(\S{2,})$", RegexOptions.CultureInvariant | RegexOptions.IgnoreCase)]
    private static partial Regex OnLine();

    [GeneratedRegex(@"^set by\s+(\w+)$", RegexOptions.CultureInvariant | RegexOptions.IgnoreCase)]
    private static partial Regex SetBy();

    [GeneratedRegex(@"^(.+?)\s+for\s+(.+?)\s+until\s+(\S+)$", RegexOptions.CultureInvariant | RegexOptions.IgnoreCase)]
    private static partial Regex Validated();

    [GeneratedRegex(@"^from\s+(\S+)(?:\s+to\s+(\S+))?$", RegexOptions.CultureInvariant | RegexOptions.IgnoreCase)]
    private static partial Regex Between();

    [GeneratedRegex(@"^(\S+)\s+(\S+)(?:\s+(?:days?|hours?|cm))?\s+from\s+(\S+)$", RegexOptions.CultureInvariant | RegexOptions.IgnoreCase)]
    private static partial Regex Rule();

    [GeneratedRegex(@"^(\S+)\s+(\S+)(?:\s+(?:days?|hours?|cm))?\s+until\s+(\S+)$", RegexOptions.CultureInvariant | RegexOptions.IgnoreCase)]
    private static partial Regex ExceptionTo();

    [GeneratedRegex(@"^(\d{4}-\d{2}-\d{2})\s+(.+)$", RegexOptions.CultureInvariant | RegexOptions.IgnoreCase)]
    private static partial Regex Expected();

    [GeneratedRegex(@"^report by\s+(\S+)\s+(\S+)$", RegexOptions.CultureInvariant | RegexOptions.IgnoreCase)]
    private static partial Regex ReportBy();
}
