using HomeLine.Agency.Roster;
using HomeLine.Agency.WeekPlanning;
using HomeLine.Exchange.Csv;
using NodaTime;

namespace HomeLine.Agency.Tests;

/// <summary>The demonstration agency from seed/, invented throughout, with its fixed now and its published week.</summary>
public static class DemoAgency
{
    private static readonly Lazy<RosterReading> Reading = new(() => RosterFolder.Read(new RosterDirectory(SeedFolder())));

    public static AgencyRoster Roster => Reading.Value.Roster ?? throw new InvalidOperationException(Reading.Value.Problems[0].ToString());

    public static PlannedWeek Published => Reading.Value.Published!;

    public static CareFiles Files { get; } = CareFiles.Of(Roster);

    public static Instant Now => Roster.Profile.FixedNow!.Value;

    public static LocalDate FirstDay { get; } = new(2027, 3, 8);

    /// <summary>A local time at the branch.</summary>
    public static Instant At(int day, int hour, int minute) =>
        new LocalDateTime(2027, 3, day, hour, minute).InZoneStrictly(Roster.Profile.Zone).ToInstant();

    private static string SeedFolder()
    {
        for (DirectoryInfo? folder = new(AppContext.BaseDirectory); folder is not null; folder = folder.Parent)
            if (File.Exists(Path.Combine(folder.FullName, "HomeLine.sln")))
                return Path.Combine(folder.FullName, "seed");
        throw new DirectoryNotFoundException("The repository's seed folder was not found above the test's folder.");
    }
}
