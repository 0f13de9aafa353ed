using System.Collections.Immutable;
using HomeLine.Agency.Roster;
using HomeLine.LineCare.Policy;
using NodaTime;

namespace HomeLine.Agency.WeekPlanning;

/// <summary>
/// An estimate of what a nurse's day is paid for: from the first door to leaving the last one, less a break that falls between, and of the ways from and to home
/// what policy says. An estimate from the plan and the map: what was worked and driven is what counts.
/// </summary>
/// <param name="Minutes">Paid minutes.</param>
/// <param name="Miles">Paid miles.</param>
/// <param name="DrivenMiles">All miles, from home and back.</param>
public sealed record PaidDay(int Minutes, double Miles, double DrivenMiles)
{
    /// <summary>The international mile, exactly.</summary>
    public const double KilometresInAMile = 1.609344;

    /// <summary>A day without a visit.</summary>
    public static PaidDay None { get; } = new(0, 0, 0);

    /// <param name="nurse">Whose day.</param>
    /// <param name="legs">Her visits as driven, in order.</param>
    /// <param name="drivingMinutes">All driving, first and last way included.</param>
    /// <param name="roads">The map.</param>
    /// <param name="policy">What is paid, the charting after a visit, when a break may be.</param>
    public static PaidDay Of(NurseFile nurse, ImmutableArray<DayLeg> legs, int drivingMinutes, RoadTravel roads, PolicyBook policy)
    {
        if (legs.IsEmpty) return None;
        LocalDate day = legs[0].Visit.Day;
        PaidRules rules = PaidRules.Of(policy, day);
        int charting = (int)policy.ValueOf("visit.documentation", day);
        int way = legs[0].TravelBefore, back = drivingMinutes - legs.Sum(l => l.TravelBefore + l.TravelToHandIn);
        int begins = MinuteOf(legs[0].Visit.Start), ends = Leaves(legs[^1], charting);
        int pause = nurse.LunchMinutes > 0 && !IsOutside(nurse, begins - way, ends + back, day, policy) ? nurse.LunchMinutes : 0;
        double[] miles = [.. MilesOf(nurse, legs, roads)];
        return new PaidDay(
            ends - begins - pause + rules.Paid(way) + rules.Paid(back),
            miles[1..^1].Sum() + rules.Paid(miles[0]) + rules.Paid(miles[^1]),
            miles.Sum());
    }

    /// <summary>Each way in turn: from home, between doors and drop points, home again.</summary>
    private static IEnumerable<double> MilesOf(NurseFile nurse, ImmutableArray<DayLeg> legs, RoadTravel roads)
    {
        int home = roads.PlaceOfNurse(nurse.Id), here = home;
        foreach (DayLeg leg in legs)
        {
            int there = roads.PlaceOfPatient(leg.Visit.Patient.Value);
            yield return Between(roads, here, there);
            here = there;
            if (leg.HandIn is not { } handIn) continue;
            yield return Between(roads, here, handIn.Place);
            here = handIn.Place;
        }

        yield return Between(roads, here, home);
    }

    private static double Between(RoadTravel roads, int from, int to) => roads.Kilometres(from, to) / KilometresInAMile;

    private static int Leaves(DayLeg leg, int charting) => leg.HandIn is { } handIn ? MinuteOf(handIn.Leave) : MinuteOf(leg.Visit.Start) + leg.Visit.Minutes + charting;

    /// <summary>Whether the break can be before she leaves home or after she is home again.</summary>
    private static bool IsOutside(NurseFile nurse, int leavesHome, int homeAgain, LocalDate day, PolicyBook policy) =>
        (60 * policy.ValueOf("lunch.from", day)) + nurse.LunchMinutes <= leavesHome || homeAgain <= 60 * policy.ValueOf("lunch.to", day);

    private static int MinuteOf(LocalTime time) => (time.Hour * 60) + time.Minute;
}
