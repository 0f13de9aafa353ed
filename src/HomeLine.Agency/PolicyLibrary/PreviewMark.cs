using System.Collections.Immutable;
using System.Globalization;
using System.Security.Cryptography;
using System.Text;

namespace HomeLine.Agency.PolicyLibrary;

/// <summary>A short name for exactly one preview: equal when every moved date is equal.</summary>
internal static class PreviewMark
{
    public static string Of(ImmutableArray<MovedDue> moved)
    {
        var text = new StringBuilder();
        foreach (MovedDue due in moved)
        {
            text.Append(CultureInfo.InvariantCulture, $"{due.Patient}|{due.LineLabel}|{due.ItemLabel}|{due.Before?.Opens}|{due.Before?.LateFrom}|{due.After?.Opens}|{due.After?.LateFrom}\n");
        }

        return Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(text.ToString())))[..16];
    }
}
