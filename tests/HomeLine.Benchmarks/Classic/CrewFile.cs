using System.Text.Json;

namespace HomeLine.Benchmarks.Classic;

/// <summary>
/// The JSON layout of the home-care sets with services, skills and visits for two: patients, caregivers, central_offices, distances (offices first, then patients in order).
/// </summary>
internal static class CrewFile
{
    public static bool Looks(string text) => text.TrimStart().StartsWith('{') && text.Contains("required_caregivers", StringComparison.Ordinal) && !text.Contains("cost_components", StringComparison.Ordinal);

    public static CrewInstance Read(string name, string text)
    {
        try
        {
            using JsonDocument document = JsonDocument.Parse(text);
            JsonElement root = document.RootElement;
            if (root.GetProperty("central_offices").GetArrayLength() != 1) throw new UnreadableFileException("central_offices: exactly one is supported");
            double[][] distances = [.. root.GetProperty("distances").EnumerateArray().Select(row => row.EnumerateArray().Select(cell => cell.GetDouble()).ToArray())];
            CrewPatient[] patients = [.. root.GetProperty("patients").EnumerateArray().Select(Patient)];
            if (distances.Length != patients.Length + 1 || distances.Any(row => row.Length != distances.Length))
                throw new UnreadableFileException($"distances: a square of {patients.Length + 1} rows expected");
            return new CrewInstance(
                name,
                patients,
                [.. root.GetProperty("caregivers").EnumerateArray().Select(one => (Id(one), Words(one.GetProperty("abilities"))))],
                distances);
        }
        catch (Exception fault) when (fault is JsonException or KeyNotFoundException or InvalidOperationException or FormatException or IndexOutOfRangeException)
        {
            throw new UnreadableFileException($"not a home-care instance: {fault.Message}", fault);
        }
    }

    private static CrewPatient Patient(JsonElement patient)
    {
        (string Service, double Duration)[] parts = [.. patient.GetProperty("required_caregivers").EnumerateArray()
            .Select(part => (part.GetProperty("service").GetString() ?? "", part.GetProperty("duration").GetDouble()))];
        if (parts.Length is < 1 or > 2) throw new UnreadableFileException($"patient {Id(patient)}: {parts.Length} services; one or two are supported");
        (double least, double most) = (0, 0);
        if (patient.TryGetProperty("synchronization", out JsonElement together) && together.GetProperty("type").GetString() == "sequential")
        {
            JsonElement gap = together.GetProperty("distance");
            (least, most) = gap.ValueKind == JsonValueKind.Array
                ? (gap[0].GetDouble(), gap[1].GetDouble())
                : (gap.GetProperty("min").GetDouble(), gap.GetProperty("max").GetDouble());
        }

        double[] window = [.. patient.GetProperty("time_window").EnumerateArray().Select(end => end.GetDouble())];
        return new CrewPatient(Id(patient), window[0], window[1], parts, least, most);
    }

    private static string Id(JsonElement element) => element.GetProperty("id").ToString();

    private static string[] Words(JsonElement array) => [.. array.EnumerateArray().Select(word => word.GetString() ?? "")];
}

/// <summary>A patient as the file has it; the gap is from the first start to the second, 0 to 0 meaning together.</summary>
internal sealed record CrewPatient(string Id, double Opens, double Closes, (string Service, double Duration)[] Parts, double LeastGap, double MostGap);
