using System.Collections.Immutable;
using CsCheck;
using HomeLine.Agency.Roster;
using HomeLine.Agency.WeekPlanning;
using HomeLine.Exchange.Csv;
using HomeLine.LineCare;
using HomeLine.LineCare.Ledger;
using HomeLine.LineCare.Lines;
using HomeLine.LineCare.Orders;
using NodaTime;

namespace HomeLine.Exchange.Tests.Csv;

/// <summary>What is exported reads back equal, whatever the text holds (RFC 4180 quoting, formula guard of our own).</summary>
public class RoundTripTests
{
    private const long Runs = 60;
    private static readonly Instant AsOf = SeedFiles.Roster.Profile.FixedNow!.Value;

    [Fact]
    public void The_demonstration_agency_reads_back_equal()
    {
        RosterReading back = Back(SeedFiles.Roster, SeedFiles.Week);
        Assert.Empty(back.Problems);
        Assert.Equal(Portrait.Of(SeedFiles.Roster), Portrait.Of(back.Roster));
        Assert.Equal(Portrait.Of(SeedFiles.Week), Portrait.Of(back.Published));
    }

    [Fact]
    public void Any_text_in_a_patient_reads_back_equal() => AnyPatient.Sample(patient => Comes(SeedFiles.Roster with
    {
        Patients = SeedFiles.Roster.Patients.SetItem(0, patient),
    }), iter: Runs);

    [Fact]
    public void Any_entry_of_the_ledger_reads_back_equal() => AnyEvent.Sample(entry => Comes(SeedFiles.Roster with
    {
        Events = SeedFiles.Roster.Events.Add(entry),
    }), iter: Runs);

    [Fact]
    public void Any_order_reads_back_equal() => AnyOrder.Sample(order => Comes(SeedFiles.Roster with
    {
        Orders = SeedFiles.Roster.Orders.Add(order),
    }), iter: Runs);

    [Fact]
    public void Any_line_and_nurse_read_back_equal() => Gen.Select(AnyLine, AnyNurse).Sample((line, nurse) => Comes(SeedFiles.Roster with
    {
        Lines = SeedFiles.Roster.Lines.Add(line),
        Nurses = SeedFiles.Roster.Nurses.Add(nurse),
    }), iter: Runs);

    [Fact]
    public void Any_visit_of_the_week_reads_back_equal() => AnyVisit.Sample(visit =>
    {
        PlannedWeek week = SeedFiles.Week with { Visits = SeedFiles.Week.Visits.Add(visit) };
        RosterReading back = Back(SeedFiles.Roster, week);
        Assert.Empty(back.Problems);
        Assert.Equal(Portrait.Of(week), Portrait.Of(back.Published));
    }, iter: Runs);

    [Fact]
    public void An_hour_that_comes_twice_keeps_its_offset()
    {
        DateTimeZone zone = SeedFiles.Roster.Profile.Zone;
        Instant first = Instant.FromUtc(2026, 11, 1, 5, 30);
        foreach (Instant at in new[] { first, first + Duration.FromHours(1) })
            Comes(SeedFiles.Roster with { Events = SeedFiles.Roster.Events.Add(Call(at, CareMoment.Exactly(at, zone))) });
    }

    [Fact]
    public void Care_given_while_the_patient_stayed_in_another_zone_keeps_its_day_and_its_moment()
    {
        Instant at = Instant.FromUtc(2027, 3, 2, 4, 30);
        Comes(SeedFiles.Roster with { Events = SeedFiles.Roster.Events.Add(Call(at, new CareMoment(new LocalDate(2027, 3, 2), at))) });
    }

    [Fact]
    public void A_delivery_whose_time_is_not_known_reads_back_equal() => Comes(SeedFiles.Roster with
    {
        Orders = [.. SeedFiles.Roster.Orders.Select(o => o.Id == "P20-ig" ? o with { NotBefore = CareOrder.DeliveryNotKnown } : o)],
    });

    [Fact]
    public void Slow_hours_of_the_roads_read_back_equal() => Comes(SeedFiles.Roster with
    {
        Map = SeedFiles.Roster.Map with
        {
            Roads = SeedFiles.Roster.Map.Roads with
            {
                SlowTimes =
                [
                    new SlowTime([IsoDayOfWeek.Monday, IsoDayOfWeek.Friday], new LocalTime(7, 30), new LocalTime(9, 0), 60),
                    new SlowTime([IsoDayOfWeek.Friday], new LocalTime(15, 0), new LocalTime(17, 30), 45),
                ],
            },
        },
    });

    private static LineEvent Call(Instant recorded, CareMoment performed) => new()
    {
        Id = new EventId("Z"),
        Patient = new PatientId("P01"),
        Kind = LineEventKind.PhoneCall,
        RecordedAt = recorded,
        Performed = performed,
    };

    private static RosterReading Back(AgencyRoster roster, PlannedWeek? week) => RosterFolder.Read(RosterFolder.Write(roster, week, AsOf));

    private static void Comes(AgencyRoster roster)
    {
        RosterReading back = Back(roster, null);
        Assert.Empty(back.Problems);
        Assert.Equal(Portrait.Of(roster), Portrait.Of(back.Roster));
    }

    private static Gen<T?> Maybe<T>(Gen<T> gen) where T : struct => Gen.Select(Gen.Bool, gen).Select((there, value) => there ? value : (T?)null);

    private static Gen<ImmutableArray<T>> Some<T>(params T[] from) => Gen.OneOf(from).Array[0, from.Length].Select(all => all.Distinct().ToImmutableArray());

    private static readonly Gen<LocalDate> Past = Gen.Int[0, 300].Select(days => new LocalDate(2027, 3, 7).PlusDays(-days));

    private static readonly Gen<LocalTime> Clock = Gen.Int[0, 1_439].Select(minute => LocalTime.Midnight.PlusMinutes(minute));

    private static readonly Gen<decimal> Length = Gen.Int[0, 600].Select(tenths => tenths / 10m);

    private static readonly Gen<MapPoint> Place = Gen.Select(Gen.Int[1, 600], Gen.Int[1, 440]).Select((x, y) => new MapPoint(x / 10.0, y / 10.0));

    private static readonly Gen<Patient> AnyPatient = Gen.Select(
        NastyText.NotBlank, NastyText.Any, Maybe(Past), Place, Gen.Int[0, 63], Some("female", "language:es"), Gen.Int[1, 2], Gen.Select(Clock, Clock),
        (name, text, born, place, risks, traits, crew, hours) => SeedFiles.Roster.Patients[0] with
        {
            Name = name,
            Therapy = text,
            Address = text,
            Phone = text,
            AccessNotes = text,
            Contact = text,
            Practitioner = text,
            Note = text,
            BornOn = born is { } day ? LocalDate.Min(day, SeedFiles.Roster.Patients[0].CareStartedOn) : null,
            Home = place,
            Risks = (RiskFactors)risks,
            RequiredTraits = traits,
            RefusedNurses = ["N3"],
            CrewSize = crew,
            AccessTimes = [new AccessTime([IsoDayOfWeek.Tuesday, IsoDayOfWeek.Sunday], LocalTime.Min(hours.Item1, hours.Item2), LocalTime.Max(hours.Item1, hours.Item2))],
        });

    private static readonly Gen<LineEvent> AnyEvent = Gen.Select(
        Gen.OneOf(Enum.GetValues<LineEventKind>()), Past, Maybe(Clock), NastyText.Any, Gen.OneOf(Enum.GetValues<Certainty>()), Maybe(Length),
        Gen.Int[0, 127], Some("A", "B"),
        (kind, day, time, text, certainty, length, seal, lumens) => new LineEvent
        {
            Id = new EventId("=Z1"),
            Patient = new PatientId("P03"),
            Line = new LineId("P03-1"),
            Kind = kind,
            Performed = Done(LocalDate.Max(day, new LocalDate(2027, 2, 10)), time),
            RecordedAt = Instant.FromUtc(2027, 3, 8, 9, 0),
            Performer = PerformerKind.Outside,
            PerformerName = text,
            RecordedBy = text,
            Certainty = certainty,
            Dressing = DressingKind.GauzeUnderFilm,
            SecurementChanged = true,
            ConnectorsChanged = lumens,
            LumensUsed = lumens,
            OutsideLengthCm = length,
            ArmGirthCm = length,
            Seal = (SealFinding)seal,
            Order = "P03-labs",
            Voids = new EventId("P03-E1"),
            Note = text,
        });

    private static CareMoment Done(LocalDate day, LocalTime? time) => time is { } clock
        ? CareMoment.Exactly((day + clock).InZoneLeniently(SeedFiles.Roster.Profile.Zone).ToInstant(), SeedFiles.Roster.Profile.Zone)
        : CareMoment.SometimeOn(day);

    private static readonly Gen<CareOrder> AnyOrder = Gen.Select(
        NastyText.Any, Maybe(Gen.Int[1, 365]), Some(IsoDayOfWeek.Monday, IsoDayOfWeek.Sunday), Maybe(Gen.Int[0, 720]), Clock, Gen.Int[0, 5], Gen.Bool,
        (text, days, weekdays, minutes, clock, used, yes) => new CareOrder
        {
            Id = "-Z1",
            Patient = new PatientId("P03"),
            Line = new LineId("P03-1"),
            Kind = OrderKind.Labs,
            StartsOn = new LocalDate(2027, 2, 8),
            EndsOn = yes ? new LocalDate(2027, 4, 8) : null,
            Practitioner = text,
            Text = text,
            Item = CareItem.OutsideLength,
            EveryDays = days,
            Confirmed = yes,
            Weekdays = weekdays,
            Dates = [new LocalDate(2027, 3, 9), new LocalDate(2027, 3, 11)],
            StartFrom = clock,
            StartTo = clock,
            DoseTimes = [clock, LocalTime.Noon],
            VisitsPerWeek = days is null ? null : 3,
            AsNeededVisits = 5,
            AsNeededUsed = used,
            Skills = ["LAB", "FD"],
            SetupMinutes = minutes,
            WorkMinutes = minutes,
            NotBefore = new LocalDate(2027, 3, 9) + clock,
            NeedsCourier = yes,
        });

    private static readonly Gen<Line> AnyLine = Gen.Select(
        NastyText.Any, Gen.OneOf(Enum.GetValues<LineKind>()), Maybe(Past), Maybe(Length), Gen.OneOf(Enum.GetValues<SecurementKind>()), Gen.Bool,
        (text, kind, day, length, securement, yes) => new Line
        {
            Id = new LineId("@Z1"),
            Patient = new PatientId("P53"),
            Kind = kind,
            Lumens = [new Lumen("A"), new Lumen("B", yes)],
            Site = text,
            InsertedOn = day,
            TipConfirmed = yes,
            InsertedLengthCm = length,
            OutsideLengthCm = length,
            Securement = securement,
            ExitSiteHealed = yes && kind == LineKind.Tunneled,
            DressingMinutes = yes ? 10 : null,
        });

    private static readonly Gen<NurseFile> AnyNurse = Gen.Select(
        NastyText.NotBlank, NastyText.Any, Place, Gen.Select(Clock, Clock), Gen.Int[0, 600], Gen.Bool,
        (name, text, place, hours, minutes, yes) => new NurseFile
        {
            Id = "+Z1",
            Name = name,
            Credential = yes ? "RN" : "LPN",
            Home = place,
            Phone = text,
            Skills = ["PICC", "=X"],
            Licences = [new StateLicence("Marrow", yes ? new LocalDate(2027, 12, 31) : null), new StateLicence("Westling", null)],
            Traits = ["female"],
            Week = hours.Item1 == hours.Item2 ? []
                : [new WorkingTime(IsoDayOfWeek.Friday, LocalTime.Min(hours.Item1, hours.Item2), LocalTime.Max(hours.Item1, hours.Item2), yes)],
            Leaves = [new Leave(new LocalDate(2027, 3, 9), new LocalDate(2027, 3, 9), text)],
            LunchMinutes = minutes,
            OvertimeMinutes = minutes,
            MaxVisitsADay = 1 + (minutes % 30),
            VisitCaps = yes ? [new KindCap("PICC", minutes % 100, true), new KindCap(KindCap.Heavy, 0)] : [],
            Note = text,
        });

    private static readonly Gen<WeekVisit> AnyVisit = Gen.Select(NastyText.NotBlank, Clock, Gen.Bool, (text, clock, yes) => new WeekVisit
    {
        Id = "=Z1",
        Patient = new PatientId("P03"),
        Nurse = "N1",
        Second = yes ? "N6" : null,
        Day = new LocalDate(2027, 3, 10),
        Start = clock,
        Minutes = 45,
        Care = [new VisitCare("P03|Connector|P03-1|AB|", "connector A, B, PICC"), new VisitCare("P03|Labs|||P03-labs", "weekly labs")],
        Promise = yes ? Planning.Plans.PromiseState.Told : Planning.Plans.PromiseState.Draft,
        ToldFrom = yes ? clock : null,
        Held = yes ? text : null,
    });
}
