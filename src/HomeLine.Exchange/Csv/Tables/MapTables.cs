using System.Collections.Immutable;
using System.Globalization;
using HomeLine.Agency.Roster;
using HomeLine.Exchange.Csv.Cells;
using NodaTime;

namespace HomeLine.Exchange.Csv.Tables;

/// <summary>map-places.csv: the branch, towns, and where specimens are handed in.</summary>
internal static class MapPlacesTable
{
    public static readonly TableShape Shape = TableShape.Of("map-places.csv", true, "kind! code name x! y! state courier");

    public enum PlaceKind
    {
        Branch,
        Town,
        Drop,
    }

    public sealed record Place(PlaceKind Kind, string Code, string Name, MapPoint At, string State, ImmutableArray<CourierTime> Courier);

    public static Place Read(Row row)
    {
        var kind = row.Word<PlaceKind>("kind");
        (double x, double y) = row.Place();
        string state = row.Trimmed("state");
        if (kind == PlaceKind.Town) row.State(row.Required("state"), "state");
        if (kind != PlaceKind.Branch) row.RequiredText("name");
        return new Place(kind, row.Trimmed("code"), row.Text("name"), new MapPoint(x, y), state, [.. Courier(row)]);
    }

    public static IEnumerable<string[]> Write(AgencyMap map)
    {
        yield return ["branch", "", "", NumberText.Write(map.BranchPlace.X), NumberText.Write(map.BranchPlace.Y), "", ""];
        foreach (Town town in map.Towns)
            yield return ["town", town.Code, town.Name, NumberText.Write(town.At.X),
                NumberText.Write(town.At.Y), town.State, ""];
        foreach (SpecimenDrop drop in map.Drops)
            yield return ["drop", "", drop.Name, NumberText.Write(drop.At.X), NumberText.Write(drop.At.Y), "",
                string.Join("; ", drop.Courier.Select(time => $"{WeekdayWords.Of(time.Weekday)} {TimeText.Write(time.At)}"))];
    }

    private static IEnumerable<CourierTime> Courier(Row row)
    {
        foreach (string part in row.Parts("courier"))
        {
            string[] words = part.Split(' ', StringSplitOptions.RemoveEmptyEntries);
            LocalTime? time = words.Length >= 2 ? TimeText.ReadTime(words[^1]) : null;
            if (time is null || !words[..^1].All(word => WeekdayWords.TryParse(word, out _)))
                row.Refuse("courier", part, "Write weekdays and the last collection, for example mon tue wed 15:30; sat 11:30.");
            else
                foreach (string word in words[..^1])
                    if (WeekdayWords.TryParse(word, out IsoDayOfWeek day)) yield return new CourierTime(day, time.Value);
        }
    }
}

/// <summary>map-barriers.csv: lines that roads cross only at their crossings, and those crossings.</summary>
internal static class MapBarriersTable
{
    public static readonly TableShape Shape = TableShape.Of("map-barriers.csv", false, "kind! barrier! name runs at from to x y closed");

    public enum RowKind
    {
        Barrier,
        Crossing,
    }

    public enum Run
    {
        NorthSouth,
        WestEast,
    }

    public sealed record Entry(MapBarrier? Barrier, string Of, Crossing? Crossing);

    public static Entry Read(Row row, IDictionary<string, MapBarrier?> known)
    {
        string of = row.Required("barrier");
        if (row.Word<RowKind>("kind") == RowKind.Crossing) return new Entry(null, of, ReadCrossing(row, of, known));
        bool vertical = row.Word<Run>("runs") == Run.NorthSouth;
        if (!row.Has("at")) row.Refuse("at", "A value is needed here.");
        double from = row.Kilometres("from") ?? double.NegativeInfinity;
        double to = row.Kilometres("to") ?? double.PositiveInfinity;
        if (to <= from) row.Refuse("to", "The barrier ends before it begins.");
        var barrier = new MapBarrier(of, vertical, row.Kilometres("at") ?? 0, from, to, []);
        if (!known.TryAdd(of, row.IsSound ? barrier : null)) row.Refuse("barrier", "There are two barriers of this name.");
        return new Entry(barrier, of, null);
    }

    public static IEnumerable<string[]> Write(AgencyMap map)
    {
        foreach (MapBarrier barrier in map.Barriers)
        {
            string name = barrier.Name;
            yield return ["barrier", name, "", barrier.Vertical ? "north_south" : "west_east", NumberText.Write(barrier.At),
                NumberText.Write(barrier.From), NumberText.Write(barrier.To), "", "", ""];
            foreach (Crossing crossing in barrier.Crossings)
                yield return ["crossing", name, crossing.Name, "", "", "", "",
                    NumberText.Write(crossing.At.X), NumberText.Write(crossing.At.Y), crossing.Closed ? "yes" : "no"];
        }
    }

    private static Crossing ReadCrossing(Row row, string of, IDictionary<string, MapBarrier?> known)
    {
        (double x, double y) = row.Place();
        if (of.Length > 0 && !known.TryGetValue(of, out MapBarrier? _))
            row.Refuse("barrier", "There is no such barrier above this row.");
        else if (known.TryGetValue(of, out MapBarrier? barrier) && barrier is not null)
        {
            (double across, double along) = barrier.Vertical ? (x, y) : (y, x);
            if (Math.Abs(across - barrier.At) > 1e-6 || along <= barrier.From || along >= barrier.To)
                row.Refuse(barrier.Vertical ? "x" : "y", "This crossing does not lie on its barrier.");
        }

        return new Crossing(row.RequiredText("name"), new MapPoint(x, y), row.YesNo("closed"));
    }
}

/// <summary>map-roads.csv: how straight distance becomes minutes.</summary>
internal static class MapRoadsTable
{
    public static readonly TableShape Shape = TableShape.Of("map-roads.csv", false, "kind! up_to_km value! weekdays from to");

    /// <summary>Used when there is no such file; our own default, the same as the planner's.</summary>
    public static readonly RoadFactors Default =
        new(1.3, [new SpeedBand(4, 30), new SpeedBand(15, 50), new SpeedBand(double.PositiveInfinity, 70)], 4);

    public enum FactorKind
    {
        Circuity,
        Speed,
        Parking,
        Slow,
    }

    public sealed record Factor(FactorKind Kind, double UpToKm, double Value, SlowTime? Slow, Row Row);

    public static Factor Read(Row row)
    {
        var kind = row.Word<FactorKind>("kind");
        (decimal least, decimal most) = kind switch
        {
            FactorKind.Circuity => (1m, 5m),
            FactorKind.Speed => (1m, 200m),
            FactorKind.Slow => (1m, 100m),
            _ => (0m, 120m),
        };
        double value = (double)row.RequiredNumber("value", least, most);
        if (kind == FactorKind.Parking && value != Math.Floor(value)) row.Refuse("value", "Parking takes whole minutes.");
        return new Factor(kind, row.Kilometres("up_to_km") ?? double.PositiveInfinity, value, kind == FactorKind.Slow ? Slow(row, value) : null, row);
    }

    private static SlowTime Slow(Row row, double value)
    {
        ImmutableArray<IsoDayOfWeek> days = row.Weekdays("weekdays");
        if (days.IsEmpty) row.Refuse("weekdays", $"Name the weekdays: {WeekdayWords.All}.");
        LocalTime from = row.RequiredTime("from"), to = row.RequiredTime("to");
        if (row.IsSound && to <= from) row.Refuse("to", "The slow time ends before it begins.");
        if (value != Math.Floor(value)) row.Refuse("value", "The speed is a whole number of a hundred.");
        return new SlowTime(days, from, to, (int)value);
    }

    public static RoadFactors Assemble(ImmutableArray<Factor> factors)
    {
        if (factors.IsEmpty) return Default;
        foreach (IGrouping<FactorKind, Factor> twice in factors.Where(factor => factor.Kind is not (FactorKind.Speed or FactorKind.Slow)).GroupBy(factor => factor.Kind))
            foreach (Factor factor in twice.Skip(1)) factor.Row.Refuse("kind", "This factor stands twice.");
        ImmutableArray<Factor> speeds = [.. factors.Where(factor => factor.Kind == FactorKind.Speed)];
        for (int i = 1; i < speeds.Length; i++)
            if (speeds[i].UpToKm <= speeds[i - 1].UpToKm) speeds[i].Row.Refuse("up_to_km", "Speeds go from short trips to long ones.");
        if (speeds.Length > 0 && !double.IsInfinity(speeds[^1].UpToKm))
            speeds[^1].Row.Refuse("up_to_km", "The last speed must hold without end: leave up_to_km empty.");
        ImmutableArray<(SlowTime Time, Row Row)> slow = [.. factors.Where(f => f.Slow is not null).Select(f => (f.Slow!, f.Row))];
        for (int i = 1; i < slow.Length; i++)
        {
            if (slow[..i].Any(s => s.Time.Weekdays.Intersect(slow[i].Time.Weekdays).Any() && s.Time.From < slow[i].Time.To && slow[i].Time.From < s.Time.To))
                slow[i].Row.Refuse("from", "This overlaps another slow time on the same weekday.");
        }

        return new RoadFactors(
            factors.FirstOrDefault(factor => factor.Kind == FactorKind.Circuity)?.Value ?? Default.Circuity,
            speeds.IsEmpty ? Default.Bands : [.. speeds.Select(speed => new SpeedBand(speed.UpToKm, speed.Value))],
            (int)(factors.FirstOrDefault(factor => factor.Kind == FactorKind.Parking)?.Value ?? Default.ParkingMinutes))
        {
            SlowTimes = [.. slow.Select(s => s.Time)],
        };
    }

    public static IEnumerable<string[]> Write(RoadFactors roads)
    {
        yield return ["circuity", "", NumberText.Write(roads.Circuity), "", "", ""];
        foreach (SpeedBand band in roads.Bands) yield return ["speed", NumberText.Write(band.UpToKm), NumberText.Write(band.KmPerHour), "", "", ""];
        yield return ["parking", "", roads.ParkingMinutes.ToString(CultureInfo.InvariantCulture), "", "", ""];
        foreach (SlowTime slow in roads.SlowTimes)
        {
            yield return
            [
                "slow", "", slow.SpeedPercent.ToString(CultureInfo.InvariantCulture), ListText.Write(slow.Weekdays.Select(WeekdayWords.Of)), TimeText.Write(slow.From), TimeText.Write(slow.To),
            ];
        }
    }
}
