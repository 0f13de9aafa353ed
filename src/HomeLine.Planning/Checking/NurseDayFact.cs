using System.Collections.Immutable;
using HomeLine.Planning.Problem;

namespace HomeLine.Planning.Checking;

/// <summary>
/// One nurse's day walked from home through her visits and back, with minutes re-derived from the visits' starts.
/// She leaves home just in time for the first visit, so there is no waiting before it.
/// </summary>
internal sealed class NurseDayFact
{
    private readonly int _charting;
    private readonly PlanFacts _facts;

    private NurseDayFact(Nurse nurse, int day, ImmutableArray<VisitFact> visits, PlanFacts facts)
    {
        Nurse = nurse;
        Day = day;
        Visits = visits;
        _charting = facts.Problem.Rules.DocumentationMinutes;
        _facts = facts;
        Shift = nurse.Shifts.FirstOrDefault(s => s.Day == day);
        Departure = visits[0].Visit.Start - FirstLeg(nurse.Home, visits[0]);
        if (facts.Problem.Rules.HandInMinutes is { } handIn)
        {
            (Drops, List<int> late) = new DropReading(facts, nurse, visits, handIn).Read();
            LateSpecimens = [.. late.Select(i => visits[i])];
        }

        Walk();
    }

    public Nurse Nurse { get; }

    public int Day { get; }

    public Shift? Shift { get; }

    public ImmutableArray<VisitFact> Visits { get; }

    /// <summary>When she leaves home.</summary>
    public long Departure { get; }

    /// <summary>When she is home again, the break included when it falls on the way.</summary>
    public long Return { get; private set; }

    public long Driving { get; private set; }

    public long HomeMinutes { get; private set; }

    /// <summary>Paid waiting: gaps beyond charting, road and break.</summary>
    public long Wait { get; private set; }

    public long Overtime => Shift is null ? 0 : Math.Max(0, Return - Shift.To);

    /// <summary>Stops at drop points, where the nurse makes them; their minutes are part of the driving.</summary>
    public List<DropFact> Drops { get; } = [];

    /// <summary>Visits whose specimen she brings to no drop point in time.</summary>
    public ImmutableArray<VisitFact> LateSpecimens { get; } = [];

    /// <summary>Whether the break has a place, or none is due.</summary>
    public bool BreakFits { get; private set; } = true;

    /// <summary>Visits reached too late: the visit and by how many minutes.</summary>
    public List<(VisitFact Visit, long Minutes)> TooFar { get; } = [];

    /// <summary>All nurse-days with a visit whose nurse and patient are known.</summary>
    public static IEnumerable<NurseDayFact> All(PlanFacts facts)
    {
        var seats = facts.Visits
            .Where(v => v.Patient is not null)
            .SelectMany(v => new[] { v.Nurse, v.Second }.OfType<Nurse>().Distinct().Select(n => (Nurse: n, Visit: v)));
        return seats
            .GroupBy(s => (s.Nurse.Id, s.Visit.Day))
            .Select(g => new NurseDayFact(
                g.First().Nurse,
                g.Key.Day,
                [.. g.Select(s => s.Visit).OrderBy(v => v.Visit.Start).ThenBy(v => v.Visit.Id, StringComparer.Ordinal)],
                facts))
            .OrderBy(d => d.Day).ThenBy(d => d.Nurse.Id, StringComparer.Ordinal);
    }

    private long Leg(int from, int to, long leave) => _facts.Trips.Leaving(from, to, leave);

    /// <summary>The way to the first visit, left for as late as it can be.</summary>
    private long FirstLeg(int home, VisitFact first) => _facts.Trips.Reaching(home, first.Patient!.Place, first.Visit.Start);

    /// <summary>The way on from a visit, a stop at a drop point included.</summary>
    private long WayOn(int position)
    {
        int next = position + 1 < Visits.Length ? Visits[position + 1].Patient!.Place : Nurse.Home;
        return Leg(Visits[position].Patient!.Place, next, LeaveOf(Visits[position])) + Drops.Where(d => d.After == position).Sum(d => d.Minutes);
    }

    private long LeaveOf(VisitFact v) => (long)v.Visit.Start + v.Visit.Minutes + _charting;

    private void Walk()
    {
        Driving = FirstLeg(Nurse.Home, Visits[0]);
        HomeMinutes = Visits.Sum(v => (long)v.Visit.Minutes);
        bool allFixed = Visits[0].Fixed;
        if (Shift is not null && Departure < Shift.From && !allFixed) TooFar.Add((Visits[0], Shift.From - Departure));
        for (int i = 1; i < Visits.Length; i++)
        {
            long leg = WayOn(i - 1);
            long arrival = LeaveOf(Visits[i - 1]) + leg;
            Driving += leg;
            allFixed &= Visits[i].Fixed;
            if (arrival <= Visits[i].Visit.Start) Wait += Visits[i].Visit.Start - arrival;
            else if (!allFixed) TooFar.Add((Visits[i], arrival - Visits[i].Visit.Start));
        }

        long home = WayOn(Visits.Length - 1);
        Driving += home;
        Return = LeaveOf(Visits[^1]) + home;
        if (Shift is { LunchMinutes: > 0 }) PlaceBreak(Shift);
    }

    /// <summary>The break may fall before leaving home, in a gap (also in the middle of a drive), after coming home, or on the way home.</summary>
    private void PlaceBreak(Shift shift)
    {
        if (Departure >= (long)shift.LunchFrom + shift.LunchMinutes) return;
        for (int i = 1; i < Visits.Length; i++)
        {
            long leave = LeaveOf(Visits[i - 1]), start = Visits[i].Visit.Start;
            long leg = WayOn(i - 1);
            bool roomy = leave + leg + shift.LunchMinutes <= start;
            if (!roomy || leave > shift.LunchTo || start < (long)shift.LunchFrom + shift.LunchMinutes) continue;
            Wait -= shift.LunchMinutes;
            return;
        }

        if (Return <= shift.LunchTo) return;
        BreakFits = LeaveOf(Visits[^1]) <= shift.LunchTo;
        Return += BreakFits ? shift.LunchMinutes : 0;
    }
}
