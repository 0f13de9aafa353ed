using System.Collections.Immutable;
using HomeLine.LineCare.Ledger;
using HomeLine.LineCare.Lines;
using HomeLine.LineCare.Orders;
using HomeLine.LineCare.Policy;
using HomeLine.LineCare.Windows;
using NodaTime;

namespace HomeLine.LineCare.Tests;

/// <summary>A patient at home, told in the order a test tells it.</summary>
internal sealed record Given
{
    public static readonly DateTimeZone Zone = DateTimeZoneProviders.Tzdb["America/New_York"];
    public static readonly PatientId Patient = new("P1");
    public static readonly LineId First = new("P1-1");

    public PatientCare Care { get; init; } = new()
    {
        Patient = Patient,
        Zone = Zone,
        CareStartedOn = new LocalDate(2027, 2, 8),
        BornOn = new LocalDate(1969, 5, 1),
        Lines = [],
        Events = [],
    };

    public PolicyBook Policy { get; init; } = PolicyBook.Default;

    public static Given Picc(int lumens = 1, SecurementKind securement = SecurementKind.Adhesive) =>
        new Given().Line(LineKind.Picc, lumens, securement: securement);

    public static Given Port() => new Given().Line(LineKind.Port, 1, securement: SecurementKind.None);

    public static LocalDate Mar(int day) => new(2027, 3, day);

    public static Instant At(LocalDate day, int hour, int minute = 0) =>
        day.At(new LocalTime(hour, minute)).InZoneLeniently(Zone).ToInstant();

    public static Instant Start(LocalDate day) => Zone.AtStartOfDay(day).ToInstant();

    public Given Line(LineKind kind, int lumens, string id = "P1-1", SecurementKind securement = SecurementKind.Adhesive,
        Func<Line, Line>? but = null)
    {
        var line = new Line
        {
            Id = new LineId(id),
            Patient = Patient,
            Kind = kind,
            Lumens = [.. Enumerable.Range(0, lumens).Select(i => new Lumen(((char)('A' + i)).ToString()))],
            Securement = securement,
        };
        return this with { Care = Care with { Lines = Care.Lines.Add(but is null ? line : but(line)) } };
    }

    public Given But(Func<PatientCare, PatientCare> change) => this with { Care = change(Care) };

    public Given Under(Func<PolicyBook, PolicyBook> change) => this with { Policy = change(Policy) };

    public Given AgencyRule(string id, decimal value, string unit, LocalDate from) => Under(book => book.With(
        new PolicyRule(id, value, unit, from, PolicyLevel.Agency, RuleStanding.OwnDefault, "Agency policy, clinical lead")));

    public Given Event(LineEventKind kind, CareMoment? performed, Func<LineEvent, LineEvent>? but = null)
    {
        var number = Care.Events.Length + 1;
        var entry = new LineEvent
        {
            Id = new EventId($"E{number}"),
            Patient = Patient,
            Line = First,
            Kind = kind,
            Performed = performed,
            RecordedAt = performed?.At ?? Start(performed?.Date ?? Mar(1)),
        };
        return this with { Care = Care with { Events = Care.Events.Add(but is null ? entry : but(entry)) } };
    }

    public Given Event(LineEventKind kind, LocalDate day, int hour = 10, int minute = 0, Func<LineEvent, LineEvent>? but = null) =>
        Event(kind, CareMoment.Exactly(At(day, hour, minute), Zone), but);

    public Given Dressing(LocalDate day, int hour = 10, int minute = 0, DressingKind kind = DressingKind.Film, string line = "P1-1") =>
        Event(LineEventKind.DressingChanged, day, hour, minute, e => e with { Dressing = kind, Line = new LineId(line) });

    public Given Connector(string lumen, LocalDate day, int hour = 14, string line = "P1-1") =>
        Event(LineEventKind.ConnectorChanged, day, hour, 0, e => e with { ConnectorsChanged = [lumen], Line = new LineId(line) });

    public Given Seal(SealFinding finding, LocalDate day, int hour, int minute = 0, string line = "P1-1") =>
        Event(LineEventKind.SealReported, day, hour, minute, e => e with { Seal = finding, Line = new LineId(line) });

    public Given Infusion(InfusionKind kind, PerformerKind setBy, string lumen = "A", bool never = false) => But(care => care with
    {
        Infusions = care.Infusions.Add(new Infusion(Patient, First, lumen, kind, "therapy", setBy, never)),
    });

    public Given Validated(CareItem item, LocalDate through, string person = "spouse") => But(care => care with
    {
        Caregivers = care.Caregivers.Add(new CaregiverValidation(Patient, person, item, through)),
    });

    public Given Order(CareOrder order) => But(care => care with { Orders = care.Orders.Add(order) });

    public static CareOrder AnOrder(OrderKind kind, string id = "O1") => new()
    {
        Id = id,
        Patient = Patient,
        Kind = kind,
        StartsOn = new LocalDate(2027, 2, 8),
        EndsOn = new LocalDate(2027, 4, 8),
        Practitioner = "Practitioner A",
    };

    public CareAnswer AnswerAt(LocalDate day, int hour = 6, int minute = 0) => WhatIsDue.For(Care, Policy, At(day, hour, minute));

    public DueWindow Window(CareItem item, LocalDate now, int hour = 6, string? lumen = null, string line = "P1-1", int minute = 0) =>
        AnswerAt(now, hour, minute).Windows.Single(w => w.Item == item && (w.Line is null || w.Line.Value.Value == line) && (lumen is null || w.Lumen == lumen));

    public ImmutableArray<DueWindow> Windows(CareItem item, LocalDate now, int hour = 6) =>
        [.. AnswerAt(now, hour).Windows.Where(w => w.Item == item)];
}
