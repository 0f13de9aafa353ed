using System.Collections.Immutable;
using HomeLine.Agency.Roster;
using HomeLine.Agency.WeekPlanning;
using NodaTime;

namespace HomeLine.Exchange.Csv;

/// <summary>A roster as a folder of CSV files, one for each table: reading them all or not at all, and writing them so that they read back equal.</summary>
public static class RosterFolder
{
    /// <summary>Reads the files. Never throws for what they hold: every problem is in the answer, and one problem means no roster.</summary>
    public static RosterReading Read(IRosterFiles files, ReadingChoices? choices = null)
    {
        ArgumentNullException.ThrowIfNull(files);
        return new RosterAssembly(files, choices ?? new ReadingChoices()).Read();
    }

    /// <summary>Writes everything the agency owns in the formats that <see cref="Read"/> takes.</summary>
    /// <param name="roster">The roster.</param>
    /// <param name="week">The published week, if there is one.</param>
    /// <param name="asOf">When this is written.</param>
    public static RosterFileSet Write(AgencyRoster roster, PlannedWeek? week, Instant asOf)
    {
        ArgumentNullException.ThrowIfNull(roster);
        return new RosterFileSet(RosterExport.Tables(roster, week, asOf)
            .Select(table => KeyValuePair.Create(table.Shape.File, (ReadOnlyMemory<byte>)CsvWriting.Write(table.Shape, table.Rows))));
    }

    /// <summary>The names of all files a roster can have, those it must have first.</summary>
    public static ImmutableArray<string> FileNames { get; } =
        [.. RosterExport.Shapes.OrderBy(shape => !shape.Required).Select(shape => shape.File)];
}
