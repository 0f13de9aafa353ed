using System.Collections.Immutable;
using HomeLine.LineCare.Lines;
using HomeLine.LineCare.Scope;
using NodaTime;

namespace HomeLine.LineCare.Orders;

/// <summary>What an order asks for.</summary>
public enum OrderKind
{
    /// <summary>The plan of care: how many nurse visits a week, how many as-needed visits.</summary>
    VisitFrequency,

    /// <summary>An interval for one care item that differs from policy.</summary>
    Interval,

    /// <summary>A laboratory draw.</summary>
    Labs,

    /// <summary>A drug level, drawn shortly before a dose.</summary>
    DrugLevel,

    /// <summary>A dose given by the nurse.</summary>
    NurseDose,

    /// <summary>A long infusion with the nurse staying (immunoglobulin).</summary>
    LongInfusion,

    /// <summary>Hydration run by the nurse.</summary>
    Hydration,

    /// <summary>A teaching session.</summary>
    Teaching,

    /// <summary>Removal of the line.</summary>
    Removal,
}

/// <summary>A prescriber's order. Valid from <see cref="StartsOn"/> to <see cref="EndsOn"/>, both days included.</summary>
public sealed record CareOrder
{
    /// <summary>The order's identifier, unique in the agency.</summary>
    public required string Id { get; init; }

    /// <summary>For whom.</summary>
    public required PatientId Patient { get; init; }

    /// <summary>On which line, where it matters.</summary>
    public LineId? Line { get; init; }

    /// <summary>What it asks for.</summary>
    public required OrderKind Kind { get; init; }

    /// <summary>First valid day.</summary>
    public required LocalDate StartsOn { get; init; }

    /// <summary>Last valid day, included; empty for open-ended.</summary>
    public LocalDate? EndsOn { get; init; }

    /// <summary>Who ordered.</summary>
    public string Practitioner { get; init; } = "";

    /// <summary>Short text as the nurse reads it, for example <c>vancomycin trough</c>.</summary>
    public string Text { get; init; } = "";

    /// <summary>For <see cref="OrderKind.Interval"/>: the item.</summary>
    public CareItem? Item { get; init; }

    /// <summary>Interval in days: for <see cref="OrderKind.Interval"/>, and for labs and services that repeat. 1 to 365.</summary>
    public int? EveryDays { get; init; }

    /// <summary>A clinical manager confirmed an interval looser than policy with the prescriber.</summary>
    public bool Confirmed { get; init; }

    /// <summary>Weekdays on which it is wanted; empty for any day.</summary>
    public ImmutableArray<IsoDayOfWeek> Weekdays { get; init; } = [];

    /// <summary>Single dates on which it is wanted; empty when it repeats by weekday or interval.</summary>
    public ImmutableArray<LocalDate> Dates { get; init; } = [];

    /// <summary>Earliest start of the visit on the day, local time at the patient's place.</summary>
    public LocalTime? StartFrom { get; init; }

    /// <summary>Latest start of the visit on the day, local time at the patient's place.</summary>
    public LocalTime? StartTo { get; init; }

    /// <summary>Dose times at the patient's place, for drug levels: a level is drawn before one of them.</summary>
    public ImmutableArray<LocalTime> DoseTimes { get; init; } = [];

    /// <summary>Nurse visits a week the order allows (calendar week by agency policy).</summary>
    public int? VisitsPerWeek { get; init; }

    /// <summary>As-needed visits ordered.</summary>
    public int? AsNeededVisits { get; init; }

    /// <summary>As-needed visits already used.</summary>
    public int AsNeededUsed { get; init; }

    /// <summary>Skills the nurse must have, in the agency's skill words (<c>PORT</c>, <c>FD</c> …).</summary>
    public ImmutableArray<string> Skills { get; init; } = [];

    /// <summary>Minutes of getting ready that another item in the same visit can share; empty for policy.</summary>
    public int? SetupMinutes { get; init; }

    /// <summary>Minutes of the item itself; empty for policy.</summary>
    public int? WorkMinutes { get; init; }

    /// <summary>Stands in <see cref="NotBefore"/> while a delivery is awaited and its time is not known: nothing may start before it is.</summary>
    public static readonly LocalDateTime DeliveryNotKnown = new(9999, 12, 31, 0, 0);

    /// <summary>
    /// The drug or kit is in the home from this local moment; nothing may start before. Empty when it needs no delivery; <see cref="DeliveryNotKnown"/> when it does and
    /// nobody knows yet when it comes.
    /// </summary>
    public LocalDateTime? NotBefore { get; init; }

    /// <summary>A delivery is awaited and its time is not known.</summary>
    public bool AwaitsDelivery => NotBefore == DeliveryNotKnown;

    /// <summary>The specimen must reach the courier the same day.</summary>
    public bool NeedsCourier { get; init; }

    /// <summary>What is known before the first dose of a drug; empty when this is no first dose.</summary>
    public FirstDoseFacts? FirstDose { get; init; }

    /// <summary>Whether the order is valid on a day.</summary>
    public bool IsActiveOn(LocalDate day) => day >= StartsOn && (EndsOn is not { } last || day <= last);
}
