using System.Collections.Immutable;
using HomeLine.LineCare;
using HomeLine.LineCare.Ledger;
using HomeLine.LineCare.Lines;
using HomeLine.LineCare.Orders;
using HomeLine.LineCare.Policy;
using NodaTime;

namespace HomeLine.Benchmarks.Clocks;

/// <summary>Patients with one line each and two years of care, invented from a seed. Entries are shared between patients to keep memory
/// small; every patient has a file and a reading of the ledger of their own.</summary>
internal sealed class InventedLines
{
    private static readonly LocalDate Today = new(2027, 3, 8);
    private static readonly PatientId Patient = new("P");
    private static readonly LineId Id = new("L");

    private static readonly DateTimeZone[] Zones =
        [.. new[] { "America/New_York", "America/Chicago", "America/Denver", "America/Phoenix" }.Select(id => DateTimeZoneProviders.Tzdb[id])];

    /// <summary>The shipped policy with three rules of an agency, one of them new this week.</summary>
    public static PolicyBook Policy { get; } = PolicyBook.Default.With(
        Agency("dressing.film.min", 6, "days", new LocalDate(2026, 1, 1)),
        Agency("port.flush.max", 42, "days", new LocalDate(2026, 6, 1)),
        Agency("connector.intermittent.max", 6, "days", new LocalDate(2027, 3, 5)));

    public static Instant Now { get; } = Today.At(new LocalTime(6, 30)).InZoneLeniently(Zones[0]).ToInstant();

    /// <summary>Invents patients.</summary>
    /// <param name="count">How many.</param>
    /// <param name="histories">How many different ledgers there are among them.</param>
    /// <param name="seed">Same seed, same patients.</param>
    public static PatientCare[] Invent(int count, int histories, int seed)
    {
        var dice = new Random(seed);
        var prototypes = new PatientCare[histories];
        for (var i = 0; i < histories; i++) prototypes[i] = Prototype(dice, Zones[i % Zones.Length]);
        var patients = new PatientCare[count];
        for (var i = 0; i < count; i++)
        {
            var like = prototypes[i % histories];
            patients[i] = like with { Events = like.Events, CareStartedOn = like.CareStartedOn.PlusDays(-(i % 60)) };
        }

        return patients;
    }

    /// <summary>A full dressing change this morning, as a nurse would record it.</summary>
    public static LineEvent ThisMorning(PatientCare care) => new()
    {
        Id = new EventId("now"),
        Patient = care.Patient,
        Line = Id,
        Kind = care.Lines[0].Kind == LineKind.Port ? LineEventKind.Flushed : LineEventKind.DressingChanged,
        Performed = CareMoment.Exactly(Now, care.Zone),
        RecordedAt = Now,
        Dressing = DressingKind.Film,
        ConnectorsChanged = ["A"],
        LumensUsed = ["A"],
    };

    private static PolicyRule Agency(string id, decimal value, string unit, LocalDate from) =>
        new(id, value, unit, from, PolicyLevel.Agency, RuleStanding.OwnDefault, "Agency policy, clinical lead");

    private static PatientCare Prototype(Random dice, DateTimeZone zone)
    {
        var kind = dice.Next(10) switch { < 6 => LineKind.Picc, 6 => LineKind.Midline, 7 => LineKind.Tunneled, _ => LineKind.Port };
        var care = new PatientCare
        {
            Patient = Patient,
            Zone = zone,
            CareStartedOn = Today.PlusDays(-730),
            BornOn = new LocalDate(1930 + dice.Next(80), 1 + dice.Next(12), 3),
            Lines = [LineOf(kind, dice)],
            Events = [],
        };
        care = care with { Events = Ledger(care, dice) };
        if (kind != LineKind.Port && dice.Next(3) == 0)
            care = care with { Infusions = [new Infusion(Patient, Id, "A", InfusionKind.Intermittent, "antibiotic", PerformerKind.Caregiver)] };
        if (dice.Next(2) == 0) care = care with { Orders = care.Orders.Add(Order("labs", OrderKind.Labs, 7)) };
        if (dice.Next(20) == 0) care = care with { Orders = care.Orders.Add(Order("strict", OrderKind.Interval, 5) with { Item = CareItem.Dressing }) };
        if (dice.Next(20) == 0)
            care = care with { Exceptions = [new CareException(Patient, "dressing.film.max", 10, "Clinical manager", Today.PlusDays(30), "skin")] };
        if (dice.Next(3) == 0)
            care = care with { Caregivers = [new CaregiverValidation(Patient, "spouse", CareItem.LumenFlush, Today.PlusDays(40)), new CaregiverValidation(Patient, "spouse", CareItem.Set, Today.PlusDays(40))] };
        return care;
    }

    private static Line LineOf(LineKind kind, Random dice) => new()
    {
        Id = Id,
        Patient = Patient,
        Kind = kind,
        Lumens = [.. Enumerable.Range(0, kind == LineKind.Port ? 1 : 1 + dice.Next(2)).Select(i => new Lumen(i == 0 ? "A" : "B"))],
        Securement = kind == LineKind.Port ? SecurementKind.None : dice.Next(3) == 0 ? SecurementKind.SubcutaneousAnchor : SecurementKind.Adhesive,
        InsertedOn = Today.PlusDays(-730),
        OutsideLengthCm = 2,
    };

    private static CareOrder Order(string id, OrderKind kind, int every) => new()
    {
        Id = id,
        Patient = Patient,
        Kind = kind,
        EveryDays = every,
        StartsOn = Today.PlusDays(-30),
        EndsOn = Today.PlusDays(30),
        Practitioner = "Practitioner A",
    };

    /// <summary>A weekly bundle, a draw between, a flush every second day or so; now and then a broken seal, a call, a stay in hospital.</summary>
    private static ImmutableArray<LineEvent> Ledger(PatientCare care, Random dice)
    {
        var entries = ImmutableArray.CreateBuilder<LineEvent>();
        void Add(LineEventKind kind, LocalDate day, Func<LineEvent, LineEvent>? but = null)
        {
            var at = day.At(new LocalTime(8 + dice.Next(10), dice.Next(60))).InZoneLeniently(care.Zone).ToInstant();
            var entry = new LineEvent
            {
                Id = new EventId($"E{entries.Count}"),
                Patient = Patient,
                Line = kind is LineEventKind.AdmittedToHospital or LineEventKind.ReturnedHome or LineEventKind.Recertified ? null : Id,
                Kind = kind,
                Performed = CareMoment.Exactly(at, care.Zone),
                RecordedAt = at + Duration.FromMinutes(dice.Next(300)),
            };
            entries.Add(but is null ? entry : but(entry));
        }

        string[] letters = [.. care.Lines[0].Lumens.Select(lumen => lumen.Label)];
        var port = care.Lines[0].Kind == LineKind.Port;
        var covering = dice.Next(10) == 0 ? DressingKind.Gauze : DressingKind.Film;
        if (!port) Add(LineEventKind.Inserted, Today.PlusDays(-730), e => e with { Dressing = DressingKind.GauzeUnderFilm, OutsideLengthCm = 2, LumensUsed = [.. letters] });
        for (var day = Today.PlusDays(-728); day < Today; day = day.PlusDays(port ? 28 : 6 + dice.Next(2)))
        {
            if (port) Add(dice.Next(4) == 0 ? LineEventKind.PortAccessed : LineEventKind.Flushed, day);
            else Add(LineEventKind.DressingChanged, day, e => e with { Dressing = covering, ConnectorsChanged = [.. letters], LumensUsed = [.. letters], OutsideLengthCm = 2 });
            if (port) Add(LineEventKind.PortDeaccessed, day.PlusDays(1) < Today ? day.PlusDays(1) : day);
            if (day.PlusDays(2) < Today) Add(LineEventKind.LabsDrawn, day.PlusDays(2), e => e with { Order = "labs" });
            if (day.PlusDays(3) < Today) Add(LineEventKind.Flushed, day.PlusDays(3), e => e with { LumensUsed = [.. letters] });
            if (dice.Next(12) == 0 && day.PlusDays(4) < Today) Add(LineEventKind.SealReported, day.PlusDays(4), e => e with { Seal = SealFinding.EdgeLifted });
            if (dice.Next(12) == 0) Add(LineEventKind.PhoneCall, day);
            if (dice.Next(60) != 0 || day.PlusDays(5) >= Today) continue;
            Add(LineEventKind.AdmittedToHospital, day.PlusDays(3));
            Add(LineEventKind.ReturnedHome, day.PlusDays(5));
            Add(LineEventKind.Recertified, day.PlusDays(6) < Today ? day.PlusDays(6) : day.PlusDays(5));
        }

        return entries.ToImmutable();
    }
}
