using Microsoft.EntityFrameworkCore.ChangeTracking;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using Microsoft.EntityFrameworkCore.Storage.ValueConversion;

namespace HomeLine.Agency.Storage;

/// <summary>A list or a small record kept in one column as JSON (jsonb on PostgreSQL).</summary>
internal sealed class JsonText<T>() : ValueConverter<T, string>(value => StoredJson.Write(value), text => StoredJson.Read<T>(text)), IJsonText;

/// <summary>Marks columns that hold JSON, so that a provider can give them its own type.</summary>
internal interface IJsonText;

internal static class JsonColumn
{
    /// <summary>Keeps the property in one JSON column; values are compared by their text.</summary>
    public static PropertyBuilder<T> AsJson<T>(this PropertyBuilder<T> property) =>
        property.HasConversion(new JsonText<T>(), new SameText<T>());

    private sealed class SameText<T>() : ValueComparer<T>(
        (left, right) => StoredJson.Write(left) == StoredJson.Write(right),
        value => StringComparer.Ordinal.GetHashCode(StoredJson.Write(value)),
        value => value);
}
