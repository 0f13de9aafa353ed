using System.Collections.Immutable;
using HomeLine.Agency.Sheets;
using NodaTime;

namespace HomeLine.Paper.Tests;

/// <summary>An invented Tuesday with six doors, fuller than most days.</summary>
internal static class SampleDaySheet
{
    public static DaySheetContent SixStops { get; } = new()
    {
        AgencyName = "Brackenmoth Home Infusion",
        NurseName = "Nurse N4",
        Day = new LocalDate(2027, 3, 9),
        PrintedAt = new LocalDateTime(2027, 3, 9, 6, 10),
        PlanVersion = 7,
        CoordinatorPhone = "555-0103",
        OnCallPhone = "555-0102",
        EmergencyNumber = "911",
        DrivingMinutes = 143,
        IsDemo = true,
        Stops = Doors(),
    };

    private static ImmutableArray<DayStop> Doors() =>
    [
        WithDressing(Stop(8, 30, "Oxlip Snufflebrook", "4 Larch Row, Mossgate", 90, 24)) with
        {
            AccessNotes = "Ring twice. Stroller behind the door.",
            Unusual = ["No chlorhexidine: under 2 months old."],
        },
        Stop(10, 23, "Nasturt Lollopfield", "17 Ferry Lane, Mossgate", 90, 8),
        Stop(12, 39, "Eyebright Noodleham", "2 Mill Yard, Dunmallow", 60, 32) with
        {
            Unusual = ["Past skin injury from adhesive: lift slowly, no early change.", "Interpreter by phone needed (Spanish)."],
            AccessNotes = "Daughter opens. Parking in the yard only. Gate code on the coordinator’s list.",
        },
        Stop(14, 0, "Pimpernel Flapstone", "31 Alder Walk, Dunmallow", 60, 9) with { Unusual = ["Two persons: wait for your escort at the corner."] },
        WithDressing(Stop(15, 20, "Quince Cloudbutton", "8 Hill Street, Dunmallow", 100, 14)) with { Unusual = ["No chlorhexidine: allergy on file."] },
        Stop(17, 30, "Camomile Velvetoak", "12 Bridge End, Westling Cross", 90, 29) with { OtherZoneRange = "4:30 to 5:30 pm Central" },
    ];

    /// <summary>A door with everything: the longest kit the list knows.</summary>
    private static DayStop WithDressing(DayStop stop) => stop with
    {
        ToDo =
        [
            "Dressing change and securement: last day Tuesday, March 9",
            "Connector A: last day Tuesday, March 9",
            "Outside length with the dressing: compare with last time",
            "Labs: last day Thursday, March 11",
        ],
        Bring =
        [
            "masks for everybody within arm's reach", "clean gloves and sterile gloves", "sterile drape and gauze",
            "skin antiseptic without chlorhexidine, as ordered", "dressing without any chlorhexidine part", "transparent film", "adhesive securement",
            "measuring tape for the length outside and the arm", .. stop.Bring,
        ],
    };

    private static DayStop Stop(int hour, int minute, string name, string address, int minutes, int travel) => new()
    {
        Start = new LocalTime(hour, minute),
        ToldFrom = new LocalTime(hour, minute),
        ToldTo = new LocalTime(hour, minute).PlusHours(1),
        PatientName = name,
        Address = address,
        Phone = "555-0140",
        AccessNotes = "Side door. Dog is friendly.",
        Minutes = minutes,
        TravelMinutesBefore = travel,
        ToDo = ["Connector A: last day Tuesday, March 9", "Labs: last day Thursday, March 11"],
        Bring =
        [
            "needleless connector, one for each lumen and one spare: 1 + 1", "hub disinfectant wipes", "flush syringes by order",
            "requisition, tubes on it, labels", "waste syringe, flush syringes, specimen bag, cooler", "sharps box",
        ],
        Unusual = [],
    };
}
