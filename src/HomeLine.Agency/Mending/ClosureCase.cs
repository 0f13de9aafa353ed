using System.Collections.Immutable;
using HomeLine.Agency.Roster;
using HomeLine.Planning.Mending;
using HomeLine.Planning.Problem;

namespace HomeLine.Agency.Mending;

/// <summary>Roads are closed for a while: who cannot be reached in time, who cannot wait, and who is phoned. Pure.</summary>
internal static class ClosureCase
{
    public static Refusal? Fault(RoadShut entry, AgencyAtHand agency)
    {
        if (entry.Crossings.IsEmpty && entry.Towns.IsEmpty)
            return new Refusal("closure-names-nothing", "It is not said what is closed.", "Choose at least one bridge, pass or town.");
        if (entry.To <= entry.From) return new Refusal("closure-ends-before-start", "It would open before it closes.", "Correct one of the times.");
        if (entry.To.InZoneLeniently(agency.Roster.Profile.Zone).ToInstant() <= agency.Now)
            return new Refusal("closure-over", "That closure is over already.", "Correct the times.");
        ImmutableHashSet<string> crossings = [.. agency.Roster.Map.Barriers.SelectMany(b => b.Crossings).Select(c => c.Name)];
        ImmutableHashSet<string> towns = [.. agency.Roster.Map.Towns.Select(t => t.Code)];
        return entry.Crossings.All(crossings.Contains) && entry.Towns.All(towns.Contains)
            ? null
            : new Refusal("closure-unknown-place", "One of the places is not on the agency's map.", "Choose from the list.");
    }

    public static MendOffer Offer(RoadShut entry, MendSetting setting)
    {
        RoadChange change = Change(entry, setting);
        var trouble = new Trouble.Roads(change);
        ImmutableArray<string> couriers = CourierCautions.Of(change, setting);
        MendOffer offer = new WeekMend(setting).Of([trouble]);
        string what = string.Join(", ", entry.Crossings.Concat(entry.Towns.Select(code => setting.Agency.Roster.Map.Towns.First(t => t.Code == code).Name)));
        return offer with
        {
            Facts =
            [
                $"{what} closed from {DayWords.Moment(entry.From)} to {DayWords.Moment(entry.To)}{(entry.Why.Length > 0 ? $": {entry.Why}" : "")}.",
                .. couriers,
                .. offer.CannotWait.IsEmpty ? ["Every visit still reaches its patient at its time."] : ImmutableArray<string>.Empty,
                "Whether a road can be driven is the nurse's to judge on the spot. She turns back when it cannot.",
            ],
        };
    }

    private static RoadChange Change(RoadShut entry, MendSetting setting)
    {
        var usual = (MapTravel)setting.Roads.Times;
        ITravelTimes then = entry.Crossings.IsEmpty ? usual : usual.WithClosed([.. usual.Closed, .. entry.Crossings]);
        if (!entry.Towns.IsEmpty) then = new ShutTowns(then, entry.Towns, setting);
        return new RoadChange(setting.Calendar.Minute(entry.From), setting.Calendar.Minute(entry.To), then);
    }

    /// <summary>Nobody drives into or out of a shut town; inside it one can walk.</summary>
    private sealed class ShutTowns : ITravelTimes
    {
        private readonly ITravelTimes _usual;
        private readonly Dictionary<int, string> _inside = [];

        public ShutTowns(ITravelTimes usual, ImmutableArray<string> shut, MendSetting setting)
        {
            _usual = usual;
            AgencyRoster roster = setting.Agency.Roster;
            foreach (Patient patient in roster.Patients) Note(setting.Roads.PlaceOfPatient(patient.Id.Value), patient.Home);
            foreach (NurseFile nurse in roster.Nurses) Note(setting.Roads.PlaceOfNurse(nurse.Id), nurse.Home);
            for (int drop = 0; drop < roster.Map.Drops.Length; drop++) Note(setting.Roads.PlaceOfDrop(drop), roster.Map.Drops[drop].At);

            void Note(int place, Roster.MapPoint at)
            {
                Town nearest = roster.Map.Towns.MinBy(t => Math.Pow(t.At.X - at.X, 2) + Math.Pow(t.At.Y - at.Y, 2))!;
                if (shut.Contains(nearest.Code)) _inside[place] = nearest.Code;
            }
        }

        public int Minutes(int from, int to) =>
            _inside.GetValueOrDefault(from) == _inside.GetValueOrDefault(to) ? _usual.Minutes(from, to) : ITravelTimes.Unreachable;
    }
}
