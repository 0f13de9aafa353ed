using System.Text.Json;

namespace HomeLine.Benchmarks.Classic.Unified;

/// <summary>The JSON layout of the unified home-care set: metadata with the weights, distances, terminal_points, caregivers, patients, lunch_breaks.</summary>
internal static class UnifiedFile
{
    public static bool Looks(string text) => text.TrimStart().StartsWith('{') && text.Contains("cost_components", StringComparison.Ordinal) && text.Contains("terminal_points", StringComparison.Ordinal);

    public static UnifiedDay Read(string name, string text)
    {
        try
        {
            using JsonDocument document = JsonDocument.Parse(text);
            return Day(name, document.RootElement);
        }
        catch (Exception fault) when (fault is JsonException or KeyNotFoundException or InvalidOperationException or FormatException or IndexOutOfRangeException)
        {
            throw new UnreadableFileException($"not a unified home-care instance: {fault.Message}", fault);
        }
    }

    /// <summary>The rows of a solution file of the set; a lunch row has start_time and end_time, a service row arrival_time (the start of service) and departure_time.</summary>
    public static IReadOnlyList<UnifiedRow> Solution(string text)
    {
        try
        {
            using JsonDocument document = JsonDocument.Parse(text);
            return [.. document.RootElement.GetProperty("routes").EnumerateArray().SelectMany(Rows)];
        }
        catch (Exception fault) when (fault is JsonException or KeyNotFoundException or InvalidOperationException or FormatException)
        {
            throw new UnreadableFileException($"not a solution of the unified home-care set: {fault.Message}", fault);
        }
    }

    private static IEnumerable<UnifiedRow> Rows(JsonElement route) => !route.TryGetProperty("locations", out JsonElement rows) || rows.ValueKind != JsonValueKind.Array
        ? []
        : rows.EnumerateArray().Select(row => new UnifiedRow(
            route.GetProperty("caregiver_id").GetString()!,
            row.GetProperty("patient").GetString()!,
            row.GetProperty("service").GetString()!,
            (row.TryGetProperty("arrival_time", out JsonElement start) ? start : row.GetProperty("start_time")).GetDouble(),
            (row.TryGetProperty("departure_time", out JsonElement end) ? end : row.GetProperty("end_time")).GetDouble())).ToList();

    private static UnifiedDay Day(string name, JsonElement root)
    {
        JsonElement metadata = root.GetProperty("metadata");
        int[][] distances = [.. root.GetProperty("distances").EnumerateArray().Select(row => row.EnumerateArray().Select(cell => Whole(cell, "distances")).ToArray())];
        if (distances.Any(row => row.Length != distances.Length)) throw new UnreadableFileException("distances: not a square");
        var terminals = root.GetProperty("terminal_points").EnumerateArray().ToDictionary(point => point.GetProperty("id").GetString()!, point => Place(point, distances.Length));
        UnifiedLunch? lunch = root.TryGetProperty("lunch_breaks", out JsonElement breaks) && breaks.ValueKind == JsonValueKind.Object
            ? new UnifiedLunch(Whole(breaks, "start"), Whole(breaks, "end"), Whole(breaks, "min_duration"))
            : null;
        return new UnifiedDay(
            name,
            metadata.TryGetProperty("time_window_met", out JsonElement met) && met.GetString() == "at_service_end",
            metadata.TryGetProperty("origin", out JsonElement origin) && origin.GetString() is "bazirha" or "bazirha-caie",
            metadata.GetProperty("cost_components").EnumerateObject().Where(part => part.Value.ValueKind != JsonValueKind.Null).ToDictionary(part => part.Name, part => Weight(part)),
            [.. root.GetProperty("caregivers").EnumerateArray().Select(person => Person(person, terminals))],
            [.. root.GetProperty("patients").EnumerateArray().Select(patient => Patient(patient, distances.Length))],
            lunch,
            distances);
    }

    private static UnifiedWeight Weight(JsonProperty part) => part.Value.ValueKind == JsonValueKind.String
        ? new UnifiedWeight(1, Hard: true)
        : new UnifiedWeight(Whole(part.Value, part.Name), Hard: false);

    private static UnifiedPerson Person(JsonElement person, Dictionary<string, int> terminals)
    {
        JsonElement shift = person.GetProperty("working_shift");
        string start = person.GetProperty("departing_point").GetString()!;
        string end = person.TryGetProperty("arrival_point", out JsonElement arrival) && arrival.GetString() is { } named ? named : start;
        return new UnifiedPerson(
            person.GetProperty("id").GetString()!,
            Words(person, "abilities"),
            terminals[start],
            terminals[end],
            Whole(shift, "start"),
            Whole(shift, "end"),
            Flag(person, "lunch_break"));
    }

    private static UnifiedPatient Patient(JsonElement patient, int places)
    {
        string id = patient.GetProperty("id").GetString()!;
        (string, int)[] services = [.. patient.GetProperty("required_services").EnumerateArray().Select(service => (service.GetProperty("service").GetString()!, Whole(service, "duration")))];
        if (services.Length is < 1 or > 2) throw new UnreadableFileException($"patient {id}: {services.Length} services; one or two are supported");
        (int, int)[] windows = [.. patient.GetProperty("time_windows").EnumerateArray().Select(window => (Whole(window, "start"), Whole(window, "end"))).Order()];
        if (windows.Length == 0) throw new UnreadableFileException($"patient {id}: no window");
        return new UnifiedPatient(id, Place(patient, places), windows, services, Gap(patient), Words(patient, "preferred_caregivers"), Words(patient, "incompatible_caregivers"), Flag(patient, "optional"));
    }

    private static (int, int)? Gap(JsonElement patient)
    {
        if (!patient.TryGetProperty("synchronization", out JsonElement together) || together.ValueKind != JsonValueKind.Object) return null;
        string? type = together.GetProperty("type").GetString();
        if (type != "sequential") return type == "simultaneous" ? (0, 0) : null;
        JsonElement gap = together.GetProperty("distance");
        return gap.ValueKind == JsonValueKind.Array ? (Whole(gap[0], "distance"), Whole(gap[1], "distance")) : (Whole(gap, "min"), Whole(gap, "max"));
    }

    private static bool Flag(JsonElement element, string name) => element.TryGetProperty(name, out JsonElement flag) && flag.ValueKind == JsonValueKind.True;

    private static string[] Words(JsonElement element, string name) => element.TryGetProperty(name, out JsonElement words) && words.ValueKind == JsonValueKind.Array
        ? [.. words.EnumerateArray().Select(word => word.GetString()!)]
        : [];

    private static int Place(JsonElement element, int places)
    {
        int place = Whole(element, "distance_matrix_index");
        return place >= 0 && place < places ? place : throw new UnreadableFileException($"distance_matrix_index {place} is outside the {places} places");
    }

    private static int Whole(JsonElement element, string name)
    {
        double number = (element.ValueKind == JsonValueKind.Object ? element.GetProperty(name) : element).GetDouble();
        return number == Math.Floor(number) && Math.Abs(number) < 1e8 ? (int)number : throw new UnreadableFileException($"{name}: {number} is not a whole number in range");
    }
}
