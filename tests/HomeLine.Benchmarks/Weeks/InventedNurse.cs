using System.Collections.Immutable;
using HomeLine.Planning.Problem;

namespace HomeLine.Benchmarks.Weeks;

/// <summary>Nurses of an invented week: most work five days with a break, a few evenings, every sixth at the weekend.</summary>
internal static class InventedNurse
{
    private static readonly string[] Common = ["PICC", "TUN", "LAB"], Rarer = ["PORT", "PN", "SOC", "FD", "PEDS", "INO", "IG"];

    public static Nurse Of(Draw draw, int index)
    {
        bool evening = draw.Percent(12), weekend = index % 6 == 0, practical = draw.Percent(12);
        int off = draw.Below(5), hours = draw.Percent(25) ? 6 : 8;
        int[] days = weekend ? [.. Enumerable.Range(0, 7).Where(d => d != off && d != (off + 2) % 5)] : [.. Enumerable.Range(0, 5).Where(d => !draw.Percent(8))];
        return new Nurse
        {
            Id = $"N{index + 1}",
            Name = $"Nurse {index + 1}",
            Home = index,
            Shifts = [.. days.Select(d => Shift(d, evening ? 13 : 8, d > 4 ? 5 : hours, draw.Percent(50) ? 30 : 0))],
            Skills = practical ? [.. Common] : [.. Common, .. Rarer.Where(s => s is "PORT" or "PN" ? draw.Percent(85) : draw.Percent(40))],
            Licences = [new Licence("Marrow", int.MaxValue)],
            Traits = Traits(draw),
            MaxVisitsADay = 9,
        };
    }

    private static Shift Shift(int day, int from, int hours, int overtime)
    {
        int start = InventedWeek.At(day, from), end = start + (hours * 60) + (hours > 5 ? 30 : 0);
        return hours > 5
            ? new Shift(day, start, end, end + overtime, 30, start + 180, start + 330)
            : new Shift(day, start, end, end + overtime);
    }

    private static ImmutableArray<string> Traits(Draw draw) =>
    [
        draw.Percent(80) ? "female" : "male",
        .. draw.Percent(10) ? ["allergy:cat"] : Array.Empty<string>(),
        .. draw.Percent(20) ? ["language:es"] : Array.Empty<string>(),
    ];
}
