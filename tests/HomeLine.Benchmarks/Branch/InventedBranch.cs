using System.Collections.Immutable;
using HomeLine.Agency.Roster;
using HomeLine.LineCare.Ledger;
using HomeLine.LineCare.Lines;
using HomeLine.LineCare.Orders;
using NodaTime;

namespace HomeLine.Benchmarks.Branch;

/// <summary>An invented agency of any size: every third patient has two lines, every line a weekly history of half a year.</summary>
internal static class InventedBranch
{
    public static readonly LocalDate Today = new(2027, 3, 8);
    private const string Zone = "America/New_York";
    private const int Weeks = 26;

    public static AgencyRoster Of(int lines)
    {
        var patients = ImmutableArray.CreateBuilder<Patient>();
        var devices = ImmutableArray.CreateBuilder<Line>();
        var events = ImmutableArray.CreateBuilder<LineEvent>();
        var orders = ImmutableArray.CreateBuilder<CareOrder>();
        while (devices.Count < lines)
        {
            int number = patients.Count + 1;
            Patient patient = PatientOf(number);
            patients.Add(patient);
            orders.Add(Labs(patient.Id));
            for (int which = 1; which <= (number % 3 == 0 ? 2 : 1) && devices.Count < lines; which++)
            {
                Line line = LineOf(patient.Id, number, which);
                devices.Add(line);
                events.AddRange(History(line, number + which));
            }
        }

        return new AgencyRoster
        {
            Profile = new AgencyProfile
            {
                Name = "Invented Branch",
                Branch = "Invented",
                ZoneId = Zone,
                IsDemo = true,
                FixedNow = (Today + new LocalTime(6, 0)).InZoneStrictly(DateTimeZoneProviders.Tzdb[Zone]).ToInstant(),
            },
            Map = new AgencyMap { BranchPlace = new MapPoint(24, 14), Roads = new RoadFactors(1.3, [new SpeedBand(double.MaxValue, 40)], 4) },
            Patients = patients.ToImmutable(),
            Lines = devices.ToImmutable(),
            Events = events.ToImmutable(),
            Orders = orders.ToImmutable(),
        };
    }

    private static Patient PatientOf(int number) => new()
    {
        Id = new PatientId($"P{number:0000}"),
        Name = $"Invented {number:0000} Person",
        BornOn = new LocalDate(1950 + number % 50, 1 + number % 12, 1 + number % 28),
        CareStartedOn = Today.PlusDays(-(number % 400)),
        Home = new MapPoint(number * 7 % 60, number * 11 % 44),
        State = "Marrow",
        ZoneId = Zone,
    };

    private static Line LineOf(PatientId patient, int number, int which)
    {
        LineKind kind = which == 2 ? LineKind.Port : (number % 4) switch { 0 => LineKind.Tunneled, 3 => LineKind.Midline, _ => LineKind.Picc };
        return new Line
        {
            Id = new LineId($"{patient}-{which}"),
            Patient = patient,
            Kind = kind,
            Lumens = kind is LineKind.Picc or LineKind.Tunneled && number % 2 == 0 ? [new Lumen("A"), new Lumen("B")] : [new Lumen("A")],
            Securement = kind == LineKind.Port ? SecurementKind.None : SecurementKind.Adhesive,
        };
    }

    private static CareOrder Labs(PatientId patient) => new()
    {
        Id = $"{patient}-labs",
        Patient = patient,
        Kind = OrderKind.Labs,
        Text = "weekly labs",
        StartsOn = Today.PlusDays(-180),
        EveryDays = 7,
    };

    private static IEnumerable<LineEvent> History(Line line, int phase)
    {
        for (int week = Weeks; week >= 1; week--)
        {
            LocalDate day = Today.PlusDays(-7 * week + phase % 7);
            Instant at = (day + new LocalTime(8 + phase % 8, 15)).InZoneLeniently(DateTimeZoneProviders.Tzdb[Zone]).ToInstant();
            var entry = new LineEvent
            {
                Id = new EventId($"{line.Id}-{week}"),
                Patient = line.Patient,
                Line = line.Id,
                Kind = LineEventKind.DressingChanged,
                Performed = CareMoment.Exactly(at, DateTimeZoneProviders.Tzdb[Zone]),
                RecordedAt = at + Duration.FromMinutes(20),
                PerformerName = "N1",
            };
            if (line.Kind == LineKind.Port)
            {
                if (week % 4 == 0) yield return entry with { Kind = LineEventKind.Flushed };
                continue;
            }

            yield return entry with
            {
                Dressing = DressingKind.Film,
                SecurementChanged = true,
                ConnectorsChanged = [.. line.Lumens.Select(lumen => lumen.Label)],
                LumensUsed = [.. line.Lumens.Select(lumen => lumen.Label)],
                OutsideLengthCm = 2,
            };
            yield return entry with { Id = new EventId($"{line.Id}-{week}-labs"), Kind = LineEventKind.LabsDrawn, LumensUsed = ["A"], Order = $"{line.Patient}-labs" };
        }
    }
}
