using System.Collections.Immutable;
using NodaTime;

namespace HomeLine.Agency.Sheets;

/// <summary>What a caregiver's care sheet says, ready for paper: plain words, dates as weekday and date.</summary>
public sealed record CareSheetContent
{
    public required string AgencyName { get; init; }

    /// <summary>The least needed to know whose sheet it is.</summary>
    public required string PatientName { get; init; }

    /// <summary>Number of this sheet, growing per patient.</summary>
    public required int Number { get; init; }
    public required LocalDateTime PrintedAt { get; init; }

    /// <summary>The sheet this one replaces, if any.</summary>
    public (int Number, LocalDate PrintedOn)? Replaces { get; init; }

    /// <summary>Called by day, called by night, emergency.</summary>
    public required string DayPhone { get; init; }
    public required string OnCallPhone { get; init; }
    public required string EmergencyNumber { get; init; }

    /// <summary>One main message at the top, for example <c>Your nurse comes on Tuesday, 9 March, between 1:30 and 2:30 pm.</c></summary>
    public required string MainMessage { get; init; }

    /// <summary>Who does what, and on which day. Only tasks this caregiver is validated for are ticked as theirs.</summary>
    public required ImmutableArray<SheetTask> Tasks { get; init; }

    /// <summary>A line that must not be used, in plain words; empty when none.</summary>
    public ImmutableArray<string> Locks { get; init; } = [];

    /// <summary>Never-wait list: call the emergency number now when …</summary>
    public required ImmutableArray<string> NeverWait { get; init; }

    /// <summary>Call the agency at once, day or night, when … Not for the emergency number, and not for later today either.</summary>
    public ImmutableArray<string> CallNow { get; init; } = [];

    /// <summary>Call the day or night number the same day when …</summary>
    public required ImmutableArray<string> CallToday { get; init; }

    /// <summary>What good looks like.</summary>
    public required ImmutableArray<string> LooksGood { get; init; }

    /// <summary>Materials that must not be used, for example because of an allergy.</summary>
    public ImmutableArray<string> NotToUse { get; init; } = [];
    public bool IsDemo { get; init; }
}

/// <summary>One row of the task table.</summary>
/// <param name="Task">In plain words, for example <c>Change the dressing</c>.</param>
/// <param name="Whose">For example <c>Nurse</c> or <c>You (spouse)</c>.</param>
/// <param name="IsTheirs">Ticked as the caregiver's own.</param>
/// <param name="When">Weekday and date, never a bare interval, for example <c>by Wednesday, March 10</c>.</param>
public sealed record SheetTask(string Task, string Whose, bool IsTheirs, string When);
