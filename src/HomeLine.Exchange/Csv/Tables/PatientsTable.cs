using System.Collections.Immutable;
using HomeLine.Agency.Roster;
using HomeLine.Exchange.Csv.Cells;
using HomeLine.LineCare;
using HomeLine.LineCare.Lines;
using NodaTime;

namespace HomeLine.Exchange.Csv.Tables;

/// <summary>patients.csv: people at home.</summary>
internal static class PatientsTable
{
    public static readonly TableShape Shape = TableShape.Of("patients.csv", true,
        """
        patient! name! born_on care_started_on! therapy address phone access_notes contact x! y! state! zone risks language practitioner
        access_times required_traits excluded_traits refused_nurses known_nurses needs_skills crew_size signs extra_minutes note
        """.ReplaceLineEndings(" "));

    private const int MostExtraMinutes = 240;

    public static Patient Read(Row row)
    {
        string id = row.Id("patient");
        DateTimeZone zone = Zone(row);
        if (id.Length > 0 && !row.Ties.Patients.TryAdd(id, zone)) row.Refuse("patient", "There are two patients with this identifier.");
        (double x, double y) = row.Place();
        LocalDate? born = row.PastDate("born_on", zone);
        LocalDate started = row.RequiredDate("care_started_on");
        if (row.IsSound) row.InOrder("born_on", born, "care_started_on", started);
        return new Patient
        {
            Id = new PatientId(id),
            Name = row.RequiredText("name"),
            BornOn = born,
            CareStartedOn = started,
            Therapy = row.Text("therapy"),
            Address = row.Text("address"),
            Phone = row.Text("phone"),
            AccessNotes = row.Text("access_notes"),
            Contact = row.Text("contact"),
            Home = new MapPoint(x, y),
            State = row.State(row.Required("state"), "state"),
            ZoneId = zone.Id,
            Risks = row.Flags<RiskFactors>("risks"),
            Language = Language(row),
            Practitioner = row.Text("practitioner"),
            AccessTimes = AccessTimesCell.Read(row, "access_times"),
            RequiredTraits = row.List("required_traits"),
            ExcludedTraits = ExcludedTraits(row),
            RefusedNurses = Nurses(row, "refused_nurses"),
            KnownNurses = Nurses(row, "known_nurses"),
            NeedsSkills = row.List("needs_skills"),
            CrewSize = row.Whole("crew_size", 1, 2) ?? 1,
            AsksForSigns = row.YesNo("signs"),
            ExtraMinutes = row.Whole("extra_minutes", 0, MostExtraMinutes) ?? 0,
            Note = row.Text("note"),
        };
    }

    public static IEnumerable<string[]> Write(IEnumerable<Patient> patients) => patients.Select(patient => new[]
    {
        patient.Id.Value, patient.Name, TimeText.Write(patient.BornOn), TimeText.Write(patient.CareStartedOn), patient.Therapy,
        patient.Address, patient.Phone, patient.AccessNotes, patient.Contact, NumberText.Write(patient.Home.X),
        NumberText.Write(patient.Home.Y), patient.State, patient.ZoneId, ListText.WriteFlags(patient.Risks), patient.Language,
        patient.Practitioner, AccessTimesCell.Write(patient.AccessTimes), ListText.Write(patient.RequiredTraits),
        ListText.Write(patient.ExcludedTraits), ListText.Write(patient.RefusedNurses), ListText.Write(patient.KnownNurses),
        ListText.Write(patient.NeedsSkills), NumberText.Write(patient.CrewSize), patient.AsksForSigns ? "yes" : "", NumberText.Write(patient.ExtraMinutes), patient.Note,
    });

    private static DateTimeZone Zone(Row row)
    {
        if (!row.Has("zone")) return row.Ties.BranchZone;
        if (DateTimeZoneProviders.Tzdb.GetZoneOrNull(row.Trimmed("zone")) is { } zone) return zone;
        row.Refuse("zone", AgencyFacts.ZoneProblem);
        return row.Ties.BranchZone;
    }

    private static string Language(Row row)
    {
        string tag = row.Trimmed("language");
        if (tag.Length == 0) return "en";
        if (tag.Length > 35 || !tag.All(c => char.IsAsciiLetterOrDigit(c) || c == '-'))
            row.Refuse("language", "Write the language's tag, for example en, es or vi.");
        return tag;
    }

    private static ImmutableArray<string> ExcludedTraits(Row row)
    {
        ImmutableArray<string> excluded = row.List("excluded_traits");
        foreach (string both in excluded.Intersect(row.List("required_traits")))
            row.Refuse("excluded_traits", both, "This trait is both required and excluded.");
        return excluded;
    }

    private static ImmutableArray<string> Nurses(Row row, string column) =>
        [.. row.List(column).Select(id => row.Nurse(id, column))];
}
