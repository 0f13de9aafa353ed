using HomeLine.Planning.Problem;

namespace HomeLine.Planning.Search;

/// <summary>
/// Nurse-days by index, in the order of nurses and days. On-call shifts are closed to the search; a nurse-day that exists only through a fixed
/// visit is closed as well. Rest between shifts is kept by narrowing the shifts beforehand, which is stricter than the rule asks.
/// </summary>
internal sealed class RouteTable
{
    private readonly int[] _find;
    private readonly int _days;

    public RouteTable(CompiledWeek week)
    {
        var fixedDays = week.FixedVisits
            .SelectMany(v => new[] { v.Nurse, v.Second }.OfType<string>().Select(n => (Nurse: n, Day: CompiledWeek.DayOf(v.Start))))
            .ToHashSet();
        var rows = new List<(int Nurse, int Day, Shift Shift, bool Open)>();
        for (int n = 0; n < week.NurseCount; n++)
        {
            Nurse nurse = week.Problem.Nurses[n];
            for (int day = week.FirstDay; day < week.FirstDay + week.Days; day++)
            {
                Shift? shift = nurse.Shifts.FirstOrDefault(s => s.Day == day);
                bool open = shift is { OnCall: false } && day >= 0 && day < week.Problem.DayCount;
                if (open || fixedDays.Contains((nurse.Id, day)))
                    rows.Add((n, day - week.FirstDay, shift ?? new Shift(day, day * 1440, int.MaxValue / 2, int.MaxValue / 2), open));
            }
        }

        Count = rows.Count;
        Nurse = [.. rows.Select(r => r.Nurse)];
        Day = [.. rows.Select(r => r.Day)];
        Open = [.. rows.Select(r => r.Open)];
        From = [.. rows.Select(r => r.Shift.From)];
        To = [.. rows.Select(r => r.Shift.To)];
        OvertimeTo = [.. rows.Select(r => r.Shift.OvertimeTo)];
        Lunch = [.. rows.Select(r => r.Shift.LunchMinutes)];
        LunchFrom = [.. rows.Select(r => r.Shift.LunchFrom)];
        LunchTo = [.. rows.Select(r => r.Shift.LunchTo)];
        Cap = [.. rows.Select(r => week.Problem.Nurses[r.Nurse].MaxVisitsADay)];
        Turn = [.. rows.Select(r => r.Shift.TurnPoints)];
        OfDay = [.. Enumerable.Range(0, week.Days).Select(d => Enumerable.Range(0, Count).Where(r => Day[r] == d && Open[r]).ToArray())];
        _days = week.Days;
        _find = new int[week.NurseCount * week.Days];
        Array.Fill(_find, -1);
        for (int r = 0; r < Count; r++) _find[(Nurse[r] * _days) + Day[r]] = r;
        KeepRest(week);
    }

    public int Count { get; }

    public int[] Nurse { get; }

    public int[] Day { get; }

    /// <summary>Whether the search may put visits there.</summary>
    public bool[] Open { get; }

    public int[] From { get; }

    public int[] To { get; }

    public int[] OvertimeTo { get; }

    public int[] Lunch { get; }

    public int[] LunchFrom { get; }

    public int[] LunchTo { get; }

    public int[] Cap { get; }

    /// <summary>People points when the day has a visit at all.</summary>
    public int[] Turn { get; }

    /// <summary>Open routes of each day.</summary>
    public int[][] OfDay { get; }

    /// <summary>The route of a nurse on a table day, or -1.</summary>
    public int Find(int nurse, int day) => day < 0 || day >= _days ? -1 : _find[(nurse * _days) + day];

    private void KeepRest(CompiledWeek week)
    {
        int rest = week.Problem.Rules.RestBetweenShiftsMinutes;
        for (int r = 1; r < Count; r++)
        {
            if (Nurse[r - 1] != Nurse[r] || From[r] - End(week, r - 1) >= rest) continue;
            if (Open[r - 1]) OvertimeTo[r - 1] = Math.Min(OvertimeTo[r - 1], Math.Max(To[r - 1], From[r] - rest));
            From[r] = Math.Max(From[r], End(week, r - 1) + rest);
        }
    }

    /// <summary>The latest a nurse-day can end: its overtime cap, or the way home from its last fixed visit if that is later or the only bound.</summary>
    private int End(CompiledWeek week, int route)
    {
        if (week.FixedVisits.Length == 0) return Open[route] ? OvertimeTo[route] : int.MinValue;
        Nurse nurse = week.Problem.Nurses[Nurse[route]];
        int[] returns =
        [
            .. from visit in week.FixedVisits
               where (visit.Nurse == nurse.Id || visit.Second == nurse.Id) && CompiledWeek.DayOf(visit.Start) - week.FirstDay == Day[route]
               let place = week.Roads.OfPatient(week.PatientIndex[visit.Patient])
               let leave = visit.Start + visit.Minutes + week.Problem.Rules.DocumentationMinutes
               select leave + week.Roads.Leaving(place, Roads.OfNurse(Nurse[route]), leave),
        ];
        int fixedEnd = returns.Length == 0 ? int.MinValue : returns.Max();
        return Open[route] ? Math.Max(OvertimeTo[route], fixedEnd) : fixedEnd;
    }
}
