using System.Text;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata;

namespace HomeLine.Agency.Storage;

/// <summary>Column names in lower case with underscores, so that nobody at a database prompt has to quote them.</summary>
internal static class SnakeCaseNames
{
    public static void Apply(ModelBuilder model)
    {
        foreach (IMutableEntityType entity in model.Model.GetEntityTypes())
        {
            if (!entity.IsMappedToJson()) Name(entity, "");
        }
    }

    private static void Name(IMutableTypeBase type, string prefix)
    {
        foreach (IMutableProperty property in type.GetDeclaredProperties())
            property.SetColumnName(prefix + Snake(property.Name));
        foreach (IMutableComplexProperty complex in type.GetDeclaredComplexProperties())
        {
            if (!complex.ComplexType.IsMappedToJson()) Name(complex.ComplexType, prefix + Snake(complex.Name) + "_");
        }
    }

    private static string Snake(string name)
    {
        var text = new StringBuilder(name.Length + 4);
        for (int i = 0; i < name.Length; i++)
        {
            if (i > 0 && char.IsUpper(name[i]) && (char.IsLower(name[i - 1]) || (i + 1 < name.Length && char.IsLower(name[i + 1]))))
                text.Append('_');
            text.Append(char.ToLowerInvariant(name[i]));
        }
        return text.ToString();
    }
}
