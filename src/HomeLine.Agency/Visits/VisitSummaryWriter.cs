using System.Globalization;
using HomeLine.Agency.Roster;
using HomeLine.Agency.Sheets;
using HomeLine.Agency.WeekPlanning;
using HomeLine.LineCare.Ledger;
using HomeLine.LineCare.Lines;
using HomeLine.LineCare.Recording;
using HomeLine.LineCare.RedFlags;
using NodaTime;
using NodaTime.Text;

namespace HomeLine.Agency.Visits;

/// <summary>Writes a signed visit out in words. Pure: everything comes from the record.</summary>
internal sealed class VisitSummaryWriter(RecordView view, AgencyAtHand agency)
{
    private static readonly LocalTimePattern Clock = LocalTimePattern.CreateWithInvariantCulture("HH:mm");
    private static readonly LocalDatePattern Days = LocalDatePattern.CreateWithInvariantCulture("ddd d MMM uuuu");
    private static readonly LocalDateTimePattern Moments = LocalDateTimePattern.CreateWithInvariantCulture("ddd d MMM uuuu HH:mm");
    private readonly VisitRecord record = view.Record;
    private readonly VisitEntry entry = view.Record.Entry;
    private readonly DateTimeZone zone = view.Patient.Zone;

    public VisitSummaryContent Write(SummaryReader reader) => new()
    {
        AgencyName = agency.Roster.Profile.Name,
        RecordId = record.Id,
        Reader = reader,
        PatientName = view.Patient.Name,
        Day = record.Day,
        Sections = [.. (reader == SummaryReader.Prescriber ? ForPrescriber() : ForPatient()).Where(s => !s.Lines.IsEmpty)],
        Warnings = [.. Warnings(reader)],
        PrintedAt = agency.Now.InZone(agency.Roster.Profile.Zone).LocalDateTime,
        DayPhone = agency.Roster.Profile.DayPhone,
        OnCallPhone = agency.Roster.Profile.OnCallPhone,
        EmergencyNumber = agency.Roster.Profile.EmergencyNumber,
        IsDemo = agency.Roster.Profile.IsDemo,
    };

    private IEnumerable<SummarySection> ForPrescriber()
    {
        yield return new SummarySection("Visit", [.. Visit()]);
        yield return new SummarySection("Symptom questions", [new SummaryLine("", entry.Signs.IsEmpty ? "Asked: no emergency or urgent sign was told." : $"Yes or not known: {string.Join(" ", Signs())}")]);
        yield return new SummarySection("Care", [.. entry.Items.Where(i => i.Standing != ItemStanding.Unsaid).Select(i => new SummaryLine(i.Label, Standing(i)))]);
        yield return new SummarySection("Lines", [.. entry.Lines.SelectMany(OfLine)]);
        yield return new SummarySection("Draws", [.. entry.Draws.Where(d => entry.Items.Any(i => i.IsDone && i.Order == d.Order)).Select(Draw)]);
        yield return new SummarySection("Teaching", [.. entry.Teaching.Select(t => new SummaryLine(t.Person, $"{CareLabels.Of(t.Item)}{(t.Line is { } line ? $", {line}" : "")}: {VisitWords.Of(t.Level)}{(t.Validate ? "; validated" : "")}."))]);
        yield return new SummarySection("First dose", [.. FirstDose()]);
        yield return new SummarySection("Notes", [.. Notes()]);
        yield return new SummarySection("Questions asked before signing", [.. record.Answered.Select(a => new SummaryLine(a.Sentence, a.Answer))]);
        yield return new SummarySection("Next windows by recorded care and policy", [.. view.Moved.Select(m => new SummaryLine(m.What, m.After.Length > 0 ? m.After : "ended"))]);
        yield return new SummarySection("Practitioner", [.. view.Notices.Select(n => new SummaryLine(n.What, n.ToldAt is { } at ? $"Told {At(at)} to {n.ToldTo} by {n.ToldBy}: {n.Said}" : "Not told yet."))]);
        yield return new SummarySection("Marked", [.. record.Flags.Select(f => new SummaryLine("", f))]);
        yield return new SummarySection("Signatures", [.. Signatures()]);
    }

    private IEnumerable<SummarySection> ForPatient()
    {
        yield return new SummarySection("Your visit", [new SummaryLine("", $"{record.SignedName} came on {Days.Format(record.Day)} at {Clock.Format(At(record.ArrivedAt, zone).TimeOfDay)}.")]);
        yield return new SummarySection("What was done", [.. entry.Items.Where(i => i.IsDone).Select(i => new SummaryLine("", $"{Plain(i)}."))]);
        yield return new SummarySection("What was not done", [.. entry.Items.Where(i => i.Standing == ItemStanding.NotDone).Select(i => new SummaryLine("", $"{Plain(i)}."))]);
        yield return new SummarySection("What the nurse saw", [.. entry.Lines.Where(l => l.Looked).Select(l => new SummaryLine($"{PlainLine(l.Line)}:", l.Found == SiteFinding.None ? "no redness, swelling, drainage or pain." : $"{VisitWords.Of(l.Found)}."))]);
        yield return new SummarySection("What comes next", [.. view.Moved.Where(m => m.After.Length > 0).Select(m => new SummaryLine($"{Plain(m)}:", $"{m.After}."))]);
        yield return new SummarySection($"Call {agency.Roster.Profile.EmergencyNumber} now for", [.. StandingTexts.NeverWait.Select(t => new SummaryLine("", t))]);
        yield return new SummarySection("Call us at once, day or night, for", [.. StandingTexts.CallNow(agency.Files.Policy.ValueOf("fever.call", agency.Today)).Select(t => new SummaryLine("", t))]);
    }

    private IEnumerable<SummaryLine> Visit()
    {
        yield return new SummaryLine("Service", "Home infusion nursing visit");
        yield return new SummaryLine("Person", view.Patient.Name);
        yield return new SummaryLine("Day", Days.Format(record.Day));
        yield return new SummaryLine("Place", entry.Elsewhere.Length > 0 ? entry.Elsewhere : $"The home on file, {view.Patient.Address}");
        yield return new SummaryLine("Nurse", $"{record.SignedName}{(record.Credential.Length > 0 ? $", {record.Credential}" : "")}");
        yield return new SummaryLine("Start", Clock.Format(At(record.ArrivedAt, zone).TimeOfDay));
        yield return new SummaryLine("End", record.LeftAt is { } left ? Clock.Format(At(left, zone).TimeOfDay) : "not given");
        yield return new SummaryLine("Reason", record.Visit is null ? $"Not planned: {entry.UnplannedBecause}" : "Planned visit");
    }

    private IEnumerable<string> Signs()
    {
        var context = ScreenContext.Unknown with { FeverAtCelsius = agency.Files.Policy.ValueOf("fever.call", record.Day) };
        return SymptomScreen.Questions(context).Where(q => entry.Signs.Contains(q.Id)).Select(q => q.Text);
    }

    private static string Standing(ItemEntry item)
    {
        if (!item.IsDone) return $"Not done. {VisitWords.Of(item.Why ?? NotDoneReason.Other)}{(item.WhyText.Length > 0 ? $": {item.WhyText}" : "")}.";
        List<string> parts = [item.DoneBy.Length > 0 ? $"Done by {item.DoneBy}, watched" : "Done"];
        if (item.At is { } at) parts.Add($"at {Clock.Format(at)}");
        if (item.Dressing is { } dressing) parts.Add(CareLabels.Of(dressing));
        if (item.SecurementChanged) parts.Add("securement changed");
        return string.Join(", ", parts) + ".";
    }

    private static IEnumerable<SummaryLine> OfLine(LineEntry line)
    {
        List<string> parts = [];
        if (line.AsFound != SealFinding.None) parts.Add($"Dressing as found: {VisitWords.Of(line.AsFound)}.");
        if (line.Reinforced) parts.Add("Taped down without a change.");
        if (line.NeedleOut) parts.Add("Needle taken out.");
        if (line.Looked) parts.Add(VisitWords.Site(line));
        if (line.OutsideLengthCm() is { } length) parts.Add($"Outside {Number(length)} cm{(line.InInches ? $" (given as {Number(line.OutsideLength!.Value)} inches)" : "")}.");
        if (line.ArmGirthCm is { } girth) parts.Add($"Arm {Number(girth)} cm.");
        if (line.RemovedLengthCm is { } removed) parts.Add($"Catheter taken out, {Number(removed)} cm.");
        foreach (LumenEntry lumen in line.Lumens.Where(l => l.Flushed || l.WontFlush || l.Return != BloodReturn.NotChecked))
            parts.Add($"Lumen {lumen.Label}: {(lumen.Flushed ? "flushed" : lumen.WontFlush ? "does not flush, not forced" : "not flushed")}, blood return {VisitWords.Of(lumen.Return)}.");
        if (parts.Count > 0) yield return new SummaryLine(line.Line.Value, string.Join(" ", parts));
    }

    private SummaryLine Draw(DrawEntry draw)
    {
        string text = agency.Roster.Orders.FirstOrDefault(o => o.Id == draw.Order)?.Text is { Length: > 0 } named ? named : "labs";
        return new SummaryLine(text, $"Drawn {(draw.DrawnAt is { } at ? Clock.Format(at) : "at an unknown time")}. {VisitWords.Draw(draw)}");
    }

    private IEnumerable<SummaryLine> FirstDose()
    {
        if (entry.FirstDose is not { } dose) yield break;
        yield return new SummaryLine("", $"Allergy history {(dose.AllergyHistoryTaken ? "recorded" : "not recorded")}; reaction kit {(dose.KitGoodThrough is { } good ? $"good through {Days.Format(good)}" : "not in the home")}; "
            + $"drug {(dose.DrugInHome ? "in the home" : "not in the home")}; ran {(dose.InfusedMinutes is { } minutes ? string.Create(CultureInfo.InvariantCulture, $"{minutes} minutes") : "for an unknown time")}.");
    }

    private IEnumerable<SummaryLine> Notes()
    {
        if (entry.Note.Length > 0) yield return new SummaryLine("Note", entry.Note);
        if (entry.AllergyTold.Length > 0) yield return new SummaryLine("Allergy told of", entry.AllergyTold);
        if (entry.Incident != Incident.None) yield return new SummaryLine($"Incident: {VisitWords.Of(entry.Incident)}", entry.IncidentText);
    }

    private IEnumerable<SummaryLine> Signatures()
    {
        yield return new SummaryLine("Signed", $"{record.SignedName}{(record.Credential.Length > 0 ? $", {record.Credential}" : "")}, {At(record.SignedAt)}");
        if (record.Amends is { } first) yield return new SummaryLine("Amends", $"record {first}: {entry.AmendedBecause}");
        if (view.CoSignature is { } signature) yield return new SummaryLine("Co-signed", $"{signature.By}, {At(signature.At)}{(signature.Note.Length > 0 ? $": {signature.Note}" : "")}");
        else if (record.NeedsCoSign) yield return new SummaryLine("Co-signed", "not yet");
    }

    private IEnumerable<string> Warnings(SummaryReader reader)
    {
        if (view.AmendedBy is { } later) yield return $"This record was amended: read record {later}.";
        if (reader == SummaryReader.Prescriber && record.Stopped is { } call) yield return $"A red flag stopped the visit; call {call} was filed and the line was locked.";
        foreach (string locked in view.Locks) yield return reader == SummaryReader.Patient ? $"Do not use the line until we call. ({locked})" : locked;
    }

    private string Plain(ItemEntry item) => Plain(item.Item, item.Line, item.Order, item.Label);

    private string Plain(MovedCare moved) => Plain(moved.Item, moved.Line, moved.Order, moved.What);

    private string Plain(CareItem item, LineId? on, string? under, string otherwise) =>
        PlainTasks.Of(item, agency.Roster.Orders.FirstOrDefault(o => o.Id == under)) is { } task ? $"{task}{(on is { } line ? $", {PlainLine(line)}" : "")}" : otherwise;

    private string PlainLine(LineId id) => agency.Roster.Lines.FirstOrDefault(l => l.Id == id) is { } line ? PlainTasks.Of(line.Kind) : id.Value;

    private string At(Instant at) => Moments.Format(At(at, zone));

    private static LocalDateTime At(Instant at, DateTimeZone zone) => at.InZone(zone).LocalDateTime;

    private static string Number(decimal value) => value.ToString("0.##", CultureInfo.InvariantCulture);
}
