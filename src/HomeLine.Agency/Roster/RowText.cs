using System.Collections.Immutable;
using System.Text.Json.Nodes;
using HomeLine.Agency.Storage;

namespace HomeLine.Agency.Roster;

/// <summary>Compares rows by what they say. Records compare their lists by reference, which is not what an import means by "the same".</summary>
internal static class RowText
{
    /// <summary>Names of the fields that differ, as they stand in the record; empty when the rows say the same.</summary>
    public static ImmutableArray<string> Differences<T>(T before, T after)
    {
        string then = StoredJson.Write(before), now = StoredJson.Write(after);
        if (then == now) return [];
        JsonObject left = JsonNode.Parse(then)!.AsObject(), right = JsonNode.Parse(now)!.AsObject();
        return [.. right.Select(field => field.Key).Where(name => !JsonNode.DeepEquals(left[name], right[name]))];
    }
}
