using System.Text;
using HomeLine.Exchange.Csv;

namespace HomeLine.Exchange.Tests.Csv;

/// <summary>Mistakes of real spreadsheets, each put into the demonstration files alone: refused at its column with a reason that helps.</summary>
public class BadRowsTests
{
    [Theory]
    [InlineData("lines.csv", "P01-1", "inserted_on", "2027-03-09", "lies in the future")]
    [InlineData("lines.csv", "P01-1", "outside_length_cm", "61", "from 0 to 60")]
    [InlineData("lines.csv", "P01-1", "outside_length_cm", "-0.5", "from 0 to 60")]
    [InlineData("lines.csv", "P01-1", "lumens", "A A", "named twice")]
    [InlineData("lines.csv", "P01-1", "occluded_lumens", "B", "not among")]
    [InlineData("lines.csv", "P01-1", "exit_site_healed", "yes", "Only the exit site of a tunneled line")]
    [InlineData("lines.csv", "P01-1", "tip_confirmed", "", "A value is needed")]
    [InlineData("lines.csv", "P01-1", "kind", "drip", "One of: picc, midline, tunneled, port, dialysis_catheter")]
    [InlineData("lines.csv", "P01-1", "lumens", "red", "one capital letter")]
    [InlineData("caregivers.csv", "set", "item", "lumen_flush", "says this already")]
    [InlineData("infusions.csv", "P02-1", "never_interrupt", "perhaps", "Write yes or no")]
    [InlineData("shifts.csv", "N1", "weekday", "tue", "overlaps another working time")]
    [InlineData("patients.csv", "P01", "x", "61", "off the map")]
    [InlineData("patients.csv", "P58", "y", "55.7", "off the map")]
    [InlineData("patients.csv", "P01", "state", "Atlantis", "States there: Marrow; Westling")]
    [InlineData("patients.csv", "P01", "zone", "Mars/Olympus", "time zone is not known")]
    [InlineData("patients.csv", "P01", "access_times", "09:00-08:00", "ends before it begins")]
    [InlineData("patients.csv", "P01", "access_times", "08:00-10:00; mon 09:00-11:00", "overlaps")]
    [InlineData("patients.csv", "P01", "access_times", "mornings", "Write weekdays and times")]
    [InlineData("patients.csv", "P14", "excluded_traits", "female", "both required and excluded")]
    [InlineData("patients.csv", "P01", "extra_minutes", "-5", "from 0 to 240")]
    [InlineData("patients.csv", "P01", "crew_size", "3", "from 1 to 2")]
    [InlineData("patients.csv", "P01", "born_on", "2027-04-01", "lies in the future")]
    [InlineData("patients.csv", "P02", "patient", "P01", "two patients with this identifier")]
    [InlineData("orders.csv", "P01-labs", "every_days", "0", "from 1 to 365")]
    [InlineData("orders.csv", "P01-labs", "every_days", "-7", "from 1 to 365")]
    [InlineData("orders.csv", "P01-labs", "every_days", "366", "from 1 to 365")]
    [InlineData("orders.csv", "P01-labs", "every_days", "", "says no day")]
    [InlineData("orders.csv", "P01-labs", "work_minutes", "-10", "from 0 to 720")]
    [InlineData("orders.csv", "P01-labs", "ends_on", "2027-01-01", "ends before starts_on")]
    [InlineData("orders.csv", "P01-visits", "as_needed_visits", "", "no limit")]
    [InlineData("orders.csv", "P01-visits", "as_needed_visits", "PRN", "need a number")]
    [InlineData("orders.csv", "P01-visits", "as_needed_used", "4", "More as-needed visits are used")]
    [InlineData("orders.csv", "P04-level", "dose_times", "", "without the dose times")]
    [InlineData("orders.csv", "P20-ig", "dates", "2027-05-01", "outside the order's own dates")]
    [InlineData("nurses.csv", "N1", "licences", "Atlantis until 2027-12-31", "not in agency.csv")]
    [InlineData("nurses.csv", "N1", "licences", "Marrow until 12/31/2027", "date_order")]
    [InlineData("nurses.csv", "N1", "sign_offs", "IG until 2027-12-31", "not among the skills")]
    [InlineData("nurses.csv", "N1", "sign_offs", "PORT", "does not lapse")]
    [InlineData("nurses.csv", "N1", "visit_caps", "SOC two a day", "for example SOC 2 a day")]
    [InlineData("nurses.csv", "N1", "visit_caps", "SOC 2 a month", "for example SOC 2 a day")]
    [InlineData("nurses.csv", "N1", "visit_caps", "IG 2 a day", "makes no such visit")]
    [InlineData("nurses.csv", "N1", "visit_caps", "SOC 2 a day; SOC 1 a day", "two caps")]
    [InlineData("holds.csv", "P11", "state", "Farstate", "has a last day")]
    [InlineData("holds.csv", "P12", "zone", "America/Chicago", "state of the place")]
    [InlineData("nurses.csv", "N1", "credential", "CNA", "RN, LPN")]
    [InlineData("holds.csv", "P12", "through", "2027-03-01", "ends before from")]
    [InlineData("leaves.csv", "N2", "through", "2027-03-01", "ends before from")]
    [InlineData("outside-care.csv", "P13", "fall_back_from", "2027-03-09T18:00", "before the care is even expected")]
    [InlineData("policy.csv", "set.continuous.max", "value", "10000", "over a year")]
    [InlineData("policy.csv", "set.continuous.max", "value", "0", "interval of nothing")]
    [InlineData("policy.csv", "set.continuous.max", "value", "70", "above")]
    [InlineData("policy.csv", "set.continuous.max", "rule", "set.continous.max", "no such rule")]
    [InlineData("policy.csv", "set.continuous.max", "unit", "cm", "counted in hours")]
    [InlineData("published-week.csv", "2027-03-10-P03", "day", "2027-03-15", "outside the week")]
    [InlineData("published-week.csv", "2027-03-10-P03", "care", "dressing P04-9", "is no line")]
    [InlineData("published-week.csv", "2027-03-10-P16", "second_nurse", "N1", "somebody else")]
    [InlineData("agency.csv", "zone", "value", "EST5", "time zone is not known")]
    public void One_spoiled_cell(string file, string row, string column, string value, string reason)
    {
        RosterReading reading = RosterFolder.Read(Spoiled(file, row, column, value));
        Assert.Null(reading.Roster);
        Assert.Contains(reading.Problems, problem => problem.File == file && problem.Reason.Contains(reason, StringComparison.Ordinal));
    }

    [Fact]
    public void A_shift_that_ends_before_it_starts_is_refused_at_its_line()
    {
        RowProblem problem = Assert.Single(RosterFolder.Read(Spoiled("shifts.csv", "N1", "to", "07:00")).Problems);
        Assert.Equal(("shifts.csv", 2, "to", "07:00"), (problem.File, problem.Line, problem.Column, problem.Value));
    }

    [Fact]
    public void Swapped_coordinates_are_named_as_such() => Assert.Contains(
        "look swapped",
        Assert.Single(RosterFolder.Read(Edited("patients.csv", "56.1,19.3", "19.3,56.1")).Problems).Reason,
        StringComparison.Ordinal);

    [Fact]
    public void An_unknown_column_is_refused_with_the_known_ones() => Assert.Contains(
        "Columns: patient, name,", Assert.Single(RosterFolder.Read(Edited("patients.csv", "access_notes", "notes_on_access")).Problems).Reason, StringComparison.Ordinal);

    [Fact]
    public void An_unknown_file_is_refused_with_the_known_ones() => Assert.Contains(
        "patients.csv", Assert.Single(RosterFolder.Read(SeedFiles.InMemory.With("patient.csv", "a"u8.ToArray())).Problems).Reason, StringComparison.Ordinal);

    [Theory]
    [InlineData("slow,,60,,07:30,09:00", "weekdays", "Name the weekdays")]
    [InlineData("slow,,60,mon,09:00,09:00", "to", "ends before it begins")]
    [InlineData("slow,,0,mon,07:30,09:00", "value", "from 1 to 100")]
    [InlineData("slow,,60,mon tue,07:30,09:00\r\nslow,,50,tue,08:00,10:00", "from", "overlaps another slow time")]
    public void Slow_hours_that_make_no_sense_are_refused_at_their_column(string rows, string column, string words)
    {
        string text = "kind,up_to_km,value,weekdays,from,to\r\ncircuity,,1.3,,,\r\nspeed,,50,,,\r\nparking,,4,,,\r\n" + rows + "\r\n";
        RosterReading reading = RosterFolder.Read(SeedFiles.InMemory.With("map-roads.csv", Encoding.UTF8.GetBytes(text)));
        Assert.Contains(reading.Problems, p => p.Column == column && p.Reason.Contains(words, StringComparison.Ordinal));
    }

    [Fact]
    public void Semicolons_between_fields_are_asked_about_not_guessed()
    {
        string text = Text("holds.csv").Replace(',', ';');
        RosterFileSet files = SeedFiles.InMemory.With("holds.csv", Encoding.UTF8.GetBytes(text));
        Assert.Equal(';', RosterFolder.Read(files).AsksForSeparator);
    }

    [Fact]
    public void A_declared_date_order_is_used_everywhere()
    {
        RosterFileSet files = Edited("agency.csv", "demo,yes", "demo,yes\r\ndate_order,month_first")
            .With("holds.csv", "patient,from,through,reason\r\nP12,3/10/2027,03.15.2027,away\r\n"u8.ToArray());
        RosterReading reading = RosterFolder.Read(files);
        Assert.Empty(reading.Problems);
        Assert.Equal(new NodaTime.LocalDate(2027, 3, 10), Assert.Single(reading.Roster!.Holds).From);
    }

    [Fact]
    public void A_hostile_number_of_problems_is_cut_off_with_a_count()
    {
        var text = new StringBuilder("patient,from,through,reason\r\n");
        for (int i = 0; i < 60_000; i++) text.Append("P99,2027-03-01,,x\r\n");
        RosterReading reading = RosterFolder.Read(SeedFiles.InMemory.With("holds.csv", Encoding.UTF8.GetBytes(text.ToString())));
        Assert.Equal(50_001, reading.Problems.Length);
        Assert.Equal("From here on 10000 more problems are not listed.", reading.Problems[^1].Reason);
    }

    [Fact]
    public void Every_bad_row_is_reported_not_only_the_first()
    {
        string text = Text("patients.csv").Replace("Marrow", "Marow", StringComparison.Ordinal);
        Assert.Equal(55, RosterFolder.Read(SeedFiles.InMemory.With("patients.csv", Encoding.UTF8.GetBytes(text))).Problems.Length);
    }

    private static RosterFileSet Spoiled(string file, string row, string column, string value)
    {
        var sheet = CsvParsing.Parse(file, SeedFiles.InMemory.Open(file).Bytes, ',', new ProblemList())!;
        int index = sheet.Header.Fields.IndexOf(column);
        int spoiled = sheet.Rows.ToList().FindIndex(one => one.Fields.Contains(row));
        Assert.True(index >= 0 && spoiled >= 0);
        var lines = sheet.Rows.Select((one, i) => i == spoiled ? one.Fields.SetItem(index, value) : one.Fields).Prepend(sheet.Header.Fields);
        string text = string.Join("\r\n", lines.Select(fields => string.Join(',', fields.Select(cell => $"\"{cell}\""))));
        return SeedFiles.InMemory.With(file, Encoding.UTF8.GetBytes(text));
    }

    private static RosterFileSet Edited(string file, string old, string with)
    {
        string text = Text(file);
        Assert.Contains(old, text, StringComparison.Ordinal);
        return SeedFiles.InMemory.With(file, Encoding.UTF8.GetBytes(text.Replace(old, with, StringComparison.Ordinal)));
    }

    private static string Text(string file) => Encoding.UTF8.GetString(SeedFiles.InMemory.Open(file).Bytes.Span);
}
