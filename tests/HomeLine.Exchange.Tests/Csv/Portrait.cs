using System.Collections;
using System.Globalization;
using System.Reflection;
using System.Text;

namespace HomeLine.Exchange.Tests.Csv;

/// <summary>A value as text, every public property of its records included, so that two rosters can be compared field by field.</summary>
internal static class Portrait
{
    public static string Of(object? value)
    {
        var text = new StringBuilder();
        Draw(value, text, 0);
        return text.ToString();
    }

    private static void Draw(object? value, StringBuilder text, int depth)
    {
        switch (value)
        {
            case null:
                text.AppendLine("none");
                return;
            case string words:
                text.Append('"').Append(words).AppendLine("\"");
                return;
            case IEnumerable many:
                text.AppendLine("[");
                foreach (object? one in many) Draw(one, text, depth + 1);
                text.AppendLine("]");
                return;
        }

        if (!IsOurs(value.GetType()))
        {
            text.AppendLine(Convert.ToString(value, CultureInfo.InvariantCulture));
            return;
        }

        text.AppendLine();
        foreach (PropertyInfo property in value.GetType().GetProperties().Where(property => property.CanWrite))
        {
            text.Append(' ', depth * 2).Append(property.Name).Append(": ");
            Draw(property.GetValue(value), text, depth + 1);
        }
    }

    private static bool IsOurs(Type type) => !type.IsEnum && type.Namespace?.StartsWith("HomeLine", StringComparison.Ordinal) == true;
}
