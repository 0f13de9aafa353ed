using System.Collections.Immutable;
using HomeLine.Agency.Roster;
using HomeLine.Agency.WeekPlanning;

namespace HomeLine.Exchange.Csv;

/// <summary>
/// What a folder of roster files says: a whole roster, or every problem in it. One problem is enough for no roster,
/// so that nothing is ever stored by half.
/// </summary>
public sealed record RosterReading
{
    /// <summary>The roster; empty when there is any problem.</summary>
    public AgencyRoster? Roster { get; init; }

    /// <summary>The published week, when the files hold one and there is no problem.</summary>
    public PlannedWeek? Published { get; init; }

    /// <summary>Every problem, by file and line.</summary>
    public ImmutableArray<RowProblem> Problems { get; init; } = [];

    /// <summary>Dates like 03/04/2027 were found: ask the person once which part is the month, then read again.</summary>
    public bool AsksForDateOrder { get; init; }

    /// <summary>The separator the files seem to use when it is not the one asked for: ask the person, then read again.</summary>
    public char? AsksForSeparator { get; init; }
}
