using NodaTime;

namespace HomeLine.Exchange.Csv;

/// <summary>How dates with slashes, dots or dashes are to be read. Asked once, never guessed.</summary>
public enum DateOrder
{
    /// <summary>Only year-month-day, as 2027-03-04.</summary>
    Iso,

    /// <summary>03/04/2027 is 4 March.</summary>
    MonthFirst,

    /// <summary>03/04/2027 is 3 April.</summary>
    DayFirst,
}

/// <summary>What the person importing has declared about the files.</summary>
public sealed record ReadingChoices
{
    /// <summary>Between fields: comma, semicolon or tab.</summary>
    public char Separator { get; init; } = ',';

    /// <summary>How dates that are not ISO are meant.</summary>
    public DateOrder Dates { get; init; }

    /// <summary>The clock's now, for refusing care that lies in the future when the files name no <c>as_of</c>.</summary>
    public Instant? Now { get; init; }
}
