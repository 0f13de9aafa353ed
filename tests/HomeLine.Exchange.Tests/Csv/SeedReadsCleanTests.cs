using HomeLine.LineCare.Lines;

namespace HomeLine.Exchange.Tests.Csv;

/// <summary>The demonstration files read without a problem and hold what the scenario says. All figures are our own, the people are invented.</summary>
public class SeedReadsCleanTests
{
    [Fact]
    public void The_demonstration_files_have_no_problem() => Assert.Empty(SeedFiles.Reading.Problems);

    [Fact]
    public void Sixty_patients_and_seventy_five_lines()
    {
        Assert.Equal(60, SeedFiles.Roster.Patients.Length);
        Assert.Equal(75, SeedFiles.Roster.Lines.Length);
    }

    [Theory]
    [InlineData(LineKind.Picc, 46)]
    [InlineData(LineKind.Tunneled, 10)]
    [InlineData(LineKind.Port, 15)]
    [InlineData(LineKind.Midline, 4)]
    public void Lines_by_kind(LineKind kind, int count) =>
        Assert.Equal(count, SeedFiles.Roster.Lines.Count(line => line.Kind == kind));

    [Fact]
    public void Seventy_one_lines_are_central() => Assert.Equal(71, SeedFiles.Roster.Lines.Count(line => line.Kind.IsCentral()));

    [Fact]
    public void The_published_week_has_sixty_nine_visits_with_the_escort_and_5320_minutes_in_homes()
    {
        Assert.Equal(69, SeedFiles.Week.Visits.Sum(visit => visit.Second is null ? 1 : 2));
        Assert.Equal(5_320, SeedFiles.Week.Visits.Sum(visit => visit.Minutes * (visit.Second is null ? 1 : 2)));
    }

    [Fact]
    public void Nurses_work_28_days_and_12600_paid_minutes()
    {
        var shifts = SeedFiles.Roster.Nurses.SelectMany(nurse => nurse.Week).Where(time => !time.OnCall).ToList();
        Assert.Equal(28, shifts.Count);
        Assert.Equal(12_600, shifts.Sum(time => (time.To - time.From).ToDuration().TotalMinutes));
    }
}
