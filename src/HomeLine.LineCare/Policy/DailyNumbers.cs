using NodaTime;

namespace HomeLine.LineCare.Policy;

/// <summary>The few policy numbers that every answer needs, as they stand on one day.</summary>
internal sealed class DailyNumbers(PolicyBook book, LocalDate on)
{
    public LocalDate On => on;

    /// <summary>1 when the agency counts the day of change as day 1, else 0.</summary>
    public int FirstDay { get; } = book.InForce(RuleIds.DayOfChangeIsDayOne, on)?.Value == 1 ? 1 : 0;

    /// <summary>Growth of the outside length that asks.</summary>
    public decimal LengthStep { get; } = book.ValueOf(RuleIds.LengthStep, on);

    /// <summary>Shortening of the outside length beyond which somebody is asked.</summary>
    public decimal LengthShortening { get; } = book.ValueOf(RuleIds.LengthShortening, on);

    /// <summary>Length of a certification period.</summary>
    public PolicyRule Recertification { get; } = book.InForce(RuleIds.RecertificationLast, on)
        ?? throw new KeyNotFoundException($"No policy value '{RuleIds.RecertificationLast}' is in force on {on}.");

    /// <summary>First day of a period on which its assessment may be done.</summary>
    public int RecertificationFirst { get; } = (int)book.ValueOf(RuleIds.RecertificationFirst, on);

    /// <summary>Days before a repeating draw is due on which it may be taken.</summary>
    public int LabsEarly { get; } = (int)book.ValueOf(RuleIds.LabsEarly, on);

    /// <summary>Days ahead for which ordered dates are listed.</summary>
    public int Horizon { get; } = (int)book.ValueOf(RuleIds.HorizonDays, on);
}
