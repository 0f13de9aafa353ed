using System.Collections.Immutable;
using System.Text.Json;
using NodaTime.Text;

namespace HomeLine.LineCare.Policy;

/// <summary>What came of reading a policy text: a book, or the problems that kept it from being one.</summary>
/// <param name="Book">The book; empty when there were problems.</param>
/// <param name="Problems">One sentence per problem, naming the entry; empty when there is a book.</param>
public sealed record PolicyReading(PolicyBook? Book, ImmutableArray<string> Problems);

public sealed partial record PolicyBook
{
    private static readonly Lazy<PolicyBook> Shipped = new(ReadShipped);

    /// <summary>The defaults shipped with the program, every one of them for the agency's clinical lead to sign.</summary>
    public static PolicyBook Default => Shipped.Value;

    /// <summary>Reads a policy text: a JSON array with one object per fact
    /// (<c>id</c>, <c>value</c>, <c>unit</c>, <c>from</c>, <c>level</c>, <c>standing</c>, <c>source</c>, <c>note</c>).
    /// Nothing is taken over when any entry is refused.</summary>
    /// <param name="text">The text; read to its end, not closed.</param>
    public static PolicyReading Read(TextReader text)
    {
        ArgumentNullException.ThrowIfNull(text);
        try
        {
            using var document = JsonDocument.Parse(text.ReadToEnd());
            return document.RootElement.ValueKind == JsonValueKind.Array
                ? ReadEntries(document.RootElement)
                : new PolicyReading(null, ["The text is not a list of policy entries."]);
        }
        catch (JsonException mistake)
        {
            return new PolicyReading(null, [$"The text is not JSON: line {(mistake.LineNumber ?? 0) + 1}."]);
        }
    }

    private static PolicyReading ReadEntries(JsonElement entries)
    {
        var problems = ImmutableArray.CreateBuilder<string>();
        var rules = ImmutableArray.CreateBuilder<PolicyRule>();
        var number = 0;
        foreach (var entry in entries.EnumerateArray())
        {
            number++;
            if (PolicyEntry.Read(entry, number, problems) is { } rule) rules.Add(rule);
        }

        var book = new PolicyBook { Rules = rules.ToImmutable() };
        problems.AddRange(PolicyCheck.Problems(book));
        return problems.Count == 0 ? new PolicyReading(book, []) : new PolicyReading(null, problems.ToImmutable());
    }

    private static PolicyBook ReadShipped()
    {
        using var stream = typeof(PolicyBook).Assembly.GetManifestResourceStream("HomeLine.LineCare.Policy.default-policy.json")
            ?? throw new InvalidOperationException("The shipped policy is missing from the program.");
        using var text = new StreamReader(stream);
        var reading = Read(text);
        return reading.Book ?? throw new InvalidOperationException(string.Join(" ", reading.Problems));
    }
}

/// <summary>Reads one entry of a policy text.</summary>
internal static class PolicyEntry
{
    public static PolicyRule? Read(JsonElement entry, int number, ImmutableArray<string>.Builder problems)
    {
        if (entry.ValueKind != JsonValueKind.Object)
        {
            problems.Add($"Entry {number} is not an object.");
            return null;
        }

        var id = Text(entry, "id");
        var name = id.Length > 0 ? $"Entry {number} ({id})" : $"Entry {number}";
        var before = problems.Count;
        foreach (var needed in (ReadOnlySpan<string>)["id", "unit", "source"])
            if (Text(entry, needed).Length == 0) problems.Add($"{name} has no {needed}.");
        if (!entry.TryGetProperty("value", out var found) || !found.TryGetDecimalValue(out var value))
        {
            problems.Add($"{name} has no number as its value.");
            value = 0;
        }

        var from = LocalDatePattern.Iso.Parse(Text(entry, "from"));
        if (!from.Success) problems.Add($"{name} has no first day written as year-month-day.");
        if (!Enum.TryParse<PolicyLevel>(Text(entry, "level"), ignoreCase: true, out var level))
            problems.Add($"{name} does not say who set it.");
        if (!Enum.TryParse<RuleStanding>(Text(entry, "standing"), ignoreCase: true, out var standing))
            problems.Add($"{name} does not say how its value is known.");
        return problems.Count > before
            ? null
            : new PolicyRule(id, value, Text(entry, "unit"), from.Value, level, standing, Text(entry, "source"), Text(entry, "note"));
    }

    private static string Text(JsonElement entry, string name) =>
        entry.TryGetProperty(name, out var text) && text.ValueKind == JsonValueKind.String ? text.GetString()!.Trim() : "";

    private static bool TryGetDecimalValue(this JsonElement element, out decimal value)
    {
        value = 0;
        return element.ValueKind == JsonValueKind.Number && element.TryGetDecimal(out value);
    }
}
