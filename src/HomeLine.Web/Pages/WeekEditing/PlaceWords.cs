using System.Globalization;
using HomeLine.Agency.WeekEditing;
using HomeLine.Web.Parts;

namespace HomeLine.Web.Pages.WeekEditing;

/// <summary>Places and prices as they are read and heard.</summary>
public static class PlaceWords
{
    /// <summary>For example <c>Thu 11 Mar, Sorrel Mudlark, after P51, 11:12</c>.</summary>
    public static string Where(WorkingPlace place) =>
        $"{place.Day.InWords()}, {place.NurseName}, {(place.After.Length == 0 ? "first of the day" : $"after {place.After}")}, {place.Start.InWords()}";

    /// <summary>For example <c>14 min more driving, 1 family to tell</c>.</summary>
    public static string Price(WorkingPlace place)
    {
        List<string> price = [Driving(place.DrivingMinutes)];
        if (place.OvertimeMinutes > 0) price.Add($"{place.OvertimeMinutes} min overtime");
        if (place.LateTasks > 0) price.Add($"{place.LateTasks} late");
        price.Add(place.FamiliesToTell switch { 0 => "no family to tell", 1 => "1 family to tell", _ => $"{place.FamiliesToTell} families to tell" });
        return string.Join(", ", price);
    }

    /// <summary>For example <c>+14 min, over</c>, as short as a narrow sign allows.</summary>
    public static string Sign(WorkingPlace place) =>
        place.DrivingMinutes.ToString("+0;−0;±0", CultureInfo.InvariantCulture) + " min" + (place.OvertimeMinutes > 0 ? ", over" : "") + (place.LateTasks > 0 ? ", late" : "");

    public static string Driving(int minutes) => minutes switch
    {
        0 => "no more driving",
        > 0 => $"{minutes} min more driving",
        _ => $"{-minutes} min less driving",
    };

    public static string Places(int count) => count switch { 0 => "No place works", 1 => "1 place works", _ => $"{count} places work" };
}
