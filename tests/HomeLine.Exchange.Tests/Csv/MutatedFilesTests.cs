using System.Text;
using CsCheck;
using HomeLine.Exchange.Csv;

namespace HomeLine.Exchange.Tests.Csv;

/// <summary>Damaged files never throw: they are refused with file, line and reason, and then nothing is read at all.</summary>
public class MutatedFilesTests
{
    private const long Runs = 1_000;

    private static readonly Gen<string> Cell = Gen.OneOf<string>(
        NastyText.Any,
        Gen.OneOf("-1", "0", "99999999999999999999", "1e309", "NaN", "Infinity", "0x10", "9999-12-31", "0001-01-01", "2027-02-30", "24:00", "2027-03-14T02:30",
            "2026-11-01T01:30", "2027-03-08T06:00+99:00", "P01", "N1", "P01-1", "mon mon", "Etc/Unknown", "\"", "a\nb", new string('x', 20_000), "1,5", "2027-03-08T"));

    private static readonly Gen<(string File, int Where, int What, string Text)> Damage = Gen.Select(
        Gen.OneOf([.. SeedFiles.InMemory.Names]), Gen.Int[0, 1_000_000], Gen.Int[0, 8], Cell, (file, where, what, text) => (file, where, what, text));

    [Fact]
    public void A_damaged_file_is_refused_with_file_line_and_reason_or_read_whole() => Damage.Array[1, 3].Sample(damages =>
    {
        RosterFileSet files = damages.Aggregate(SeedFiles.InMemory, (set, one) => set.With(one.File, Encoding.UTF8.GetBytes(Apply(Text(set, one.File), one))));
        Judge(RosterFolder.Read(files));
    }, iter: Runs);

    [Fact]
    public void Random_bytes_are_refused() => Gen.Select(Gen.OneOf([.. SeedFiles.InMemory.Names]), Gen.Byte.Array[0, 400])
        .Sample((file, bytes) => Judge(RosterFolder.Read(SeedFiles.InMemory.With(file, bytes))), iter: Runs);

    [Fact]
    public void Any_text_parses_or_is_refused_with_a_line() => NastyText.Any.Array[0, 20].Sample(pieces =>
    {
        var problems = new ProblemList();
        CsvSheet? sheet = CsvParsing.Parse("t.csv", Encoding.UTF8.GetBytes(string.Concat(pieces)), ',', problems);
        Assert.True(sheet is not null || problems.Any);
        Assert.All(problems.InOrder(), problem => Assert.True(problem.Line >= 1));
    }, iter: 20_000);

    [Fact]
    public void A_missing_file_is_named() => Assert.All(
        RosterFolder.FileNames.Where(name => RosterExport.Shapes.Single(shape => shape.File == name).Required),
        name =>
        {
            var rest = new RosterFileSet(SeedFiles.InMemory.Names.Where(other => other != name)
                .Select(other => KeyValuePair.Create(other, SeedFiles.InMemory.Open(other).Bytes)));
            Assert.Contains(RosterFolder.Read(rest).Problems, problem => problem.File == name && problem.Reason.Contains("missing", StringComparison.Ordinal));
        });

    private static void Judge(RosterReading reading)
    {
        Assert.Equal(reading.Roster is null, !reading.Problems.IsEmpty);
        if (!reading.Problems.IsEmpty) Assert.Null(reading.Published);
        Assert.All(reading.Problems, problem =>
        {
            Assert.NotEmpty(problem.File);
            Assert.True(problem.Line >= 1);
            Assert.NotEmpty(problem.Reason);
        });
    }

    private static string Text(RosterFileSet files, string name) => Encoding.UTF8.GetString(files.Open(name).Bytes.Span);

    private static string Apply(string text, (string File, int Where, int What, string Text) damage)
    {
        string[] lines = text.Split("\r\n");
        int line = damage.Where % lines.Length;
        int at = text.Length == 0 ? 0 : damage.Where % text.Length;
        string[] cells = lines[line].Split(',');
        int cell = damage.Where / 7 % cells.Length;
        return damage.What switch
        {
            0 or 1 or 2 => Replace(lines, line, string.Join(',', cells.Select((old, i) => i == cell ? Quoted(damage.Text) : old))),
            3 => Replace(lines, line, lines[line] + "\r\n" + lines[line]),
            4 => Replace(lines, line, damage.Text),
            5 => text[..at] + damage.Text + text[at..],
            6 => text[..at],
            7 => string.Join("\n", lines.Reverse()),
            _ => Replace(lines, line, string.Join(',', cells.Where((_, i) => i != cell))),
        };
    }

    private static string Quoted(string cell) => $"\"{cell.Replace("\"", "\"\"", StringComparison.Ordinal)}\"";

    private static string Replace(string[] lines, int line, string with) =>
        string.Join("\r\n", lines.Select((old, i) => i == line ? with : old));
}
