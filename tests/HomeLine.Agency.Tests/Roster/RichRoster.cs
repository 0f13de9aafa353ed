using HomeLine.Agency.Roster;
using HomeLine.LineCare;
using HomeLine.LineCare.Ledger;
using HomeLine.LineCare.Lines;
using HomeLine.LineCare.Orders;
using HomeLine.LineCare.Policy;
using HomeLine.LineCare.Travel;
using NodaTime;
using OutsideCare = HomeLine.Agency.Roster.OutsideCare;

namespace HomeLine.Agency.Tests.Roster;

/// <summary>A small invented agency in which every field that can be filled is filled once and left empty once.</summary>
public static class RichRoster
{
    public static readonly PatientId Ann = new("P01");
    public static readonly PatientId Bob = new("P10");
    public static readonly LineId AnnsPicc = new("P01-1");
    public static readonly LineId BobsPort = new("P10-1");

    public static AgencyRoster Make() => new()
    {
        Profile = new AgencyProfile
        {
            Name = "Invented Home Infusion",
            Branch = "Dunmallow",
            ZoneId = "America/New_York",
            DayPhone = "555-0100",
            OnCallPhone = "555-0101",
            CompactStates = ["Marrow", "Westling"],
            IsDemo = true,
            FixedNow = Instant.FromUtc(2027, 3, 8, 11, 0),
        },
        Map = new AgencyMap
        {
            BranchPlace = new MapPoint(24, 14),
            Barriers =
            [
                new MapBarrier("river", true, 9, 0, 44, [new Crossing("south bridge", new MapPoint(9, 12)), new Crossing("north bridge", new MapPoint(9, 30), true)]),
            ],
            Towns = [new Town("DUN", "Dunmallow", new MapPoint(24, 14), "Marrow")],
            Drops = [new SpecimenDrop("branch", new MapPoint(24, 14), [new CourierTime(IsoDayOfWeek.Monday, new LocalTime(15, 30))])],
            Roads = new RoadFactors(1.3, [new SpeedBand(4, 30), new SpeedBand(double.MaxValue, 70)], 4),
        },
        Nurses =
        [
            new NurseFile { Id = "N10", Name = "Nurse Ten", Credential = "LPN", Home = new MapPoint(23.1, 13.7) },
            new NurseFile
            {
                Id = "N1",
                Name = "Nurse O'One \"Ø\" 李",
                Credential = "RN",
                Home = new MapPoint(0.1 + 0.2, 30),
                Phone = "555-0111",
                Skills = ["PICC", "PORT"],
                SignOffs = [new SignOffEnd("PORT", new LocalDate(2027, 5, 1))],
                Licences = [new StateLicence("Marrow", new LocalDate(2027, 12, 31), Compact: true), new StateLicence("Westling", null)],
                Traits = ["female", "allergy:cat"],
                Week = [new WorkingTime(IsoDayOfWeek.Monday, new LocalTime(8, 0), new LocalTime(16, 30)), new WorkingTime(IsoDayOfWeek.Sunday, new LocalTime(8, 0), new LocalTime(12, 0), OnCall: true)],
                Leaves = [new Leave(new LocalDate(2027, 3, 12), new LocalDate(2027, 3, 13), "away")],
                LunchMinutes = 30,
                OvertimeMinutes = 60,
                MaxVisitsADay = 6,
                VisitCaps = [new KindCap(KindCap.Heavy, 4, AWeek: true), new KindCap("PORT", 1)],
                Note = "first\nsecond",
            },
        ],
        Patients =
        [
            // Entered in an order that no identifier sorts into.
            new Patient
            {
                Id = Bob,
                Name = "Bob Invented",
                CareStartedOn = new LocalDate(2027, 2, 8),
                Home = new MapPoint(5, 16),
                State = "Westling",
                ZoneId = "America/Chicago",
                BornOn = new LocalDate(1950, 2, 28),
                Therapy = "antibiotic",
                Address = "2 River Row",
                Phone = "555-0120",
                AccessNotes = "side door; dog",
                Contact = "spouse",
                Risks = RiskFactors.ParenteralNutrition | RiskFactors.ChlorhexidineAllergy,
                Language = "vi",
                Practitioner = "Practitioner A",
                AccessTimes = [new AccessTime([IsoDayOfWeek.Tuesday], new LocalTime(9, 0), new LocalTime(11, 59, 59))],
                RequiredTraits = ["female"],
                ExcludedTraits = ["allergy:cat"],
                RefusedNurses = ["N10"],
                KnownNurses = ["N1"],
                NeedsSkills = ["PN"],
                CrewSize = 2,
                ExtraMinutes = 15,
                Note = "invented",
            },
            new Patient { Id = Ann, Name = "Ann Invented", CareStartedOn = new LocalDate(2027, 1, 11), Home = default, State = "Marrow", ZoneId = "America/New_York" },
        ],
        Lines =
        [
            new Line
            {
                Id = AnnsPicc,
                Patient = Ann,
                Kind = LineKind.Picc,
                Lumens = [new Lumen("A"), new Lumen("B", Occluded: true)],
                Site = "right basilic",
                InsertedOn = new LocalDate(2027, 2, 1),
                TipConfirmed = false,
                InsertedLengthCm = 40.5m,
                OutsideLengthCm = 2.50m,
                DressingMinutes = 25,
                Securement = SecurementKind.SubcutaneousAnchor,
                ExitSiteHealed = true,
            },
            new Line { Id = BobsPort, Patient = Bob, Kind = LineKind.Port, Lumens = [new Lumen("A")] },
        ],
        Infusions =
        [
            new Infusion(Ann, AnnsPicc, "A", InfusionKind.Intermittent, "vancomycin", PerformerKind.Caregiver),
            new Infusion(Bob, BobsPort, "A", InfusionKind.Continuous, "milrinone", PerformerKind.Nurse, NeverInterrupt: true),
        ],
        Events =
        [
            new LineEvent
            {
                Id = new EventId("E2"),
                Patient = Ann,
                Line = AnnsPicc,
                Kind = LineEventKind.DressingChanged,
                // 02:30 does not exist on this night in New York; the instant beside it does.
                Performed = CareMoment.Exactly(Instant.FromUtc(2027, 3, 14, 7, 30), DateTimeZoneProviders.Tzdb["America/New_York"]),
                RecordedAt = Instant.FromUtc(2027, 3, 14, 8, 0) + Duration.FromTicks(1234567),
                Performer = PerformerKind.Outside,
                PerformerName = "clinic",
                RecordedBy = "N1",
                Certainty = Certainty.DischargePaper,
                Dressing = DressingKind.AntisepticFilm,
                SecurementChanged = true,
                ConnectorsChanged = ["A", "B"],
                LumensUsed = ["A"],
                OutsideLengthCm = 2.0m,
                ArmGirthCm = 31.25m,
                Order = "O1",
                Note = "-- '; DROP TABLE line_events; --",
            },
            new LineEvent
            {
                Id = new EventId("E1"),
                Patient = Ann,
                Line = AnnsPicc,
                Kind = LineEventKind.SealReported,
                Performed = CareMoment.SometimeOn(new LocalDate(2028, 2, 29)),
                RecordedAt = Instant.FromUtc(2026, 11, 1, 6, 30),
                Seal = SealFinding.EdgeLifted | SealFinding.Moisture,
                Voids = new EventId("E2"),
            },
            new LineEvent { Id = new EventId("E3"), Patient = Bob, Kind = LineEventKind.AdmittedToHospital, RecordedAt = Instant.FromUtc(2027, 3, 6, 0, 0) },
        ],
        Orders =
        [
            new CareOrder { Id = "O2", Patient = Bob, Kind = OrderKind.VisitFrequency, StartsOn = new LocalDate(2027, 2, 8), VisitsPerWeek = 1, AsNeededVisits = 3, AsNeededUsed = 1 },
            new CareOrder
            {
                Id = "O1",
                Patient = Ann,
                Line = AnnsPicc,
                Kind = OrderKind.DrugLevel,
                StartsOn = new LocalDate(2027, 3, 1),
                EndsOn = new LocalDate(2027, 4, 8),
                Practitioner = "Practitioner B",
                Text = "vancomycin trough",
                Item = CareItem.Labs,
                EveryDays = 7,
                Confirmed = true,
                Weekdays = [IsoDayOfWeek.Monday, IsoDayOfWeek.Thursday],
                Dates = [new LocalDate(2027, 3, 9)],
                StartFrom = new LocalTime(7, 0),
                StartTo = new LocalTime(8, 30),
                DoseTimes = [new LocalTime(9, 0), new LocalTime(21, 0)],
                Skills = ["FD"],
                SetupMinutes = 10,
                WorkMinutes = 25,
                NotBefore = new LocalDateTime(2027, 3, 9, 15, 0),
                NeedsCourier = true,
            },
        ],
        Caregivers =
        [
            new CaregiverValidation(Ann, "spouse", CareItem.LumenFlush, new LocalDate(2027, 5, 1)),
            new CaregiverValidation(Ann, "spouse", CareItem.Set, new LocalDate(2027, 5, 1), AnnsPicc),
        ],
        Holds = [new Hold(Bob, new LocalDate(2027, 3, 6), null, "hospital"), new Hold(Ann, new LocalDate(2027, 1, 1), new LocalDate(2027, 1, 3), "away", new Elsewhere("Farstate", "America/Denver", "3 Lantern Row", "555-0140", "an agency there"))],
        Exceptions = [new CareException(Ann, "dressing.film.max", 5.5m, "Dr. Invented", new LocalDate(2027, 6, 30), "skin")],
        OutsideCare =
        [
            new OutsideCare(Bob, BobsPort, "clinic", new LocalDate(2027, 3, 10), new LocalDateTime(2027, 3, 11, 12, 0)),
            new OutsideCare(Ann, null, "other agency", new LocalDate(2027, 3, 12), new LocalDateTime(2027, 3, 13, 12, 0)),
        ],
        Policy = [new PolicyRule("dressing.film.max", 7m, "days", new LocalDate(2027, 1, 1), PolicyLevel.Agency, RuleStanding.OwnDefault, "invented for this test")],
    };
}
