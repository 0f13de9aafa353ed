using System.Collections.Immutable;
using System.Text.Json;
using HomeLine.Exchange.Json;

namespace HomeLine.Architecture.Tests;

/// <summary>docs/json.md names every field of the files it describes.</summary>
public class JsonDocumentTests
{
    [Theory]
    [InlineData(typeof(DueFile))]
    [InlineData(typeof(PlanFile))]
    public void A_field_of_the_file_is_described(Type file)
    {
        string document = Repository.Read("docs/json.md");

        Expect.Nothing(Fields(file, []).Distinct().Where(field => !document.Contains($"`{field}`", StringComparison.Ordinal)));
    }

    private static IEnumerable<string> Fields(Type record, HashSet<Type> seen) => !seen.Add(record)
        ? []
        : record.GetProperties()
            .Where(property => property.GetMethod is { IsStatic: false })
            .SelectMany(property => Inside(property.PropertyType, seen).Prepend(JsonNamingPolicy.SnakeCaseLower.ConvertName(property.Name)));

    private static IEnumerable<string> Inside(Type type, HashSet<Type> seen)
    {
        if (type.IsGenericType && type.GetGenericTypeDefinition() == typeof(ImmutableArray<>)) type = type.GetGenericArguments()[0];
        return type.Namespace?.StartsWith("HomeLine.", StringComparison.Ordinal) == true ? Fields(type, seen) : [];
    }
}
