using System.Collections.Immutable;
using HomeLine.Exchange.Csv.Cells;
using HomeLine.LineCare.Lines;

namespace HomeLine.Exchange.Csv.Tables;

/// <summary>lines.csv: the vascular access devices.</summary>
internal static class LinesTable
{
    public static readonly TableShape Shape = TableShape.Of("lines.csv", true,
        """
        line! patient! kind! lumens! occluded_lumens site inserted_on tip_confirmed! inserted_length_cm outside_length_cm securement!
        exit_site_healed dressing_minutes
        """.ReplaceLineEndings(" "));

    private const int MostLumens = 5;
    private const decimal LongestInsideCm = 80;
    private const decimal LongestOutsideCm = 60;
    private const int MostDressingMinutes = 240;

    public static Line Read(Row row)
    {
        string id = row.Id("line");
        PatientId patient = row.Patient();
        if (id.Length > 0 && !row.Ties.Lines.TryAdd(id, null)) row.Refuse("line", "There are two lines with this identifier.");
        var line = new Line
        {
            Id = new LineId(id),
            Patient = patient,
            Kind = row.Word<LineKind>("kind"),
            Lumens = Lumens(row),
            Site = row.Text("site"),
            InsertedOn = row.PastDate("inserted_on", row.Ties.Patients.GetValueOrDefault(patient.Value, row.Ties.BranchZone)),
            TipConfirmed = row.RequiredYesNo("tip_confirmed"),
            InsertedLengthCm = row.Number("inserted_length_cm", 0, LongestInsideCm),
            OutsideLengthCm = row.Number("outside_length_cm", 0, LongestOutsideCm),
            Securement = row.Word<SecurementKind>("securement"),
            ExitSiteHealed = row.YesNo("exit_site_healed"),
            DressingMinutes = row.Whole("dressing_minutes", 0, MostDressingMinutes),
        };
        if (line.ExitSiteHealed && line.Kind is not LineKind.Tunneled && row.IsSound)
            row.Refuse("exit_site_healed", "Only the exit site of a tunneled line is recorded as healed.");
        if (row.IsSound) row.Ties.Lines[id] = line;
        return line;
    }

    public static IEnumerable<string[]> Write(IEnumerable<Line> lines) => lines.Select(line => new[]
    {
        line.Id.Value, line.Patient.Value, Words<LineKind>.Of(line.Kind), ListText.Write(line.Lumens.Select(lumen => lumen.Label)),
        ListText.Write(line.Lumens.Where(lumen => lumen.Occluded).Select(lumen => lumen.Label)), line.Site,
        TimeText.Write(line.InsertedOn), line.TipConfirmed ? "yes" : "no", NumberText.Write(line.InsertedLengthCm),
        NumberText.Write(line.OutsideLengthCm), Words<SecurementKind>.Of(line.Securement), line.ExitSiteHealed ? "yes" : "no",
        NumberText.Write(line.DressingMinutes),
    });

    private static ImmutableArray<Lumen> Lumens(Row row)
    {
        ImmutableArray<string> labels = row.List("lumens");
        ImmutableArray<string> occluded = row.List("occluded_lumens");
        if (!row.Has("lumens")) row.Required("lumens");
        if (labels.Length > MostLumens) row.Refuse("lumens", $"A line has at most {MostLumens} lumens.");
        foreach (string label in labels.Where(label => label.Length != 1 || !char.IsAsciiLetterUpper(label[0])))
            row.Refuse("lumens", label, "A lumen is one capital letter.");
        if (labels.Distinct(StringComparer.Ordinal).Count() != labels.Length) row.Refuse("lumens", "A lumen is named twice.");
        foreach (string stranger in occluded.Except(labels)) row.Refuse("occluded_lumens", stranger, "This lumen is not among the line's lumens.");
        return [.. labels.Select(label => new Lumen(label, occluded.Contains(label)))];
    }
}

/// <summary>infusions.csv: what runs through the lumens.</summary>
internal static class InfusionsTable
{
    public static readonly TableShape Shape =
        TableShape.Of("infusions.csv", false, "patient! line! lumen! kind! drug! set_changed_by! never_interrupt");

    public static Infusion Read(Row row)
    {
        PatientId patient = row.Patient();
        if (!row.Has("line")) row.Required("line");
        LineId? line = row.LineOf(patient);
        ImmutableArray<string> lumen = row.LumensOf(line, "lumen");
        if (!row.Has("lumen")) row.Required("lumen");
        if (lumen.Length > 1) row.Refuse("lumen", "One lumen a row.");
        var infusion = new Infusion(
            patient,
            line ?? new LineId(""),
            lumen.FirstOrDefault(""),
            row.Word<InfusionKind>("kind"),
            row.RequiredText("drug"),
            row.Word<PerformerKind>("set_changed_by"),
            row.YesNo("never_interrupt"));
        row.OnlyOnce("line", "lumen", "drug");
        return infusion;
    }

    public static IEnumerable<string[]> Write(IEnumerable<Infusion> infusions) => infusions.Select(infusion => new[]
    {
        infusion.Patient.Value, infusion.Line.Value, infusion.Lumen, Words<InfusionKind>.Of(infusion.Kind), infusion.Drug,
        Words<PerformerKind>.Of(infusion.SetChangedBy), infusion.NeverInterrupt ? "yes" : "no",
    });
}
