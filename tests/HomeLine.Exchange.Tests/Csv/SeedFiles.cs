using System.Runtime.CompilerServices;
using HomeLine.Agency.Roster;
using HomeLine.Agency.WeekPlanning;
using HomeLine.Exchange.Csv;

namespace HomeLine.Exchange.Tests.Csv;

/// <summary>The demonstration agency's files, read from the repository.</summary>
internal static class SeedFiles
{
    private static readonly Lazy<RosterReading> Read = new(() => RosterFolder.Read(new RosterDirectory(Folder())));

    private static readonly Lazy<RosterFileSet> Held = new(() =>
    {
        var folder = new RosterDirectory(Folder());
        return new RosterFileSet(folder.Names.Select(name => KeyValuePair.Create(name, folder.Open(name).Bytes)));
    });

    public static RosterReading Reading => Read.Value;

    public static RosterFileSet InMemory => Held.Value;

    public static AgencyRoster Roster => Reading.Roster ?? throw new InvalidOperationException("The demonstration files do not read.");

    public static PlannedWeek Week => Reading.Published ?? throw new InvalidOperationException("The demonstration week does not read.");

    public static string Folder([CallerFilePath] string here = "") =>
        Path.GetFullPath(Path.Combine(Path.GetDirectoryName(here)!, "..", "..", "..", "seed"));
}
