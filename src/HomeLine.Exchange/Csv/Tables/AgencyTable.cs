using System.Collections.Immutable;
using HomeLine.Agency.Roster;
using HomeLine.Agency.WeekPlanning;
using HomeLine.Exchange.Csv.Cells;
using NodaTime;

namespace HomeLine.Exchange.Csv.Tables;

/// <summary>agency.csv: one fact a row.</summary>
internal static class AgencyTable
{
    public static readonly TableShape Shape = TableShape.Of("agency.csv", true, "key! value");

    /// <summary>The keys a value is needed for, then the others, in the order they are written.</summary>
    public static readonly ImmutableArray<string> NeededKeys = ["name", "branch", "zone", "states"];

    public static readonly ImmutableArray<string> OtherKeys =
    [
        "day_phone", "on_call_phone", "emergency_number", "demo", "as_of", "fixed_now", "date_order",
        "map_width_km", "map_height_km", "compact_states", "week_from", "week_version",
    ];

    /// <summary>A fact with the row it came from.</summary>
    public sealed record Fact(string Key, Row Row);

    public static Fact? Read(Row row, ISet<string> seen)
    {
        string key = row.Required("key").ToLowerInvariant();
        if (key.Length > 0 && !NeededKeys.Contains(key) && !OtherKeys.Contains(key))
            row.Refuse("key", $"This key is not known. Keys: {string.Join(", ", NeededKeys.Concat(OtherKeys))}.");
        else if (!seen.Add(key))
            row.Refuse("key", "This key stands twice.");
        return new Fact(key, row);
    }

    public static IEnumerable<string[]> Write(AgencyRoster roster, PlannedWeek? week, Instant asOf)
    {
        AgencyProfile profile = roster.Profile;
        yield return ["name", profile.Name];
        yield return ["branch", profile.Branch];
        yield return ["zone", profile.ZoneId];
        yield return ["states", string.Join("; ", States(roster))];
        yield return ["day_phone", profile.DayPhone];
        yield return ["on_call_phone", profile.OnCallPhone];
        yield return ["emergency_number", profile.EmergencyNumber];
        yield return ["demo", profile.IsDemo ? "yes" : "no"];
        yield return ["as_of", TimeText.Write(asOf, profile.Zone)];
        if (profile.FixedNow is { } now) yield return ["fixed_now", TimeText.Write(now, profile.Zone)];
        yield return ["map_width_km", NumberText.Write(roster.Map.Width)];
        yield return ["map_height_km", NumberText.Write(roster.Map.Height)];
        if (!profile.CompactStates.IsDefaultOrEmpty) yield return ["compact_states", string.Join("; ", profile.CompactStates)];
        if (week is null) yield break;
        yield return ["week_from", TimeText.Write(week.FirstDay)];
        yield return ["week_version", NumberText.Write(week.Version)];
    }

    private static IEnumerable<string> States(AgencyRoster roster) => roster.Map.Towns.Select(town => town.State)
        .Concat(roster.Patients.Select(patient => patient.State))
        .Concat(roster.Nurses.SelectMany(nurse => nurse.Licences).Select(licence => licence.State))
        .Distinct()
        .Order(StringComparer.Ordinal);
}
