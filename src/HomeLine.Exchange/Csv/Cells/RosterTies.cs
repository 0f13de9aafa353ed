using HomeLine.LineCare.Lines;
using NodaTime;

namespace HomeLine.Exchange.Csv.Cells;

/// <summary>What the rows of one file may refer to in another: the agency's zone and states, and every identifier met so far.</summary>
internal sealed class RosterTies
{
    public DateTimeZone BranchZone { get; set; } = DateTimeZone.Utc;

    /// <summary>Nothing may have happened after this.</summary>
    public Instant? AsOf { get; set; }

    public DateOrder Dates { get; set; }

    public double MapWidth { get; set; } = 60;

    public double MapHeight { get; set; } = 44;

    public HashSet<string> States { get; } = new(StringComparer.Ordinal);

    public HashSet<string> Nurses { get; } = new(StringComparer.Ordinal);

    public Dictionary<string, DateTimeZone> Patients { get; } = new(StringComparer.Ordinal);

    /// <summary>Lines by identifier; empty value when the line's own row has problems.</summary>
    public Dictionary<string, Line?> Lines { get; } = new(StringComparer.Ordinal);

    public HashSet<string> Orders { get; } = new(StringComparer.Ordinal);

    /// <summary>Rows met so far, by file and by what tells them apart.</summary>
    public HashSet<string> Rows { get; } = new(StringComparer.Ordinal);

    public HashSet<string> Events { get; } = new(StringComparer.Ordinal);
}
