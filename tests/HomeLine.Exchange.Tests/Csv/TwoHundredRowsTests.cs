using System.Globalization;
using System.Text;
using HomeLine.Exchange.Csv;

namespace HomeLine.Exchange.Tests.Csv;

/// <summary>A ledger of 200 rows, 24 kinds of mistakes repeated among good rows, gives exactly the report written beside each kind.</summary>
public class TwoHundredRowsTests
{
    private const int RowCount = 200;
    private const string Header =
        "event,patient,line,kind,performed_on,performed_at,recorded_at,dressing,connectors_changed,outside_length_cm,seal,order,voids,securement_changed";

    private static readonly string[] Good =
        ["{0}", "P01", "P01-1", "dressing_changed", "2027-03-03", "14:00", "2027-03-03T14:30", "film", "A", "2.0", "", "", "", "yes"];

    /// <summary>Which cell is spoiled, with what, and the reason to expect.</summary>
    private static readonly (int Cell, string Value, string Reason)[] Mistakes =
    [
        (4, "03/04/2027", "This could be 2027-03-04 or 2027-04-03. Write year-month-day, or declare date_order once in agency.csv."),
        (4, "03/14/2026", "This is probably 2026-03-14. Write year-month-day, or declare date_order once in agency.csv."),
        (4, "46449", "This is a spreadsheet's day number, it may mean 2027-03-03. Format the column as year-month-day and save again."),
        (4, "2027-02-30", "This is not a date. Write year-month-day with two digits each, for example 2027-03-04."),
        (4, "last Tuesday", "This is not a date. Write year-month-day, for example 2027-03-04."),
        (4, "2027-03-20", "This day lies in the future: the files are as of 2027-03-08."),
        (4, "2026-12-31", "This lies before the line was inserted on 2027-02-04."),
        (5, "25:00", "This is not a time. Write 24-hour time, for example 14:00."),
        (3, "dressing_chnged", "This word is not known here. One of: "),
        (1, "P99", "There is no such patient in patients.csv."),
        (2, "P01-9", "There is no such line in lines.csv."),
        (2, "P02-1", "This line belongs to patient P02."),
        (2, "", "This kind of entry needs the line it was done to."),
        (6, "", "A value is needed here."),
        (6, "2027-03-14T02:30", "This time did not exist in America/New_York: the clocks went forward over it."),
        (7, "plaster", "This word is not known here. One of: film, gauze, gauze_under_film, antiseptic_film, none."),
        (7, "", "A dressing change needs what was put on. One of: film, gauze, gauze_under_film, antiseptic_film, none."),
        (8, "C", "Line P01-1 has no such lumen; it has A."),
        (9, "-1", "This must be a number from 0 to 60, with a point before decimals and no unit."),
        (9, "61", "This must be a number from 0 to 60, with a point before decimals and no unit."),
        (9, "1 inch", "This must be a number from 0 to 60, with a point before decimals and no unit."),
        (10, "fell_off", "This word is not known here. Any of: "),
        (11, "P01-nothing", "There is no such order in orders.csv."),
        (13, "maybe", "Write yes or no."),
    ];

    private static readonly string[] Columns = Header.Split(',');

    [Fact]
    public void Two_hundred_rows_give_exactly_the_expected_report()
    {
        var text = new StringBuilder(Header).Append("\r\n");
        var expected = new List<(int Line, string Column, string Value, string Reason)>();
        for (int i = 0; i < RowCount; i++)
        {
            string[] cells = [.. Good.Select(cell => string.Format(CultureInfo.InvariantCulture, cell, $"E{i}"))];
            if (i % 5 != 4)
            {
                (int cell, string value, string reason) = Mistakes[i % Mistakes.Length];
                cells[cell] = value;
                if (value.Length == 0 && Columns[cell] == "line") cells[8] = "";
                expected.Add((i + 2, Columns[cell], value, reason));
            }

            text.Append(string.Join(',', cells)).Append("\r\n");
        }

        RosterReading reading = RosterFolder.Read(SeedFiles.InMemory.With("events.csv", Encoding.UTF8.GetBytes(text.ToString())));

        Assert.Null(reading.Roster);
        Assert.True(reading.AsksForDateOrder);
        Assert.Equal(160, expected.Count);
        Assert.Equal(expected.Select(one => (one.Line, one.Column, one.Value)), reading.Problems.Select(one => (one.Line, one.Column, one.Value)));
        Assert.All(reading.Problems.Zip(expected), pair => Assert.StartsWith(pair.Second.Reason, pair.First.Reason, StringComparison.Ordinal));
        Assert.All(reading.Problems, problem => Assert.Equal("events.csv", problem.File));
    }

    [Fact]
    public void Every_kind_of_mistake_is_met() =>
        Assert.Equal(Mistakes.Length, Enumerable.Range(0, RowCount).Where(i => i % 5 != 4).Select(i => i % Mistakes.Length).Distinct().Count());
}
