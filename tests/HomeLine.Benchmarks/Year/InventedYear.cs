using System.Collections.Immutable;
using HomeLine.Agency.Roster;
using HomeLine.Benchmarks.Weeks;
using HomeLine.LineCare;
using HomeLine.LineCare.Ledger;
using HomeLine.LineCare.Lines;
using HomeLine.LineCare.Orders;
using NodaTime;
using RosterPoint = HomeLine.Agency.Roster.MapPoint;

namespace HomeLine.Benchmarks.Year;

/// <summary>A person in the invented year: who, from when to when, and everything that is known of the line when care starts.</summary>
internal sealed record YearPatient(Patient Patient, Line Line, LocalDate From, LocalDate Through, ImmutableArray<LineEvent> Events, ImmutableArray<CareOrder> Orders)
{
    public ImmutableArray<CaregiverValidation> Caregivers => [new(Patient.Id, "self", CareItem.Set, Through), new(Patient.Id, "self", CareItem.LumenFlush, Through)];
}

/// <summary>
/// A year of an invented agency, drawn once: who is referred when and for how long, whose dressing lifts, who is not at home, which nurse calls out, when it
/// snows. Whoever plans it meets the same year. The shares are our own choice, beside each figure.
/// </summary>
internal sealed class InventedYear
{
    /// <summary>Of a hundred dressings that lie a week, eight lift early: our own choice, there is no figure for care at home.</summary>
    private const double LiftsADay = 0.08 / 7;
    private const double NobodyHomeADay = 0.01;
    private const double CallsOutADay = 0.02;
    private const double SnowADay = 0.06;

    private readonly int _seed;
    private readonly AgencyRoster _agency;

    public InventedYear(AgencyRoster agency, int patients, int weeks, int seed)
    {
        (_agency, _seed, First) = (agency, seed, new LocalDate(2026, 9, 7));
        Last = First.PlusWeeks(weeks).PlusDays(-1);
        var draw = new Draw(seed);
        var people = ImmutableArray.CreateBuilder<YearPatient>();
        for (int i = 0; i < patients; i++) people.Add(Person(people.Count + 1, draw, First.PlusDays(-draw.Below(30)), isOld: true));
        for (LocalDate day = First.PlusDays(1); day <= Last; day = day.PlusDays(1))
        {
            // A referral for everybody who left, on weekdays, so that the number of patients stays about the same.
            int missing = patients - people.Count(p => p.From <= day && p.Through > day);
            for (int i = 0; i < missing && day.DayOfWeek is not (IsoDayOfWeek.Saturday or IsoDayOfWeek.Sunday); i++) people.Add(Person(people.Count + 1, draw, day, isOld: false));
        }

        People = people.ToImmutable();
    }

    public LocalDate First { get; }
    public LocalDate Last { get; }
    public ImmutableArray<YearPatient> People { get; }

    /// <summary>When the dressing lifts on a day; empty when it does not.</summary>
    public LocalTime? LiftsAt(PatientId patient, LocalDate day)
    {
        Draw draw = For(patient.Value, day, 1);
        return draw.Fraction() < LiftsADay ? new LocalTime(7 + draw.Below(11), draw.Below(60)) : null;
    }

    public bool IsNobodyHome(PatientId patient, LocalDate day) => For(patient.Value, day, 2).Fraction() < NobodyHomeADay;

    /// <summary>How long a visit really takes: 0.8 to 1.3 of its planned minutes.</summary>
    public double Stretch(PatientId patient, LocalDate day) => 0.8 + 0.5 * For(patient.Value, day, 3).Fraction();

    /// <summary>A nurse who calls out is away for one to three days.</summary>
    public bool IsOut(string nurse, LocalDate day) => Enumerable.Range(0, 3).Any(back => CallsOut(nurse, day.PlusDays(-back)) > back);

    /// <summary>In the cold months the pass is closed for the whole day now and then.</summary>
    public bool Snows(LocalDate day) => day.Month is 12 or 1 or 2 or 3 && For("snow", day, 4).Fraction() < SnowADay;

    private int CallsOut(string nurse, LocalDate day)
    {
        Draw draw = For(nurse, day, 5);
        return draw.Fraction() < CallsOutADay ? 1 + draw.Below(3) : 0;
    }

    private Draw For(string who, LocalDate day, int what)
    {
        int hash = _seed;
        foreach (char letter in who) hash = unchecked((hash * 31) + letter);
        var draw = new Draw(unchecked((hash * 397) ^ (Period.DaysBetween(First, day) * 16 + what)));
        draw.Below(7);
        return draw;
    }

    private YearPatient Person(int number, Draw draw, LocalDate from, bool isOld)
    {
        var id = new PatientId($"Y{number:0000}");
        var lineId = new LineId($"{id}-1");
        int kind = draw.Below(100);
        LineKind line = kind < 70 ? LineKind.Picc : kind < 88 ? LineKind.Tunneled : LineKind.Port;
        // Antibiotic courses of two to six weeks; nutrition and idle ports for most of a year.
        int days = line == LineKind.Picc ? 14 + draw.Below(29) : 120 + draw.Below(240);
        LocalDate through = from.PlusDays(isOld && line == LineKind.Picc ? Math.Max(8, days) : days);
        bool nutrition = line == LineKind.Tunneled;
        Town town = _agency.Map.Towns[Weighted(draw, _agency.Map.Towns.Length)];
        var patient = new Patient
        {
            Id = id,
            Name = $"Invented {number:0000}",
            BornOn = new LocalDate(1935 + draw.Below(70), 1 + draw.Below(12), 1 + draw.Below(28)),
            CareStartedOn = from,
            Home = new RosterPoint(Math.Round(town.At.X - 2 + 4 * draw.Fraction(), 1), Math.Round(town.At.Y - 2 + 4 * draw.Fraction(), 1)),
            State = town.State,
            ZoneId = _agency.Profile.ZoneId,
            Risks = nutrition ? RiskFactors.ParenteralNutrition : RiskFactors.None,
            NeedsSkills = nutrition ? ["PN"] : [],
            Phone = "555-0100",
        };
        var device = new Line { Id = lineId, Patient = id, Kind = line, Lumens = [new Lumen("A")], InsertedOn = from.PlusDays(-1), TipConfirmed = true, Securement = line == LineKind.Picc ? SecurementKind.Adhesive : SecurementKind.None };
        LocalDate last = isOld ? First.PlusDays(-1 - draw.Below(line == LineKind.Port ? 24 : 6)) : from.PlusDays(-1);
        return new YearPatient(patient, device, from, through, Before(patient, device, last, isOld, draw), Orders(patient, device, from, through, isOld, nutrition));
    }

    /// <summary>Most people live in the first towns of the list.</summary>
    private static int Weighted(Draw draw, int towns) => Math.Min(towns - 1, (int)(towns * draw.Fraction() * draw.Fraction()));

    private static ImmutableArray<LineEvent> Before(Patient patient, Line line, LocalDate last, bool isOld, Draw draw)
    {
        LineEvent Entry(LineEventKind kind) => new()
        {
            Id = new EventId($"{patient.Id}-0{kind}"),
            Patient = patient.Id,
            Line = line.Id,
            Kind = kind,
            Performed = CareMoment.Exactly(last.At(new LocalTime(14, 0)).InZoneLeniently(patient.Zone).ToInstant(), patient.Zone),
            RecordedAt = last.At(new LocalTime(15, 0)).InZoneLeniently(patient.Zone).ToInstant(),
            Performer = isOld ? PerformerKind.Nurse : PerformerKind.Outside,
        };
        if (line.Kind == LineKind.Port) return [Entry(LineEventKind.Flushed) with { LumensUsed = ["A"] }];
        DressingKind dressing = !isOld && draw.Percent(30) ? DressingKind.GauzeUnderFilm : DressingKind.Film;
        return [Entry(isOld ? LineEventKind.DressingChanged : LineEventKind.Inserted) with { Dressing = dressing, SecurementChanged = true, ConnectorsChanged = ["A"] }];
    }

    private static ImmutableArray<CareOrder> Orders(Patient patient, Line line, LocalDate from, LocalDate through, bool isOld, bool nutrition)
    {
        CareOrder Order(string what, OrderKind kind) => new() { Id = $"{patient.Id}-{what}", Patient = patient.Id, Line = line.Id, Kind = kind, StartsOn = from, EndsOn = through };
        var orders = ImmutableArray.CreateBuilder<CareOrder>();
        orders.Add(Order("visits", OrderKind.VisitFrequency) with { VisitsPerWeek = 2, AsNeededVisits = 60, Text = "visits" });
        if (line.Kind != LineKind.Port) orders.Add(Order("labs", OrderKind.Labs) with { EveryDays = 7, Skills = ["LAB"], Text = "weekly labs" });
        // The first visit is ordered for the day after the referral.
        if (!isOld) orders.Add(Order("start", OrderKind.Teaching) with { Dates = [from.PlusDays(1)], Skills = ["SOC"], WorkMinutes = 75, Text = "start of care" });
        if (!nutrition && line.Kind == LineKind.Picc) orders.Add(Order("removal", OrderKind.Removal) with { Dates = [through], Skills = ["REM"], Text = "line removal" });
        return orders.ToImmutable();
    }
}
