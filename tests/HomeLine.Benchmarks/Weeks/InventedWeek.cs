using HomeLine.Planning.Problem;
using NodaTime;

namespace HomeLine.Benchmarks.Weeks;

/// <summary>
/// A whole invented week of any size: towns on a plain, nurses with shifts, breaks, skills and languages, patients with the care of a home-infusion
/// week. The shares (dressings weekly, laboratory draws, two-day chains, daily doses, two people) are our own default, no source.
/// Same seed and size, same week.
/// </summary>
internal static class InventedWeek
{
    public const int Days = 7;

    public static WeekProblem Of(int nurses, int patients, int seed)
    {
        var draw = new Draw(seed + (1_000 * nurses) + patients);
        var towns = new Towns(draw, Math.Max(2, patients / 45));
        MapPoint[] homes = [.. Enumerable.Range(0, nurses).Select(n => towns.Near(n % towns.Count)), .. Enumerable.Range(0, patients).Select(_ => towns.Somewhere())];
        MapPoint[] places = [.. homes, towns.Centre(0), towns.Centre(towns.Count / 2)];
        Nurse[] staff = [.. Enumerable.Range(0, nurses).Select(n => InventedNurse.Of(draw, n))];
        PatientHome[] roster = [.. Enumerable.Range(0, patients).Select(p => InventedPatient.Of(draw, p, nurses, homes, staff))];
        return new WeekProblem
        {
            FirstDay = new LocalDate(2027, 3, 8),
            DayCount = Days,
            Now = 0,
            Travel = new MapTravel([.. places], [], MapSettings.Default),
            Nurses = [.. staff],
            Patients = [.. roster],
            Tasks = [.. roster.SelectMany(p => InventedCare.Of(draw, p))],
            Rules = new PlanningRules(15, 660, 60, 10),
            DropPoints = [Drop("branch", places.Length - 2, 930), Drop("clinic", places.Length - 1, 840)],
        };
    }

    public static int At(int day, int hour, int minute = 0) => (day * 1440) + (hour * 60) + minute;

    private static DropPoint Drop(string name, int place, int minute) => new(name, place, [.. Enumerable.Range(0, 6).Select(d => (d * 1440) + minute)]);

    /// <summary>Towns of a few kilometres on a plain that grows with their number.</summary>
    private sealed class Towns
    {
        private readonly Draw _draw;
        private readonly MapPoint[] _centres;

        public Towns(Draw draw, int count)
        {
            _draw = draw;
            double side = 14 * Math.Sqrt(count);
            _centres = [.. Enumerable.Range(0, count).Select(_ => new MapPoint(draw.Fraction() * side, draw.Fraction() * side))];
        }

        public int Count => _centres.Length;

        public MapPoint Centre(int town) => _centres[town];

        public MapPoint Near(int town)
        {
            double angle = _draw.Fraction() * 2 * Math.PI, km = 5 * Math.Sqrt(_draw.Fraction());
            return new MapPoint(_centres[town].X + (km * Math.Cos(angle)), _centres[town].Y + (km * Math.Sin(angle)));
        }

        public MapPoint Somewhere() => Near(_draw.Below(Count));
    }
}
