using System.Collections.Immutable;
using HomeLine.LineCare.Counting;
using HomeLine.LineCare.Ledger;
using NodaTime;

namespace HomeLine.Agency.Tests.Counting;

/// <summary>Line-days of the demonstration, counted by hand from its files. Invented data.</summary>
public sealed class DemoLineDaysTests
{
    private static readonly ImmutableArray<LineDays> Week = [.. DemoAgency.Roster.Patients.Select(p => LineDays.Of(
        DemoAgency.Files[p.Id], new LocalDate(2027, 3, 1), new LocalDate(2027, 3, 7), DemoAgency.Files.Policy, DemoAgency.Now))];

    /// <summary>71 central lines for 7 days, without P09 before its insertion on the 5th (4 days), P46 before the 7th (6) and P11 on the day after
    /// its admission on the 6th (1).</summary>
    [Fact]
    public void Central_lines_counted_one_by_one() =>
        Assert.Equal((71 * 7) - 4 - 6 - 1, Week.SelectMany(w => w.Lines).Where(line => line.Central).Sum(line => line.Days));

    /// <summary>60 patients, each with at least one central line: two lines of one patient count once.</summary>
    [Fact]
    public void Patients_with_two_lines_counted_once() => Assert.Equal((60 * 7) - 4 - 6 - 1, Week.Sum(w => w.CentralLineDays));

    /// <summary>Four midlines for seven days, in no central count.</summary>
    [Fact]
    public void Midlines_stand_apart() => Assert.Equal(4 * 7, Week.SelectMany(w => w.Lines).Where(line => !line.Central).Sum(line => line.Days));

    [Fact]
    public void Two_lines_were_inserted_in_that_week_and_none_removed()
    {
        Assert.Equal(2, Week.SelectMany(w => w.Lines).Sum(line => line.Changes.GetValueOrDefault(LineEventKind.Inserted)));
        Assert.Equal(0, Week.SelectMany(w => w.Lines).Sum(line => line.Changes.GetValueOrDefault(LineEventKind.Removed)));
    }

    /// <summary>P01's line was placed on 4 February: 31 days to 7 March.</summary>
    [Fact]
    public void Dwell_is_counted_from_the_insertion() => Assert.Equal(31, Week[0].Lines.Single().DwellDays);
}
