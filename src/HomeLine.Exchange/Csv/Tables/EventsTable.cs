using HomeLine.Exchange.Csv.Cells;
using HomeLine.LineCare.Ledger;
using HomeLine.LineCare.Lines;
using NodaTime;

namespace HomeLine.Exchange.Csv.Tables;

/// <summary>events.csv: the ledger of what was done.</summary>
internal static class EventsTable
{
    public static readonly TableShape Shape = TableShape.Of("events.csv", false,
        """
        event! patient! line kind! performed_on performed_at recorded_at! performer performer_name recorded_by certainty dressing
        securement_changed connectors_changed lumens_used outside_length_cm arm_girth_cm seal order voids note
        """.ReplaceLineEndings(" "));

    private const decimal LongestOutsideCm = 60;
    private const decimal WidestArmCm = 100;

    public static LineEvent Read(Row row)
    {
        string id = row.Id("event");
        if (id.Length > 0 && !row.Ties.Events.Add(id)) row.Refuse("event", "There are two entries with this identifier.");
        PatientId patient = row.Patient();
        LineId? line = row.LineOf(patient);
        var kind = row.Word<LineEventKind>("kind");
        if (line is null && row.Has("kind") && NeedsLine(kind)) row.Refuse("line", "This kind of entry needs the line it was done to.");
        if (!row.Has("recorded_at")) row.Required("recorded_at");
        DateTimeZone zone = row.Ties.Patients.GetValueOrDefault(patient.Value, row.Ties.BranchZone);
        string order = row.Trimmed("order");
        if (order.Length > 0 && !row.Ties.Orders.Contains(order)) row.Refuse("order", "There is no such order in orders.csv.");
        return new LineEvent
        {
            Id = new EventId(id),
            Patient = patient,
            Line = line,
            Kind = kind,
            Performed = PerformedCells.Read(row, zone, line),
            RecordedAt = row.Instant("recorded_at", row.Ties.BranchZone) ?? default,
            Performer = row.OptionalWord<PerformerKind>("performer") ?? PerformerKind.Nurse,
            PerformerName = row.Text("performer_name"),
            RecordedBy = row.Text("recorded_by"),
            Certainty = row.OptionalWord<Certainty>("certainty") ?? Certainty.SeenByOurNurse,
            Dressing = Dressing(row, kind),
            SecurementChanged = row.YesNo("securement_changed"),
            ConnectorsChanged = row.LumensOf(line, "connectors_changed"),
            LumensUsed = row.LumensOf(line, "lumens_used"),
            OutsideLengthCm = row.Number("outside_length_cm", 0, LongestOutsideCm),
            ArmGirthCm = row.Number("arm_girth_cm", 0, WidestArmCm),
            Seal = row.Flags<SealFinding>("seal"),
            Order = order.Length == 0 ? null : order,
            Voids = row.Has("voids") ? new EventId(row.Trimmed("voids")) : null,
            Note = row.Text("note"),
        };
    }

    public static IEnumerable<string[]> Write(IEnumerable<LineEvent> events, Func<PatientId, DateTimeZone> zoneOf, DateTimeZone branch) =>
        events.Select(entry => new[]
        {
            entry.Id.Value, entry.Patient.Value, entry.Line?.Value ?? "", Words<LineEventKind>.Of(entry.Kind),
            PerformedCells.Day(entry.Performed), PerformedCells.Clock(entry.Performed, zoneOf(entry.Patient)),
            TimeText.Write(entry.RecordedAt, branch), Words<PerformerKind>.Of(entry.Performer), entry.PerformerName, entry.RecordedBy,
            Words<Certainty>.Of(entry.Certainty), entry.Dressing is { } dressing ? Words<DressingKind>.Of(dressing) : "",
            entry.SecurementChanged ? "yes" : "no", ListText.Write(entry.ConnectorsChanged), ListText.Write(entry.LumensUsed),
            NumberText.Write(entry.OutsideLengthCm), NumberText.Write(entry.ArmGirthCm), ListText.WriteFlags(entry.Seal),
            entry.Order ?? "", entry.Voids?.Value ?? "", entry.Note,
        });

    private static DressingKind? Dressing(Row row, LineEventKind kind)
    {
        DressingKind? dressing = row.OptionalWord<DressingKind>("dressing");
        if (kind == LineEventKind.DressingChanged && !row.Has("dressing"))
            row.Refuse("dressing", $"A dressing change needs what was put on. One of: {Words<DressingKind>.All}.");
        return dressing;
    }

    private static bool NeedsLine(LineEventKind kind) => kind is not (
        LineEventKind.AdmittedToHospital or LineEventKind.ReturnedHome or LineEventKind.Refused or LineEventKind.Missed
        or LineEventKind.NotDone or LineEventKind.PhoneCall or LineEventKind.Recertified or LineEventKind.LabsDrawn or LineEventKind.ServiceGiven
        or LineEventKind.DoseGiven);
}
