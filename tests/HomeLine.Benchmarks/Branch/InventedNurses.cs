using System.Collections.Immutable;
using HomeLine.Agency.Roster;
using NodaTime;

namespace HomeLine.Benchmarks.Branch;

/// <summary>Invented nurses for an invented agency, spread over its map: most work five days, every third late, every fifth may do anything.</summary>
internal static class InventedNurses
{
    public static ImmutableArray<NurseFile> Of(int count) => [.. Enumerable.Range(1, count).Select(One)];

    private static NurseFile One(int number)
    {
        bool late = number % 3 == 0;
        return new NurseFile
        {
            Id = $"N{number}",
            Name = $"Invented {number} Nurse",
            Credential = "RN",
            Home = new MapPoint(number * 13 % 60, number * 17 % 44),
            Phone = "555-0100",
            Skills = ["LAB", "PICC", "PN", "PORT", "TUN", .. number % 5 == 0 ? (string[])["FD", "INO", "REC", "REM", "SOC"] : []],
            Licences = [new StateLicence("Marrow", null)],
            Week = [.. Enumerable.Range(1, 5).Select(day => new WorkingTime((IsoDayOfWeek)day, late ? new LocalTime(12, 0) : new LocalTime(8, 0), late ? new LocalTime(20, 0) : new LocalTime(16, 30)))],
            OvertimeMinutes = 60,
            MaxVisitsADay = 9,
        };
    }
}
