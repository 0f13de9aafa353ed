using HomeLine.Exchange.Csv;
using HomeLine.Exchange.Csv.Cells;
using HomeLine.Exchange.Csv.Tables;

namespace HomeLine.Exchange.Tests.Csv;

/// <summary>The page for people who prepare files names every file, every column and every key.</summary>
public class ImportPageTests
{
    private static readonly string Page = File.ReadAllText(Path.Combine(SeedFiles.Folder(), "..", "docs", "import.md"));

    public static TheoryData<string> Files => [.. RosterFolder.FileNames];

    [Theory]
    [MemberData(nameof(Files))]
    public void Every_column_of_every_file_has_a_row(string file)
    {
        TableShape shape = RosterExport.Shapes.Single(one => one.File == file);
        string section = Section(file);
        Assert.All(shape.Columns, column =>
            Assert.Contains($"| `{column.Name}` | {(column.Required ? "yes" : "no")} |", section, StringComparison.Ordinal));
    }

    [Fact]
    public void Every_key_of_the_agency_has_a_row() =>
        Assert.All(AgencyTable.NeededKeys.Concat(AgencyTable.OtherKeys), key => Assert.Contains($"| `{key}` |", Section("agency.csv"), StringComparison.Ordinal));

    [Fact]
    public void Every_column_holds_the_whole_of_a_row_of_the_roster() => Assert.All(
        new (Type Record, int Columns)[]
        {
            // Columns beside the properties: x and y for one place; five for the place of a stay; three for a first dose; performed_on and performed_at; occluded_lumens; and the identifiers of the patient.
            (typeof(Agency.Roster.Patient), PatientsTable.Shape.Columns.Length - 1),
            (typeof(LineCare.Lines.Line), LinesTable.Shape.Columns.Length - 1),
            (typeof(LineCare.Lines.Infusion), InfusionsTable.Shape.Columns.Length),
            (typeof(LineCare.Orders.CareOrder), OrdersTable.Shape.Columns.Length - 2),
            (typeof(LineCare.Ledger.LineEvent), EventsTable.Shape.Columns.Length - 1),
            (typeof(LineCare.CaregiverValidation), CaregiversTable.Shape.Columns.Length),
            (typeof(LineCare.Hold), HoldsTable.Shape.Columns.Length - 4),
            (typeof(Agency.Roster.OutsideCare), OutsideCareTable.Shape.Columns.Length),
            (typeof(LineCare.CareException), ExceptionsTable.Shape.Columns.Length),
            (typeof(LineCare.Policy.PolicyRule), PolicyTable.Shape.Columns.Length + 1),
            (typeof(Agency.WeekPlanning.WeekVisit), PublishedWeekTable.Shape.Columns.Length - 1),
        },
        pair => Assert.True(pair.Record.GetProperties().Count(property => property.CanWrite) == pair.Columns,
            $"{pair.Record.Name} has {pair.Record.GetProperties().Count(property => property.CanWrite)} properties for {pair.Columns} columns."));

    private static string Section(string file)
    {
        int start = Page.IndexOf($"## {file}", StringComparison.Ordinal);
        Assert.True(start >= 0, $"docs/import.md has no section for {file}.");
        int end = Page.IndexOf("\n## ", start + 1, StringComparison.Ordinal);
        return end < 0 ? Page[start..] : Page[start..end];
    }
}
